import type { ReactNode, Ref } from 'react';
import styles from './Button.module.css';
import { classNames } from './class-names.ts';
import { KeyCap } from './KeyCap.tsx';
import painted from './painted.module.css';

interface ButtonProps {
  readonly children: ReactNode;
  /** `primary` is painted: one in a pane. `on-blue` and `in-hand` stand on a painted panel. */
  readonly look?: 'primary' | 'plain' | 'link' | 'on-blue' | 'in-hand' | undefined;
  readonly keyCap?: string | undefined;
  readonly onPress?: (() => void) | undefined;
  readonly type?: 'button' | 'submit' | undefined;
  readonly disabled?: boolean | undefined;
  readonly wide?: boolean | undefined;
  readonly label?: string | undefined;
  readonly pressed?: boolean | undefined;
  readonly expanded?: boolean | undefined;
  readonly className?: string | undefined;
  readonly ref?: Ref<HTMLButtonElement> | undefined;
}

const looks = {
  primary: [styles.primary, painted.painted],
  plain: [styles.plain],
  link: [styles.link],
  'on-blue': [styles.onBlue],
  'in-hand': [styles.inHand],
} as const;

/** Every action that is not a place to go to. */
export function Button({
  children,
  look = 'plain',
  keyCap,
  onPress,
  type = 'button',
  disabled = false,
  wide = false,
  label,
  pressed,
  expanded,
  className,
  ref,
}: ButtonProps) {
  return (
    <button
      ref={ref}
      type={type}
      className={classNames(styles.button, ...looks[look], wide && styles.wide, className)}
      onClick={onPress}
      disabled={disabled}
      aria-label={label}
      aria-pressed={pressed}
      aria-expanded={expanded}
    >
      <span className={styles.words}>{children}</span>
      {keyCap !== undefined && <KeyCap of={keyCap} />}
    </button>
  );
}
