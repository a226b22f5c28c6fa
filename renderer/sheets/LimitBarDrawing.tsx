import type { Verdict } from '../../shared-lib/model/reading.ts';
import type { LimitBar } from '../../shared-lib/readings/limit-bar.ts';
import { barWidth, drawLimitBar } from '../../shared-lib/readings/limit-bar-drawing.ts';
import styles from './LimitBarDrawing.module.css';

interface LimitBarDrawingProps {
  readonly bar: LimitBar;
  readonly verdict: Verdict;
  /** One of many under each other. */
  readonly isThin: boolean;
}

/** A reading on the scale of its limit; past the line is beyond. */
export function LimitBarDrawing({ bar, verdict, isThin }: LimitBarDrawingProps) {
  const { height, value, strokes } = drawLimitBar(bar, verdict, isThin);
  return (
    <svg
      className={styles.bar}
      width={barWidth}
      height={height}
      viewBox={`0 0 ${barWidth} ${height}`}
      aria-hidden="true"
    >
      <rect className={styles.value} {...value} />
      {strokes.map(({ pen, segments }) => (
        <path key={pen} className={styles[pen]} d={segments.map(([a, b, c, d]) => `M${a} ${b}L${c} ${d}`).join('')} />
      ))}
    </svg>
  );
}
