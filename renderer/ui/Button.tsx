import { type MouseEvent, type ReactNode, type Ref, useRef, useState } from 'react';
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
  /** Pressed quickly one time after the other, and each press counts. */
  readonly repeats?: boolean | undefined;
  /** Its words are of the record and may be long: they take as many lines as they need. */
  readonly wraps?: boolean | undefined;
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

/** Two presses of a key within this time are one. Common practice, no source. */
const oncePerMs = 400;

/**
 * Every action that is not a place to go to. A double press is one press: the second one would write the same again, or
 * hit what has moved under the finger. Switched off while the focus is on it, it keeps the focus.
 */
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
  repeats = false,
  wraps = false,
  className,
  ref,
}: ButtonProps) {
  const [hasFocus, setFocus] = useState(false);
  const lastPressMs = useRef(Number.NEGATIVE_INFINITY);
  const handleClick = (event: MouseEvent) => {
    const isByKey = event.detail === 0;
    const isAgain = isByKey ? event.timeStamp - lastPressMs.current < oncePerMs : event.detail > 1;
    lastPressMs.current = event.timeStamp;
    // Of a button that hands over a form, the form would go on by itself.
    if (disabled || (isAgain && !repeats)) event.preventDefault();
    else onPress?.();
  };
  const leave = () => {
    setFocus(false);
    // Whoever has been elsewhere meanwhile means the next press.
    lastPressMs.current = Number.NEGATIVE_INFINITY;
  };
  return (
    <button
      ref={ref}
      type={type}
      className={classNames(styles.button, ...looks[look], wide && styles.wide, wraps && styles.wraps, className)}
      onClick={handleClick}
      onFocus={() => setFocus(true)}
      onBlur={leave}
      disabled={disabled && !hasFocus}
      aria-disabled={(disabled && hasFocus) || undefined}
      aria-label={label}
      aria-pressed={pressed}
      aria-expanded={expanded}
    >
      <span className={styles.words}>{children}</span>
      {keyCap !== undefined && <KeyCap of={keyCap} />}
    </button>
  );
}
