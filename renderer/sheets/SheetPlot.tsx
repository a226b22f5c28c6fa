import type { Primitive } from '../../shared-lib/diagrams/drawing.ts';
import type { XY } from '../../shared-lib/geometry/spaces.ts';
import type { Plot } from '../../shared-lib/readings/plots/plot.ts';
import { classNames } from '../ui/class-names.ts';
import styles from './SheetPlot.module.css';

interface SheetPlotProps {
  readonly plot: Plot;
}

const chainOf = (points: readonly XY[]): string =>
  points.map(({ x, y }) => `${x.toFixed(2)},${y.toFixed(2)}`).join(' ');

/** The numbers as a picture, the same as in the report. */
export function SheetPlot({ plot }: SheetPlotProps) {
  return (
    <figure className={styles.figure}>
      <figcaption className={styles.title}>{plot.title}</figcaption>
      <svg
        viewBox={`0 0 ${plot.width} ${plot.height}`}
        width={plot.width}
        height={plot.height}
        role="img"
        aria-label={plot.title}
      >
        {plot.primitives.map((primitive, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a drawing is drawn anew as a whole.
          <Line key={index} primitive={primitive} />
        ))}
      </svg>
    </figure>
  );
}

function Line({ primitive }: { readonly primitive: Primitive }) {
  const pen = styles[primitive.weight];
  switch (primitive.kind) {
    case 'circle':
      return <circle className={pen} cx={primitive.centre.x} cy={primitive.centre.y} r={primitive.radius} />;
    case 'path': {
      const shared = {
        className: classNames(pen, primitive.dashed && styles.dashed),
        points: chainOf(primitive.points),
      };
      return primitive.closed ? <polygon {...shared} /> : <polyline {...shared} />;
    }
    case 'label':
      return (
        <text className={pen} x={primitive.at.x} y={primitive.at.y} textAnchor={primitive.anchor}>
          {primitive.text}
        </text>
      );
  }
}
