import { AppError } from '../contract/errors.ts';
import { boundingBox, distance, midpoint } from '../geometry/plane.ts';
import type { XY } from '../geometry/spaces.ts';
import { type Ellipse, fitEllipse } from './ellipse.ts';
import { fitHomography, type Homography, type PointPair, turnAlike } from './homography.ts';
import type { CalibrationInput } from './input.ts';
import { fitPlane, intoPhoto, intoPlane, type LensGuess } from './plane-fit.ts';
import { fromLimits } from './propagate.ts';

/** From pixels of the upright photo to millimetres in one plane. */
export interface PlaneMapping {
  /** @returns null at or beyond the plane's horizon */
  toPlane(point: XY): XY | null;
  toPhoto(point: XY): XY | null;
  /** The same as `toPlane`, as a matrix; the nearest one where the lens bends straight lines. */
  readonly matrix: Homography;
  /** Distance of each reference point from where the mapping puts it, px. */
  readonly residualsPx: readonly number[];
  /** How the lens bends straight lines (`Lens.bend`), where the reference has said so; else null. */
  readonly bend: number | null;
  /** Readings beyond what the mapping needs. */
  readonly degrees: number;
  /** Where the reference lies in the photo, and how far it reaches, px. */
  readonly referenceAt: XY;
  readonly referenceReachPx: number;
  /** Tilt of the plane against the photo, radians; null where it can't be told. */
  readonly tilt: number | null;
}

/** @throws AppError 'calibration-...' or 'point-outside-photo': the reference is none */
export function mapPlane(input: CalibrationInput): PlaneMapping {
  checkClicks(input);
  switch (input.method) {
    case 'known-length':
      return fromLength(input.ends, input.lengthMm);
    case 'known-circle':
      return fromCircle(input.rim, input.diameterMm, input.clickingPx);
    case 'known-points':
      return fromPoints(pairsOf(input), lensGuess(input));
  }
}

export function pairsOf({ points }: Extract<CalibrationInput, { method: 'known-points' }>): PointPair[] {
  return points.map(({ px, mm }) => ({ from: px, to: mm }));
}

/** Fewer points than this leave nothing over to tell a bent lens from a slip. */
const fewestForLens = 6;

/** What is known of the lens; null where the points are not to say anything about it. */
export function lensGuess(input: CalibrationInput): LensGuess | null {
  if (input.method !== 'known-points' || !input.lens || !input.photo) return null;
  if (input.points.length < fewestForLens) return null;
  return { photo: input.photo, bend: 0, bendU: input.lens.bendU, pointPx: pointNoisePx(input) };
}

/** How far off a reference point may be in the photo, from clicking and from its own tolerance: standard deviation, px. */
export function pointNoisePx(input: Extract<CalibrationInput, { method: 'known-points' }>): number {
  const inPhoto = boundingBox(input.points.map(({ px }) => px));
  const inPlane = boundingBox(input.points.map(({ mm }) => mm));
  if (!inPhoto || !inPlane) return input.clickingPx;
  const mm = Math.hypot(inPlane.right - inPlane.left, inPlane.bottom - inPlane.top);
  const px = Math.hypot(inPhoto.right - inPhoto.left, inPhoto.bottom - inPhoto.top);
  return mm > 0 ? Math.hypot(input.clickingPx, (fromLimits(input.toleranceMm) * px) / mm) : input.clickingPx;
}

export function clicksOf(input: CalibrationInput): readonly XY[] {
  if (input.method === 'known-length') return input.ends;
  return input.method === 'known-circle' ? input.rim : input.points.map(({ px }) => px);
}

function checkClicks(input: CalibrationInput): void {
  const { photo } = input;
  if (!photo) return;
  for (const { x, y } of clicksOf(input)) {
    if (x >= -0.5 && y >= -0.5 && x <= photo.width - 0.5 && y <= photo.height - 0.5) continue;
    throw new AppError('point-outside-photo', { x, y });
  }
}

function fromLength([a, b]: readonly [XY, XY], lengthMm: number): PlaneMapping {
  const lengthPx = distance(a, b);
  if (!(lengthPx > 0.5) || !(lengthMm > 0)) throw new AppError('calibration-zero-length', {});
  const mmPerPx = lengthMm / lengthPx;
  return {
    toPlane: ({ x, y }) => ({ x: x * mmPerPx, y: y * mmPerPx }),
    toPhoto: ({ x, y }) => ({ x: x / mmPerPx, y: y / mmPerPx }),
    matrix: [mmPerPx, 0, 0, 0, mmPerPx, 0, 0, 0, 1],
    residualsPx: [],
    bend: null,
    degrees: 0,
    referenceAt: midpoint(a, b),
    referenceReachPx: lengthPx / 2,
    tilt: null,
  };
}

