import type { Diagram } from '../../shared-lib/diagrams/diagram-for.ts';
import type { Primitive } from '../../shared-lib/diagrams/drawing.ts';
import type { XY } from '../../shared-lib/geometry/spaces.ts';
import { TagPlate } from '../stage/shapes/tag/TagPlate.tsx';
import { classNames } from '../ui/class-names.ts';
import styles from './LocationDiagram.module.css';

interface DiagramLinesProps {
  readonly diagram: Diagram;
}

function chainOf(points: readonly XY[]): string {
  return points.map(({ x, y }) => `${x.toFixed(2)},${y.toFixed(2)}`).join(' ');
}

function Line({ primitive }: { readonly primitive: Primitive }) {
  switch (primitive.kind) {
    case 'circle':
      return (
        <circle
          className={styles[primitive.weight]}
          cx={primitive.centre.x}
          cy={primitive.centre.y}
          r={primitive.radius}
        />
      );
    case 'path': {
      const shared = {
        className: classNames(styles[primitive.weight], primitive.dashed && styles.dashed),
        points: chainOf(primitive.points),
      };
      return primitive.closed ? <polygon {...shared} /> : <polyline {...shared} />;
    }
    case 'label':
      return (
        <text className={styles[primitive.weight]} x={primitive.at.x} y={primitive.at.y} textAnchor={primitive.anchor}>
          {primitive.text}
        </text>
      );
  }
}

/** The drawing itself: lines of the part, the place in blue, tags on their leaders. */
export function DiagramLines({ diagram }: DiagramLinesProps) {
  const { width, height, primitives, anchors, tags } = diagram;
  return (
    <svg viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      {primitives.map((primitive) => (
        <Line key={JSON.stringify(primitive)} primitive={primitive} />
      ))}
      {tags.flatMap(({ findingId, leaders }) =>
        leaders.map(({ from, to }) => (
          <line
            key={`${findingId} ${to.x} ${to.y}`}
            className={styles.leader}
            x1={from.x}
            y1={from.y}
            x2={to.x}
            y2={to.y}
          />
        )),
      )}
      {anchors.flatMap(({ location, point, strokes }) =>
        strokes.length === 0
          ? [<circle key={location} className={styles.dot} cx={point.x} cy={point.y} r={3.5} />]
          : strokes.map((stroke) => (
              <polyline key={`${location} ${chainOf(stroke)}`} className={styles.stroke} points={chainOf(stroke)} />
            )),
      )}
      {tags.map(({ findingId, tag, at, height: tagHeight }) => (
        <g key={findingId} transform={`translate(${at.x} ${at.y})`}>
          <TagPlate {...tag} height={tagHeight} />
        </g>
      ))}
    </svg>
  );
}
