import { arrowOutline } from '../../../../shared-lib/geometry/outlines/arrow.ts';
import { onScreen, type ShapeProps } from '../shape-props.ts';
import { ThreeStrokes } from '../ThreeStrokes.tsx';

/** An arrow whose tip stops just short of what it points at. */
export function ArrowShape({ points, view, style }: ShapeProps) {
  return <ThreeStrokes strokes={arrowOutline(onScreen(points, view))} style={style} />;
}
