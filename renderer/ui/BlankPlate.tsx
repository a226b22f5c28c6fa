import styles from './BlankPlate.module.css';
import { classNames } from './class-names.ts';

/** A plate that nobody has stamped yet. */
export function BlankPlate() {
  return (
    <div className={styles.plate} aria-hidden="true">
      <span className={styles.rivet} style={{ left: 10 }} />
      <span className={styles.rivet} style={{ right: 10 }} />
      <span className={classNames(styles.line, styles.whole)}>machine</span>
      <span className={styles.line}>serial</span>
      <span className={styles.line}>hours</span>
    </div>
  );
}
