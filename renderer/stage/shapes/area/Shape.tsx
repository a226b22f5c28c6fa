import { areaOutline } from '../../../../shared-lib/geometry/outlines/area.ts';
import { onScreen, type ShapeProps } from '../shape-props.ts';
import { ThreeStrokes } from '../ThreeStrokes.tsx';

/** The outline of an area, never filled. */
export function AreaShape({ points, view, style }: ShapeProps) {
  return <ThreeStrokes strokes={areaOutline(onScreen(points, view))} style={style} />;
}
