import { AppError } from '../contract/errors.ts';
import { distance } from '../geometry/plane.ts';
import type { XY } from '../geometry/spaces.ts';
import { expandedUncertainty, type Possible } from './expand.ts';
import type { CalibrationInput, MeasuredShape } from './input.ts';
import { leanErrors } from './lean.ts';
import { mapPlane, type PlaneMapping, pointNoisePx } from './plane-mapping.ts';
import { toLimits } from './propagate.ts';
import { referenceShares } from './reference-shares.ts';
import { type SizeUnit, sizeOf, slopesOf, unitOf } from './shape-size.ts';
import { showMeasured } from './show-measured.ts';

/** Where an uncertainty comes from. */
export type UncertaintySource = 'clicking-reference' | 'reference-tolerance' | 'clicking-mark' | 'lean' | 'lens';

export interface Measurement {
  readonly what: SizeUnit;
  readonly unit: 'mm' | 'mm\u00b2' | '\u00b0' | 'px' | 'px\u00b2';
  readonly value: number;
  /** Combined standard uncertainty; null where nothing is known of it. */
  readonly u: number | null;
  /** Expanded uncertainty: what k = 2 holds of a normal quantity, 95 %. Null where nothing is known of it. */
  readonly expanded: number | null;
  /** Standard uncertainties that make it up, in the same unit. */
  readonly shares: Readonly<Partial<Record<UncertaintySource, number>>>;
  readonly warnings: readonly ('off-plane' | 'far-from-reference')[];
  readonly text: string;
}

const units = { length: 'mm', area: 'mm\u00b2', angle: '\u00b0' } as const;
const pixelUnits = { length: 'px', area: 'px\u00b2', angle: '\u00b0' } as const;

/** Without a calibration a mark has a size in pixels and nothing else; an angle in a leaning photo is no angle of the part. */
export function measureInPixels({ shape, points }: MeasuredShape): Measurement {
  const what = unitOf(shape);
  const value = sizeOf(shape, points);
  const unit = pixelUnits[what];
  return {
    what,
    unit,
    value,
    u: null,
    expanded: null,
    shares: {},
    warnings: [],
    text: `${value.toFixed(1)} ${unit}, not calibrated`,
  };
}

/**
 * A mark's size in the calibrated plane with its expanded uncertainty.
 *
 * Everything that was clicked or stated is an input of one model, and the law of propagation runs through the whole of it,
 * the fit of the calibration included (JCGM 100:2008, 5.1.2).
 *
 * @throws AppError as `mapPlane`, and 'mark-beyond-horizon'
 */
export function measureShape(
  input: CalibrationInput,
  { shape, points, pointPx, offPlane }: MeasuredShape,
): Measurement {
  const mapping = mapPlane(input);
  const what = unitOf(shape);
  const value = sizeOf(shape, pointsInPlane(mapping, points));
  const inflated = inflation(input, mapping);
  const reference = referenceShares(input, inflated, (other) => sizeOf(shape, pointsInPlane(other, points)));
  const power = what === 'area' ? 2 : what === 'length' ? 1 : 0;
  const size = Math.abs(value);
  const leans = leanErrors(input, mapping, shape, points, value, inflated);
  const shares: Record<UncertaintySource, number> = {
    'clicking-reference': reference.clicking,
    'reference-tolerance': Math.hypot(reference.tolerance, trueToScale(input) * power * size),
    'clicking-mark': clickingShare(mapping, shape, points, pointPx),
    lean: rootMeanSquare(leans),
    lens: Math.hypot(reference.bend, input.lensShare * power * size),
  };
  // One tolerance is anywhere within its limits; those of many points come together to something normal.
  const limits = input.method === 'known-points' ? 0 : shares['reference-tolerance'];
  const { lean: _, 'reference-tolerance': tolerance, ...normal } = shares;
  const expanded = expandedUncertainty({
    normalU: Math.hypot(...Object.values(normal), ...(limits === 0 ? [tolerance] : [])),
    half: toLimits(limits),
    oneOf: leans,
  });
  const middle = middleOf(points);
  const isFar = distance(middle, mapping.referenceAt) > 3 * mapping.referenceReachPx;
  return {
    what,
    unit: units[what],
    value,
    u: Math.hypot(...Object.values(shares)),
    expanded,
    shares,
    warnings: [...(offPlane ? (['off-plane'] as const) : []), ...(isFar ? (['far-from-reference'] as const) : [])],
    text: showMeasured({ value, expanded }, units[what]),
  };
}

function pointsInPlane(mapping: Pick<PlaneMapping, 'toPlane'>, points: readonly XY[]): XY[] {
  return points.map((point) => {
    const there = mapping.toPlane(point);
    if (!there) throw new AppError('mark-beyond-horizon', {});
    return there;
  });
}

function rootMeanSquare(errors: readonly Possible[]): number {
  const whole = errors.reduce((sum, { weight }) => sum + weight, 0);
  return whole === 0 ? 0 : Math.sqrt(errors.reduce((sum, { error, weight }) => sum + weight * error ** 2, 0) / whole);
}

function trueToScale(input: CalibrationInput): number {
  return input.method === 'known-points' ? (input.referenceShare ?? 0) : 0;
}

/**
 * Uncertainty of one click, px: what was stated, or more where the residuals speak against it (beyond the 95 % point of
 * chi squared; Birge's ratio). A reference that fits too well proves nothing and takes nothing away.
 * Source of the quantile: Wilson and Hilferty's approximation (1931).
 */
function inflation(input: CalibrationInput, { residualsPx, degrees }: PlaneMapping): number {
  if (degrees < 1) return input.clickingPx;
  const usualPx = input.method === 'known-points' ? pointNoisePx(input) : input.clickingPx;
  const squares = residualsPx.reduce((sum, r) => sum + (r / usualPx) ** 2, 0);
  const spread = 2 / (9 * degrees);
  const most = degrees * (1 - spread + 1.645 * Math.sqrt(spread)) ** 3;
  return squares > most ? input.clickingPx * Math.sqrt(squares / degrees) : input.clickingPx;
}

function clickingShare(
  mapping: PlaneMapping,
  shape: MeasuredShape['shape'],
  points: readonly XY[],
  pointPx: number,
): number {
  if (pointPx === 0) return 0;
  const slopes = slopesOf(shape, pointsInPlane(mapping, points));
  let squares = 0;
  for (const [i, point] of points.entries()) {
    const slope = slopes[i] ?? { x: 0, y: 0 };
    for (const [dx, dy] of [
      [0.5, 0],
      [0, 0.5],
    ] as const) {
      const up = mapping.toPlane({ x: point.x + dx, y: point.y + dy });
      const down = mapping.toPlane({ x: point.x - dx, y: point.y - dy });
      if (!up || !down) throw new AppError('mark-beyond-horizon', {});
      squares += (slope.x * (up.x - down.x) + slope.y * (up.y - down.y)) ** 2;
    }
  }
  return pointPx * Math.sqrt(squares);
}

function middleOf(points: readonly XY[]): XY {
  return {
    x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
    y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
  };
}
