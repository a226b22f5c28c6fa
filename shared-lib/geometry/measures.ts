import type { ShapeName } from '../model/mark.ts';
import { chainLength, polygonArea } from './plane.ts';
import type { XY } from './spaces.ts';

/** What a shape measures in image pixels, before any calibration. Null where the shape has no such measure. */
export interface ShapeMeasures {
  /** Length along a line, path or span; round an area. */
  readonly lengthPx: number | null;
  readonly areaPx2: number | null;
}

const measured: Record<ShapeName, (points: readonly XY[]) => ShapeMeasures> = {
  point: () => ({ lengthPx: null, areaPx2: null }),
  line: openLength,
  path: openLength,
  span: openLength,
  /** An arrow points at something; its own length says nothing. */
  arrow: () => ({ lengthPx: null, areaPx2: null }),
  area: (points) => ({ lengthPx: chainLength(points, true), areaPx2: polygonArea(points) }),
};

function openLength(points: readonly XY[]): ShapeMeasures {
  return { lengthPx: chainLength(points, false), areaPx2: null };
}

export function measureShape(shape: ShapeName, points: readonly XY[]): ShapeMeasures {
  return measured[shape](points);
}
