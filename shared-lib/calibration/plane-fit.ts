import type { XY } from '../geometry/spaces.ts';
import { fitHomography, type Homography, invert, type PointPair, project } from './homography.ts';
import { leastSquares } from './least-squares.ts';
import { bendBack, type Lens, lensOf, straighten } from './lens.ts';

/** What is known of a lens before its photo is looked at. */
export interface LensGuess {
  readonly photo: { readonly width: number; readonly height: number };
  /** The bend that is likeliest; 0 for a phone, which straightens its pictures. */
  readonly bend: number;
  /** Its standard uncertainty. */
  readonly bendU: number;
  /** Standard deviation of one point along x and along y, px: what the guess is weighed against. */
  readonly pointPx: number;
}

export interface PlaneFit {
  /** From the straightened photo to the plane, and back. */
  readonly toPlane: Homography;
  readonly toPhoto: Homography;
  /** Null where the photo is taken as it is. */
  readonly lens: Lens | null;
}

/**
 * A plane's mapping, and the bend of the lens with it where there is a guess of it: what is straight in the plane has to be
 * straight in the straightened photo. Points that say little leave the guess as it was.
 *
 * @param pairs  from the photo, px, to the plane, mm
 * @returns null for a mapping that flattens the plane
 * @throws AppError as `fitHomography`
 */
export function fitPlane(pairs: readonly PointPair[], guess: LensGuess | null): PlaneFit | null {
  if (!guess) {
    const toPlane = fitHomography(pairs);
    const toPhoto = invert(toPlane);
    return toPhoto && { toPlane, toPhoto, lens: null };
  }
  const start = lensOf(guess.photo, guess.bend);
  const flat = invert(fitHomography(pairs.map(({ from, to }) => ({ from: straighten(start, from), to }))));
  if (!flat) return null;
  const unknowns = leastSquares(
    (values) => planeResiduals(pairs, values, flat[8], guess),
    [...flat.slice(0, 8), guess.bend],
  );
  return planeOf(unknowns, flat[8], guess);
}

/** @param unknowns  the first eight of the mapping to the photo; then, where there is a guess of it, the bend */
export function planeOf(unknowns: readonly number[], last: number, guess: LensGuess | null): PlaneFit | null {
  const toPhoto = [...unknowns.slice(0, 8), last] as unknown as Homography;
  const toPlane = invert(toPhoto);
  return toPlane && { toPlane, toPhoto, lens: guess && lensOf(guess.photo, unknowns[8] ?? 0) };
}

/** Offsets along x and y of every point in the straightened photo, px; then the guess, in the same coin. */
export function planeResiduals(
  pairs: readonly PointPair[],
  unknowns: readonly number[],
  last: number,
  guess: LensGuess | null,
): number[] {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, bend = 0] = unknowns;
  const lens = guess && lensOf(guess.photo, bend);
  const residuals: number[] = [];
  for (const { from, to } of pairs) {
    const there = lens ? straighten(lens, from) : from;
    const w = g * to.x + h * to.y + last;
    residuals.push((a * to.x + b * to.y + c) / w - there.x, (d * to.x + e * to.y + f) / w - there.y);
  }
  if (guess) residuals.push((guess.pointPx * (bend - guess.bend)) / guess.bendU);
  return residuals;
}

/** From the photo to the plane; null at or beyond its horizon. */
export function intoPlane({ toPlane, lens }: PlaneFit, point: XY): XY | null {
  return project(toPlane, lens ? straighten(lens, point) : point);
}

export function intoPhoto({ toPhoto, lens }: PlaneFit, point: XY): XY | null {
  const straight = project(toPhoto, point);
  return straight && lens ? bendBack(lens, straight) : straight;
}
