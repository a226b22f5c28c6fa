import { Shape } from 'react-konva';
import { distance } from '../../../shared-lib/geometry/plane.ts';
import type { XY } from '../../../shared-lib/geometry/spaces.ts';
import { edgesOf, middleOf } from '../../../shared-lib/geometry/vertices.ts';
import type { View } from '../../../shared-lib/geometry/viewport.ts';
import type { ImagePoint, ShapeName } from '../../../shared-lib/model/mark.ts';
import type { Look } from '../look.ts';
import type { Paint } from '../paint.ts';
import { onScreen } from '../shapes/shape-props.ts';
import { middleFromPx } from '../tools/pick/grips.ts';

interface HandlesProps {
  readonly shape: ShapeName;
  readonly points: readonly ImagePoint[];
  /** The points lead a trace: no straight edges run between them. */
  readonly isTrace?: boolean;
  readonly activeVertex: number | null;
  readonly view: View;
  readonly look: Look;
}

const vertexRadius = 5.5;
const middleRadius = 3.5;
const spotRadius = 1.2;
const apartPx = 12;

/** Rings on the true points of the picked mark, open in the middle so that the metal under them can be seen. */
export function Handles({ shape, points, isTrace = false, activeVertex, view, look }: HandlesProps) {
  return (
    <Shape
      listening={false}
      sceneFunc={({ _context: context }) => {
        const vertices = onScreen(points, view);
        for (const edge of isTrace ? [] : edgesOf(shape, vertices)) {
          if (distance(edge.from, edge.to) >= middleFromPx) ring(context, middleOf(edge), middleRadius, look, 1.5);
        }
        let shown: XY | null = null;
        for (const [index, vertex] of vertices.entries()) {
          // Where points crowd, their rings would bury the mark: a closer look shows each of them.
          if (index !== activeVertex && shown && distance(shown, vertex) < apartPx) continue;
          shown = vertex;
          ring(context, vertex, vertexRadius, look, 2);
          dot(context, vertex, index === activeVertex ? vertexRadius - 1 : spotRadius, look);
        }
      }}
    />
  );
}

function ring(context: Paint, centre: XY, radius: number, look: Look, width: number): void {
  for (const [colour, extra] of [
    [look.edge, 4],
    [look.halo, 2.5],
    [look.line, 0],
  ] as const) {
    context.beginPath();
    context.arc(centre.x, centre.y, radius, 0, 2 * Math.PI);
    context.strokeStyle = colour;
    context.lineWidth = width + extra;
    context.stroke();
  }
}

function dot(context: Paint, centre: XY, radius: number, look: Look): void {
  context.beginPath();
  context.arc(centre.x, centre.y, radius, 0, 2 * Math.PI);
  context.fillStyle = radius > spotRadius ? look.halo : look.line;
  context.fill();
}
