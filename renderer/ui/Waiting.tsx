import styles from './Waiting.module.css';

/** Shown only when the answer takes longer than a blink, so that a quick place does not flicker. */
export function Waiting({ words }: { readonly words: string }) {
  return (
    <p className={styles.waiting} role="status">
      {words}
    </p>
  );
}
