import { AppError } from '../contract/errors.ts';
import type { XY } from '../geometry/spaces.ts';
import type { CalibrationInput } from './input.ts';
import { gram, solve } from './linear.ts';
import { fitPlane, intoPlane, planeOf, planeResiduals } from './plane-fit.ts';
import { clicksOf, lensGuess, mapPlane, type PlaneMapping, pairsOf } from './plane-mapping.ts';
import { fromLimits, propagate } from './propagate.ts';

/** Standard uncertainties of a size that come in through the reference, in the size's unit. */
export interface ReferenceShares {
  readonly clicking: number;
  readonly tolerance: number;
  /** Of what the lens was guessed to do before the points were looked at. */
  readonly bend: number;
}

type KnownPoints = Extract<CalibrationInput, { method: 'known-points' }>;
type SizeIn = (mapping: Pick<PlaneMapping, 'toPlane'>) => number;

/**
 * @param clickingPx  standard uncertainty of one click
 * @param sizeIn  the size of a mark in a plane
 */
export function referenceShares(input: CalibrationInput, clickingPx: number, sizeIn: SizeIn): ReferenceShares {
  if (input.method === 'known-points') return pointShares(input, clickingPx, sizeIn);
  const stated = {
    value: input.method === 'known-length' ? input.lengthMm : input.diameterMm,
    u: fromLimits(input.toleranceMm),
  };
  const clicked = clicksOf(input).flatMap(({ x, y }) => [
    { value: x, u: clickingPx },
    { value: y, u: clickingPx },
  ]);
  const { shares } = propagate((values) => sizeIn(mapPlane(withValues(input, values))), [...clicked, stated]);
  return { clicking: Math.hypot(...shares.slice(0, -1)), tolerance: shares.at(-1) ?? 0, bend: 0 };
}

function withValues(input: Exclude<CalibrationInput, KnownPoints>, values: readonly number[]): CalibrationInput {
  const pair = (k: number): XY => ({ x: values[2 * k] ?? 0, y: values[2 * k + 1] ?? 0 });
  // A click moved for a derivative may leave the photo.
  const { photo: _, ...rest } = input;
  if (rest.method === 'known-length') return { ...rest, ends: [pair(0), pair(1)], lengthMm: values[4] ?? 0 };
  return { ...rest, rim: rest.rim.map((_point, k) => pair(k)), diameterMm: values.at(-1) ?? 0 };
}

/**
 * A fit of many points is not made anew for each of their coordinates: by the implicit function theorem a fit with
 * Jacobian J answers a change dr of its residuals with -(J^T J)^-1 J^T dr, to first order, which is what the law of
 * propagation asks for (JCGM 100:2008, 5.1.2).
 */
function pointShares(input: KnownPoints, clickingPx: number, sizeIn: SizeIn): ReferenceShares {
  const pairs = pairsOf(input);
  const guess = lensGuess(input);
  const fit = fitPlane(pairs, guess);
  if (!fit) throw new AppError('calibration-points-collinear', {});
  const unknowns = [...fit.toPhoto.slice(0, 8), ...(fit.lens ? [fit.lens.bend] : [])];
  const last = fit.toPhoto[8];
  const residuals = (values: readonly number[], of = pairs): number[] => planeResiduals(of, values, last, guess);
  const columns = unknowns.map((value, k) =>
    slopeOf((at) => residuals(unknowns.with(k, at)), value, 1e-6 * Math.max(1e-3, Math.abs(value))),
  );
  const slopes = unknowns.map((value, k) => {
    const size = (at: number): number[] => {
      const moved = planeOf(unknowns.with(k, at), last, guess);
      return [moved ? sizeIn({ toPlane: (point) => intoPlane(moved, point) }) : Number.NaN];
    };
    return slopeOf(size, value, 1e-6 * Math.max(1e-3, Math.abs(value)))[0] ?? Number.NaN;
  });
  const answers = answersTo(columns, slopes);
  let [clicks, tolerances] = [0, 0];
  for (const [i, { from, to }] of pairs.entries()) {
    // A point's coordinates move its own two residuals and no others.
    const change = ([x = 0, y = 0]: readonly number[]): number =>
      (answers[2 * i] ?? 0) * x + (answers[2 * i + 1] ?? 0) * y;
    for (const axis of ['x', 'y'] as const) {
      const byClick = (at: number) => residuals(unknowns, [{ from: { ...from, [axis]: at }, to }]);
      const byPlace = (at: number) => residuals(unknowns, [{ from, to: { ...to, [axis]: at } }]);
      clicks += change(slopeOf(byClick, from[axis], 1e-2)) ** 2;
      tolerances += change(slopeOf(byPlace, to[axis], 1e-3)) ** 2;
    }
  }
  return {
    clicking: clickingPx * Math.sqrt(clicks),
    tolerance: fromLimits(input.toleranceMm) * Math.sqrt(tolerances),
    bend: guess ? guess.pointPx * Math.abs(answers[2 * pairs.length] ?? 0) : 0,
  };
}

function slopeOf(f: (at: number) => readonly number[], at: number, step: number): number[] {
  const down = f(at - step);
  return f(at + step).map((up, i) => (up - (down[i] ?? 0)) / (2 * step));
}

/** How the size answers to each residual: J (J^T J)^-1 slopes, columns brought to one length first. */
function answersTo(columns: readonly (readonly number[])[], slopes: readonly number[]): number[] {
  const lengths = columns.map((column) => Math.hypot(...column) || 1);
  const count = columns[0]?.length ?? 0;
  const rows = Array.from({ length: count }, (_, i) =>
    columns.map((column, k) => (column[i] ?? 0) / (lengths[k] ?? 1)),
  );
  const solved = solve(
    gram(rows),
    slopes.map((slope, k) => slope / (lengths[k] ?? 1)),
  );
  return rows.map((row) => row.reduce((sum, value, k) => sum + value * (solved?.[k] ?? Number.NaN), 0));
}
