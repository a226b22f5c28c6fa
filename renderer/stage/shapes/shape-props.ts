import type { Stretches } from '../../../shared-lib/geometry/outlines/outline.ts';
import type { ScreenPoint } from '../../../shared-lib/geometry/spaces.ts';
import { toScreen, type View } from '../../../shared-lib/geometry/viewport.ts';
import type { ImagePoint } from '../../../shared-lib/model/mark.ts';
import type { MarkStyle } from './strokes.ts';

export interface ShapeProps {
  readonly points: readonly ImagePoint[];
  readonly view: View;
  readonly style: MarkStyle;
  readonly unsure?: Stretches;
}

export function onScreen(points: readonly ImagePoint[], view: View): ScreenPoint[] {
  return points.map((point) => toScreen(view, point));
}
