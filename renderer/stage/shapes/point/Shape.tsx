import { pointOutline } from '../../../../shared-lib/geometry/outlines/point.ts';
import { onScreen, type ShapeProps } from '../shape-props.ts';
import { ThreeStrokes } from '../ThreeStrokes.tsx';

/** A ring with ticks round the spot. */
export function PointShape({ points, view, style }: ShapeProps) {
  return <ThreeStrokes strokes={pointOutline(onScreen(points, view))} style={style} />;
}
