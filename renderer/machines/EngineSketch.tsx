import type { Layout } from '../../shared-lib/model/layout.ts';
import { speakNumbering } from '../../shared-lib/parts/speak-numbering.ts';
import styles from './EngineSketch.module.css';
import { sketchBores } from './engine-sketch.ts';

const boreRadius = 17;
const pitch = 44;
const rowPitch = 50;
const margin = 62;

/** The deck from above, fan at the left, so that it is seen which cylinder is number 1. */
export function EngineSketch({ layout }: { readonly layout: Layout }) {
  const { bores, rows, columns } = sketchBores(layout);
  const width = margin * 2 + columns * pitch;
  const height = rows * rowPitch + 44;
  const blockTop = 4;
  const blockHeight = rows * rowPitch + 6;
  const middle = blockTop + blockHeight / 2;
  return (
    <svg
      className={styles.sketch}
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      role="img"
      aria-label={`The engine from above. ${speakNumbering(layout)}`}
    >
      <rect
        className={styles.block}
        x={margin - 8}
        y={blockTop}
        width={columns * pitch + 16}
        height={blockHeight}
        rx={4}
      />
      <path className={styles.fan} d={`M${margin - 8} ${middle}H${margin - 26}M${margin - 26} ${middle - 22}v44`} />
      <path className={styles.fan} d={`M${margin + columns * pitch + 8} ${middle}h10m0 -24h8v48h-8z`} />
      {bores.map((bore) => {
        const x = margin + (bore.column + 0.5) * pitch;
        const y = blockTop + 3 + (bore.row + 0.5) * rowPitch;
        const isFirst = bore.number === 1;
        return (
          <g key={`${bore.row}-${bore.column}`}>
            <circle className={`${styles.bore} ${isFirst ? styles.first : ''}`} cx={x} cy={y} r={boreRadius} />
            <text className={`${styles.number} ${isFirst ? styles.firstNumber : ''}`} x={x} y={y + 6}>
              {bore.number ?? '?'}
            </text>
          </g>
        );
      })}
      <text className={styles.end} x={margin - 26} y={height - 6}>
        fan
      </text>
      <text className={styles.end} x={margin + columns * pitch + 22} y={height - 6}>
        flywheel
      </text>
    </svg>
  );
}
