import type { ShapeName } from '../../model/mark.ts';
import { areaOutline } from './area.ts';
import { arrowOutline } from './arrow.ts';
import { besideOutline } from './beside.ts';
import type { OutlineOf } from './outline.ts';
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
