import type { CalibrationInput } from '../calibration/input.ts';
import type { Measurement } from '../calibration/measure.ts';
import { showMeasured } from '../calibration/show-measured.ts';
import { unitFor } from '../quantities/show-quantity.ts';
import { convert, type UnitSystem, unitNamed } from '../quantities/units.ts';
import type { CalibratedPlane } from './calibrated-plane.ts';

/** `38.4 ± 0.9 mm` in the shop's units; the same words in window, finding and report. */
export function sizeWords({ value, expanded, unit }: Measurement, system: UnitSystem): string {
  if (expanded === null) return `${value.toFixed(0)} ${unit === 'px²' ? 'square pixels' : 'pixels'}, no scale`;
  const from = unitNamed(unit);
  const to = unitNamed(unitFor(unit, system));
  const [shown, off] = from && to ? [convert(value, from, to), convert(expanded, from, to)] : [value, expanded];
  if (shown === null || off === null || !to) return showMeasured({ value, expanded }, unit);
  return showMeasured({ value: shown, expanded: off }, to.symbol);
}

const millimetres = (value: number, system: UnitSystem): string => {
  if (system === 'metric') return `${Number(value.toPrecision(6))}\u202fmm`;
  return `${Number((value / 25.4).toPrecision(6))}\u202fin`;
};

/** What the scale was taken from: `a known length of 150 mm`. */
export function referenceWords(reference: CalibrationInput, system: UnitSystem): string {
  switch (reference.method) {
    case 'known-length':
      return `a known length of ${millimetres(reference.lengthMm, system)}`;
    case 'known-circle':
      return `a circle of ${millimetres(reference.diameterMm, system)} across`;
    case 'known-points':
      return reference.card
        ? `${reference.points.length} points of the ${reference.card} calibration card`
        : `${reference.points.length} known points`;
  }
}

/** `Crown, from 4 known points, 5.9 px per mm`. */
export function calibrationWords(
  { plane, reference, pxPerMm }: Pick<CalibratedPlane, 'plane' | 'reference' | 'pxPerMm'>,
  system: UnitSystem,
): string {
  return `${plane}, from ${referenceWords(reference, system)}, ${pxPerMm.toFixed(1)} px per mm`;
}

/** How well the points fit; empty where nothing is left over to tell. */
export function fitWords({
  residualsPx,
  rmsPx,
  way,
}: Pick<CalibratedPlane, 'residualsPx' | 'rmsPx'> & { readonly way: CalibrationInput['method'] }): string {
  if (rmsPx === null) return '';
  if (way === 'known-points' && residualsPx.length === 4) return 'Four points always fit; a fifth would check them.';
  const worst = Math.max(...residualsPx);
  // Found by the program, not set by a hand: nobody can better the worst of them.
  if (rmsPx < 0.05) return `The points fit to ${rmsPx.toFixed(2)} px.`;
  return `The points fit to ${rmsPx.toFixed(1)} px; the worst, point ${residualsPx.indexOf(worst) + 1}, is ${worst.toFixed(1)} px off.`;
}

const warningWords: Readonly<Record<Measurement['warnings'][number], string>> = {
  'off-plane': 'The finding is on another part than the measured face, so this size may be wrong.',
  'far-from-reference': 'Far from what the scale was taken from, so it is less sure.',
};

export function sizeWarnings({ warnings }: Pick<Measurement, 'warnings'>): string[] {
  return warnings.map((warning) => warningWords[warning]);
}