function fromCircle(rim: readonly XY[], diameterMm: number, clickingPx: number): PlaneMapping {
  if (rim.length < 5) throw new AppError('calibration-too-few-points', { fewest: 5, given: rim.length });
  if (!(diameterMm > 0)) throw new AppError('calibration-zero-length', {});
  const ellipse = fitEllipse(rim);
  const residualsPx = ellipse ? rim.map((point) => distanceToEllipse(point, ellipse)) : [];
  const rms = Math.sqrt(residualsPx.reduce((sum, r) => sum + r * r, 0) / rim.length);
  // Flatter than six to one a rim can't be clicked; far off every ellipse it is none.
  if (!ellipse || ellipse.semiMinor < ellipse.semiMajor / 6 || rms > Math.max(4 * clickingPx, 0.05 * ellipse.semiMinor))
    throw new AppError('calibration-not-ellipse', {});
  const { centre, semiMajor, semiMinor, angle } = ellipse;
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  const alongMajor = diameterMm / (2 * semiMajor);
  const alongMinor = diameterMm / (2 * semiMinor);
  return {
    toPlane: ({ x, y }) => ({
      x: alongMajor * (cosine * (x - centre.x) + sine * (y - centre.y)),
      y: alongMinor * (cosine * (y - centre.y) - sine * (x - centre.x)),
    }),
    toPhoto: ({ x, y }) => ({
      x: centre.x + (cosine * x) / alongMajor - (sine * y) / alongMinor,
      y: centre.y + (sine * x) / alongMajor + (cosine * y) / alongMinor,
    }),
    matrix: [
      alongMajor * cosine,
      alongMajor * sine,
      -alongMajor * (cosine * centre.x + sine * centre.y),
      -alongMinor * sine,
      alongMinor * cosine,
      alongMinor * (sine * centre.x - cosine * centre.y),
      0,
      0,
      1,
    ],
    residualsPx,
    bend: null,
    degrees: rim.length - 5,
    referenceAt: centre,
    referenceReachPx: semiMajor,
    tilt: Math.acos(Math.min(1, semiMinor / semiMajor)),
  };
}

/** To first order: along the ray from the centre, times the cosine between ray and normal. */
function distanceToEllipse({ x, y }: XY, { centre, semiMajor, semiMinor, angle }: Ellipse): number {
  const u = (Math.cos(angle) * (x - centre.x) + Math.sin(angle) * (y - centre.y)) / semiMajor;
  const v = (Math.cos(angle) * (y - centre.y) - Math.sin(angle) * (x - centre.x)) / semiMinor;
  const slope = 2 * Math.hypot(u / semiMajor, v / semiMinor);
  return slope === 0 ? semiMinor : Math.abs(u * u + v * v - 1) / slope;
}

function fromPoints(pairs: readonly PointPair[], guess: LensGuess | null): PlaneMapping {
  if (pairs.length < 4) throw new AppError('calibration-too-few-points', { fewest: 4, given: pairs.length });
  const matrix = fitHomography(pairs);
  if (!turnAlike(pairs)) throw new AppError('calibration-points-crossing', {});
  const fit = fitPlane(pairs, guess);
  if (!fit) throw new AppError('calibration-points-collinear', {});
  const backs = pairs.map(({ to }) => intoPhoto(fit, to));
  if (backs.includes(null)) throw new AppError('calibration-points-crossing', {});
  const box = boundingBox(pairs.map(({ from }) => from)) ?? { left: 0, top: 0, right: 0, bottom: 0 };
  return {
    toPlane: (point) => intoPlane(fit, point),
    toPhoto: (point) => intoPhoto(fit, point),
    matrix,
    residualsPx: pairs.map(({ from }, i) => distance(from, backs[i] ?? from)),
    degrees: 2 * pairs.length - (fit.lens ? 9 : 8),
    bend: fit.lens?.bend ?? null,
    referenceAt: { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 },
    referenceReachPx: Math.hypot(box.right - box.left, box.bottom - box.top) / 2,
    tilt: null,
  };
}
