import styles from './KeyCap.module.css';

interface KeyCapProps {
  /** As written in the list of commands: `N`, `Ctrl+Z`, `ArrowLeft`. */
  readonly of: string;
}

const words: Readonly<Record<string, string>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
  Escape: 'Esc',
  ' ': 'Space',
};

/** A key as it stands on the keyboard. What it does is said by the words beside it, so it is not spoken. */
export function KeyCap({ of }: KeyCapProps) {
  const shown = of
    .split('+')
    .map((part) => words[part] ?? part)
    .join(' ');
  return (
    <span className={styles.key} aria-hidden="true">
      {shown}
    </span>
  );
}
