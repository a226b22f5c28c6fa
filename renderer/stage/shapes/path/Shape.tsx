import { outlineOf } from '../../../../shared-lib/geometry/outlines/index.ts';
import { onScreen, type ShapeProps } from '../shape-props.ts';
import { ThreeStrokes } from '../ThreeStrokes.tsx';

/** A line of many points beside what it marks, ticks at its true ends. */
export function PathShape({ points, view, style, unsure = [] }: ShapeProps) {
  return <ThreeStrokes strokes={outlineOf('path', onScreen(points, view), unsure)} style={style} />;
}
