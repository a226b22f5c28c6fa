import { spanOutline } from '../../../../shared-lib/geometry/outlines/span.ts';
import { onScreen, type ShapeProps } from '../shape-props.ts';
import { ThreeStrokes } from '../ThreeStrokes.tsx';

/** A dimension from tick to tick. */
export function SpanShape({ points, view, style }: ShapeProps) {
  return <ThreeStrokes strokes={spanOutline(onScreen(points, view))} style={style} />;
}
