import { dateWords } from '../ui/words.ts';
import styles from './EntryLine.module.css';

/** Where the page goes on on another day: a stay may last weeks. */
export function DayLine({ date }: { readonly date: string }) {
  return (
    <li className={styles.entry}>
      <h3 className={styles.day}>{dateWords(date)}</h3>
    </li>
  );
}
