import styles from './PersonChip.module.css';

interface PersonChipProps {
  /** Null while nobody has said who works here. */
  readonly name: string | null;
  readonly onPress: () => void;
}

/** Whose name goes on what is written next. A chip to switch, no login. */
export function PersonChip({ name, onPress }: PersonChipProps) {
  const shown = name ?? 'Who works here?';
  return (
    <button
      type="button"
      className={styles.chip}
      onClick={onPress}
      aria-label={name === null ? shown : `${name}: who works here, light and size`}
      aria-haspopup="dialog"
    >
      {shown}
    </button>
  );
}
