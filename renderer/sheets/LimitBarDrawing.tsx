import type { Verdict } from '../../shared-lib/model/reading.ts';
import type { LimitBar } from '../../shared-lib/readings/limit-bar.ts';
import styles from './LimitBarDrawing.module.css';

interface LimitBarDrawingProps {
  readonly bar: LimitBar;
  readonly verdict: Verdict;
  /** One of many under each other. */
  readonly isThin: boolean;
}

const width = 190;
/** Where every limit stands. */
const limitX = 112;
const longest = width - 8;
const x = (share: number): number => Math.min(width - 2, share * limitX);

/** A bar to where the value is, the bracket of what it can be off by, and the scale under it. Past the line is beyond. */
export function LimitBarDrawing({ bar, verdict, isThin }: LimitBarDrawingProps) {
  const isBeyond = verdict === 'beyond' && bar.value > 1;
  const isCut = bar.value * limitX > longest;
  const end = Math.min(longest, Math.max(1.5, bar.value * limitX));
  const height = isThin ? 24 : 34;
  const middle = isThin ? 12 : 18;
  const thickness = isThin ? (isBeyond ? 6 : 3) : isBeyond ? 10 : 4;
  const scaleY = 26;
  return (
    <svg className={styles.bar} width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      {!isThin && (
        <path
          className={styles.scale}
          d={`M0 ${scaleY}H${width}${Array.from({ length: 9 }, (_, tick) => `M${(tick * limitX) / 5 + 0.5} ${scaleY}v${tick % 5 === 0 ? 6 : 4}`).join('')}`}
        />
      )}
      {bar.watchFrom !== null && <path className={styles.watch} d={`M${x(bar.watchFrom)} 6V${isThin ? 18 : 32}`} />}
      <rect className={styles.value} x={0} y={middle - thickness / 2} width={end} height={thickness} />
      {isBeyond && <path className={styles.gap} d={`M${limitX} ${middle - thickness / 2}v${thickness}`} />}
      {isCut && (
        <path
          className={styles.cut}
          d={`M${longest - 34} ${middle + thickness}l6 ${-2 * thickness}M${longest - 26} ${middle + thickness}l6 ${-2 * thickness}`}
        />
      )}
      {!isThin && bar.bracket !== null && x(bar.bracket[0]) < width - 4 && (
        <path
          className={styles.bracket}
          d={`M${x(bar.bracket[0])} 4v8M${x(bar.bracket[0])} 8H${x(bar.bracket[1])}M${x(bar.bracket[1])} 4v8`}
        />
      )}
    </svg>
  );
}
