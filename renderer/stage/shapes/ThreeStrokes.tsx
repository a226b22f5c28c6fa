import { Shape } from 'react-konva';
import type { Stroke } from '../../../shared-lib/geometry/outlines/outline.ts';
import { drawStrokes, type MarkStyle } from './strokes.ts';

interface ThreeStrokesProps {
  readonly strokes: readonly Stroke[];
  readonly style: MarkStyle;
}

/** Strokes as every mark has them, in screen pixels. */
export function ThreeStrokes({ strokes, style }: ThreeStrokesProps) {
  return <Shape listening={false} sceneFunc={(context) => drawStrokes(context._context, strokes, style)} />;
}
