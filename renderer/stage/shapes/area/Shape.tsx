import { outlineOf } from '../../../../shared-lib/geometry/outlines/index.ts';
import { onScreen, type ShapeProps } from '../shape-props.ts';
import { ThreeStrokes } from '../ThreeStrokes.tsx';

/** The outline of an area, never filled; of a grown one, stretches without contrast are dotted. */
export function AreaShape({ points, view, style, unsure = [] }: ShapeProps) {
  return <ThreeStrokes strokes={outlineOf('area', onScreen(points, view), unsure)} style={style} />;
}
