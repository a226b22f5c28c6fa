import type { MeasuredShape } from '../calibration/input.ts';
import { type Measurement, measureInPixels, measureShape } from '../calibration/measure.ts';
import { AppError, type WireError } from '../contract/errors.ts';
import { distance } from '../geometry/plane.ts';
import type { Size, XY } from '../geometry/spaces.ts';
import { stretchCount } from '../growing/stretches.ts';
import type { Mark } from '../model/mark.ts';
import { isBelow } from '../parts/is-below.ts';
import type { KeptCalibration } from './calibrated-plane.ts';

/** What a mark measures in the plane it names, or in pixels where it names none. */
export interface MarkSize {
  readonly markId: string;
  readonly calibrationId: string | null;
  /** Length of a line or path, area of an outline. */
  readonly size: Measurement;
  /** Of a traced line, where it is as wide as half of it; null where no width could be read. */
  readonly width: Measurement | null;
  /** At the middle one of three points set by hand. */
  readonly angle: Measurement | null;
  /** Why it has no size in the plane; then `size` is in pixels. */
  readonly refused: WireError | null;
}

/** A width is read between two edges that a profile crosses, each to about half a pixel. Common practice, no source. */
const edgePx = 0.5;
/** Seen whole, a photo is about this many screen pixels across, and a hand sets a point to one of them. No source. */
const seenAcrossPx = 1000;

/** How surely a mark's points were set, px of the photo. */
export function pointUncertaintyPx({ origin, points }: Pick<Mark, 'origin' | 'points'>, photo: Size): number {
  if (origin.by === 'grown')
    return Math.min(100, origin.reading.borderPx * Math.sqrt(Math.max(1, points.length / stretchCount)));
  const said =
    origin.by === 'hand' || origin.by === 'carried'
      ? origin.pointPx
      : origin.by === 'traced'
        ? Number(origin.parameters.pointPx)
        : undefined;
  if (said !== undefined && said > 0) return Math.min(100, said);
  return Math.min(100, Math.max(1, Math.max(photo.width, photo.height) / seenAcrossPx));
}

/** Whether the places of a finding say that it lies on another part than the plane. Unsaid is not off. */
export function isOffPlane(component: string | null, location: string | undefined): boolean {
  if (component === null || location === undefined) return false;
  try {
    return !isBelow(location, component) && !isBelow(component, location);
  } catch (cause) {
    // A place that this layout does not know says nothing about the plane.
    if (cause instanceof AppError) return false;
    throw cause;
  }
}

/** @returns null for a mark that has no size: a point, an arrow */
export function markSize(
  mark: Mark,
  photo: Size,
  calibration: (KeptCalibration & { readonly id: string }) | null,
  location?: string,
): MarkSize | null {
  if (mark.shape === 'point' || mark.shape === 'arrow') return null;
  const shape: MeasuredShape = {
    shape: mark.shape,
    points: mark.points,
    pointPx: pointUncertaintyPx(mark, photo),
    offPlane: calibration !== null && isOffPlane(calibration.component, location),
  };
  const across = mark.origin.by === 'traced' ? usualWidth(mark) : null;
  const acrossShape: MeasuredShape | null = across && { ...shape, shape: 'span', points: across, pointPx: edgePx };
  const corner: MeasuredShape | null =
    mark.shape === 'path' && mark.origin.by !== 'traced' && mark.points.length === 3
      ? { ...shape, shape: 'angle' }
      : null;
  const inPixels = (refused: WireError | null): MarkSize => ({
    markId: mark.id,
    calibrationId: refused === null ? null : (calibration?.id ?? null),
    size: measureInPixels(shape),
    width: acrossShape && measureInPixels(acrossShape),
    // Seen at a slant an angle in the photo is none of the part.
    angle: null,
    refused,
  });
  if (calibration === null) return inPixels(null);
  const { reference } = calibration;
  try {
    return {
      markId: mark.id,
      calibrationId: calibration.id,
      size: measureShape(reference, shape),
      width: acrossShape && measureShape(reference, acrossShape),
      angle: corner && measureShape(reference, corner),
      refused: null,
    };
  } catch (cause) {
    if (cause instanceof AppError) return inPixels(cause.toWire());
    throw cause;
  }
}

/** Two points across a traced line where its width is the median of those read. */
function usualWidth({ points, origin }: Mark): [XY, XY] | null {
  if (origin.by !== 'traced' || !origin.reading) return null;
  const read = origin.reading.widthsPx
    .flatMap((widthPx, index) => (widthPx === null || widthPx <= 0 ? [] : [{ widthPx, index }]))
    .sort((a, b) => a.widthPx - b.widthPx);
  const usual = read[read.length >> 1];
  const at = usual && points[usual.index];
  if (!usual || !at) return null;
  const before = points[Math.max(0, usual.index - 1)] ?? at;
  const after = points[Math.min(points.length - 1, usual.index + 1)] ?? at;
  const along = distance(before, after);
  if (along === 0) return null;
  const half = {
    x: ((after.y - before.y) / along / 2) * usual.widthPx,
    y: ((before.x - after.x) / along / 2) * usual.widthPx,
  };
  return [
    { x: at.x - half.x, y: at.y - half.y },
    { x: at.x + half.x, y: at.y + half.y },
  ];
}
