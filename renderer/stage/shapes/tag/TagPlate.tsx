import { drawTagPlate, type Tag, tagFontSize } from '../../../../shared-lib/geometry/tag-plate.ts';
import styles from './TagPlate.module.css';

interface TagPlateProps extends Tag {
  /** Height on screen in CSS pixels; 30 is the plate's own size. */
  readonly height?: number;
  /** On layout blue the plate is filled; on paper it shows the paper. */
  readonly ground?: 'paper' | 'painted';
  /** What a screen reader says; without it the plate is left out, since the words beside it say the same. */
  readonly label?: string;
}

/** Half the widest line, so that nothing is cut off. */
const margin = 0.5;

/** A finding's stamped tag for lists, headings and diagrams: ink on plate, in the surrounding colours. */
export function TagPlate({ height = 30, ground = 'paper', label, ...tag }: TagPlateProps) {
  const plate = drawTagPlate(tag);
  const inkOrCut = plate.core ? styles.cut : styles.ink;
  return (
    <svg
      className={styles.tag}
      width={(plate.width + 2 * margin) * (height / plate.height)}
      height={(plate.height + 2 * margin) * (height / plate.height)}
      viewBox={`${-margin} ${-margin} ${plate.width + 2 * margin} ${plate.height + 2 * margin}`}
      data-ground={ground}
      data-hollow={plate.isHollow || undefined}
      role={label === undefined ? undefined : 'img'}
      aria-label={label}
      aria-hidden={label === undefined ? true : undefined}
    >
      <path className={styles.body} d={plate.body} />
      {plate.core && <path className={styles.core} d={plate.core} />}
      {plate.lines.map((line) => (
        <path
          key={line.d}
          className={styles.line}
          d={line.d}
          strokeWidth={line.width}
          strokeDasharray={line.dash?.join(' ')}
        />
      ))}
      <circle
        className={plate.core ? styles.cut : styles.hole}
        cx={plate.hole.x}
        cy={plate.hole.y}
        r={plate.hole.radius}
      />
      <text className={inkOrCut} x={plate.label.x} y={plate.label.baselineY} fontSize={tagFontSize} textAnchor="middle">
        {plate.label.text}
      </text>
    </svg>
  );
}
