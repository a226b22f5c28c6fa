import { besideOutline } from '../../../../shared-lib/geometry/outlines/beside.ts';
import { onScreen, type ShapeProps } from '../shape-props.ts';
import { ThreeStrokes } from '../ThreeStrokes.tsx';

/** A line of many points beside what it marks, ticks at its true ends. */
export function PathShape({ points, view, style }: ShapeProps) {
  return <ThreeStrokes strokes={besideOutline(onScreen(points, view))} style={style} />;
}
