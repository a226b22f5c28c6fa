import { Icon } from './Icon.tsx';
import styles from './Toggle.module.css';

interface ToggleProps {
  readonly label: string;
  readonly on: boolean;
  readonly onChange: (on: boolean) => void;
  readonly note?: string | undefined;
}

/** Yes or no, by space or touch. */
export function Toggle({ label, on, onChange, note }: ToggleProps) {
  return (
    <label className={styles.toggle}>
      <input
        type="checkbox"
        checked={on}
        onChange={(event) => onChange(event.target.checked)}
        className={styles.input}
      />
      <span className={styles.box}>
        <Icon name="tick" size={20} />
      </span>
      <span className={styles.words}>
        {label}
        {note !== undefined && <span className={styles.note}>{note}</span>}
      </span>
    </label>
  );
}
