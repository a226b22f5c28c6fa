import type { Mark, ShapeName } from '../../model/mark.ts';
import type { XY } from '../spaces.ts';
import { areaOutline, grownOutline } from './area.ts';
import { arrowOutline } from './arrow.ts';
import { besideOutline, tracedOutline } from './beside.ts';
import type { OutlineOf, Stretches, Stroke } from './outline.ts';
import { pointOutline } from './point.ts';
import { spanOutline } from './span.ts';

export const outlines: Record<ShapeName, OutlineOf> = {
  point: pointOutline,
  line: besideOutline,
  path: besideOutline,
  area: areaOutline,
  arrow: arrowOutline,
  span: spanOutline,
};

const sure: Stretches = [];

/** Where the tracer guessed, or a border is hardly to be seen; nothing for a mark drawn by hand. */
export function unsureOf({ origin, points }: Pick<Mark, 'origin' | 'points'>): Stretches {
  if ((origin.by !== 'traced' && origin.by !== 'grown') || !origin.reading) return sure;
  return origin.reading.unsure.filter(([from, to]) => from < to && to < points.length);
}

/** A mark's drawing, doubtful stretches apart. */
export function outlineOf(shape: ShapeName, points: readonly XY[], unsure: Stretches): readonly Stroke[] {
  if (unsure.length === 0) return outlines[shape](points);
  if (shape === 'path') return tracedOutline(points, unsure);
  return shape === 'area' ? grownOutline(points, unsure) : outlines[shape](points);
}
