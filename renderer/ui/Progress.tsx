import { Button } from './Button.tsx';
import styles from './Progress.module.css';

interface ProgressProps {
  /** What is being done, for a reader that speaks the screen. */
  readonly label: string;
  readonly done: number;
  /** Null while nobody knows how much there is. */
  readonly of: number | null;
  /** `photo 10 of 16`. */
  readonly words: string;
  readonly onStop?: (() => void) | undefined;
}

/** Anything that takes longer than half a second, with the way to stop it. */
export function Progress({ label, done, of, words, onStop }: ProgressProps) {
  const share = of === null || of === 0 ? 0 : Math.min(1, done / of);
  return (
    <div className={styles.progress}>
      <div
        className={styles.bar}
        role="progressbar"
        aria-label={label}
        aria-valuemin={0}
        aria-valuemax={of ?? undefined}
        aria-valuenow={of === null ? undefined : done}
        aria-valuetext={words}
      >
        <div className={styles.track}>
          <div className={styles.fill} style={{ width: `${share * 100}%` }} />
        </div>
        <div className={styles.ticks} />
      </div>
      <div className={styles.foot}>
        <span className={styles.words}>{words}</span>
        {onStop !== undefined && (
          <Button look="link" onPress={onStop}>
            Stop here
          </Button>
        )}
      </div>
    </div>
  );
}
