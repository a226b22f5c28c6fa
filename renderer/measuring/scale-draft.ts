import type { CalibrationInput } from '../../shared-lib/calibration/input.ts';
import type { InputOf } from '../../shared-lib/contract/operations.ts';
import type { CalibratedPlane } from '../../shared-lib/measuring/calibrated-plane.ts';
import type { ImagePoint } from '../../shared-lib/model/mark.ts';
import { readQuantity } from '../../shared-lib/quantities/read-quantity.ts';
import { unitFor } from '../../shared-lib/quantities/show-quantity.ts';
import { convert, type UnitSystem, unitNamed } from '../../shared-lib/quantities/units.ts';

export type ScaleWay = CalibrationInput['method'];
export type Reference = InputOf<'calibration.add'>['reference'];

export interface SetPoint {
  readonly at: ImagePoint;
  /** How surely the hand set it at the zoom of that moment, px of the photo. */
  readonly pointPx: number;
}

/** A scale in the making. Each way keeps what was set and typed for it, so that changing one's mind loses nothing. */
export interface ScaleDraft {
  readonly way: ScaleWay;
  /** Null until it is typed: then the part's own name stands there. */
  readonly plane: string | null;
  /** Undefined until it is said: then it is the photo's part. */
  readonly component?: string | null;
  readonly points: Readonly<Record<ScaleWay, readonly SetPoint[]>>;
  readonly length: string;
  readonly diameter: string;
  readonly tolerance: string;
  /** Four corners of a rectangle, or the place of each point. */
  readonly known: 'rectangle' | 'places';
  readonly wide: string;
  readonly high: string;
  readonly places: readonly { readonly across: string; readonly down: string }[];
}

export const emptyScale: ScaleDraft = {
  way: 'known-length',
  plane: null,
  points: { 'known-length': [], 'known-circle': [], 'known-points': [] },
  length: '',
  diameter: '',
  tolerance: '',
  known: 'rectangle',
  wide: '',
  high: '',
  places: [],
};

/** A typed size in millimetres; a bare number is in the shop's unit. Null for what is not plainly one length. */
export function millimetresOf(typed: string, units: UnitSystem): number | null {
  const { value, unit } = readQuantity(typed, unitFor('mm', units), 'measured');
  const [from, to] = [unitNamed(unit), unitNamed('mm')];
  return value === null || !from || !to ? null : convert(value, from, to);
}

export type ReadyScale =
  | { readonly reference: Reference; readonly missing: null }
  /** What is still to be done, in a few words. */
  | { readonly reference: null; readonly missing: string };

const missing = (words: string): ReadyScale => ({ reference: null, missing: words });

/** The draft as a reference, or what it still lacks. */
export function readyScale(draft: ScaleDraft, plane: string, units: UnitSystem): ReadyScale {
  const set = draft.points[draft.way];
  const toleranceMm = draft.tolerance.trim() === '' ? 0 : millimetresOf(draft.tolerance, units);
  if (toleranceMm === null || toleranceMm < 0)
    return missing('Type how far the size can be off as a length, or leave it empty.');
  // Clicks of different sureness count as alike sure: their root mean square.
  const clickingPx = Math.sqrt(set.reduce((sum, { pointPx }) => sum + pointPx ** 2, 0) / Math.max(1, set.length)) || 1;
  const common = { plane, toleranceMm, clickingPx };
  switch (draft.way) {
    case 'known-length': {
      const [from, to] = set;
      if (!from || !to) return missing('Pull from end to end of the known length on the photo, or tap both ends.');
      const lengthMm = millimetresOf(draft.length, units);
      if (lengthMm === null) return missing('Type how long it is.');
      return { reference: { method: 'known-length', ends: [from.at, to.at], lengthMm, ...common }, missing: null };
    }
    case 'known-circle': {
      if (set.length < 5) return missing(`Set five or more points round the rim: ${set.length} set.`);
      const diameterMm = millimetresOf(draft.diameter, units);
      if (diameterMm === null) return missing('Type how wide the circle is.');
      return {
        reference: { method: 'known-circle', rim: set.map(({ at }) => at), diameterMm, ...common },
        missing: null,
      };
    }
    case 'known-points':
      return readyPoints(draft, common, units);
  }
}

function readyPoints(
  draft: ScaleDraft,
  common: { plane: string; toleranceMm: number; clickingPx: number },
  units: UnitSystem,
): ReadyScale {
  const set = draft.points['known-points'];
  const places = placesOf(draft, units);
  if (draft.known === 'rectangle' && set.length !== 4)
    return missing(`Set the four corners, going round: ${set.length} set.`);
  if (set.length < 4) return missing(`Set four or more points: ${set.length} set.`);
  const points = set.flatMap(({ at }, index) => {
    const place = places[index];
    return place ? [{ px: at, mm: place }] : [];
  });
  if (points.length < set.length)
    return missing(draft.known === 'rectangle' ? 'Type how wide and how high it is.' : 'Type where each point lies.');
  return { reference: { method: 'known-points', points, ...common }, missing: null };
}

/** Corners go round from the first: along the width, then along the height. */
function placesOf(draft: ScaleDraft, units: UnitSystem): ({ x: number; y: number } | null)[] {
  if (draft.known === 'places')
    return draft.points['known-points'].map((_point, index) => {
      const x = millimetresOf(draft.places[index]?.across ?? '', units);
      const y = millimetresOf(draft.places[index]?.down ?? '', units);
      return x === null || y === null ? null : { x, y };
    });
  const [wide, high] = [millimetresOf(draft.wide, units), millimetresOf(draft.high, units)];
  if (wide === null || high === null) return [];
  return [
    { x: 0, y: 0 },
    { x: wide, y: 0 },
    { x: wide, y: high },
    { x: 0, y: high },
  ];
}

const typedMm = (mm: number): string => `${Number(mm.toPrecision(6))} mm`;

/** A kept scale taken up again, to be bettered: a new one, the old one stays. */
export function draftOfPlane({ plane, component, reference }: CalibratedPlane): ScaleDraft {
  const pointPx = reference.clickingPx;
  const set = (points: readonly ImagePoint[]): SetPoint[] => points.map((at) => ({ at, pointPx }));
  const draft: ScaleDraft = {
    ...emptyScale,
    way: reference.method,
    plane,
    component,
    tolerance: reference.toleranceMm === 0 ? '' : typedMm(reference.toleranceMm),
  };
  // A card is looked for again, not set by hand.
  if (reference.method === 'known-points' && reference.card) return { ...emptyScale, plane, component };
  switch (reference.method) {
    case 'known-length':
      return {
        ...draft,
        length: typedMm(reference.lengthMm),
        points: { ...draft.points, 'known-length': set(reference.ends) },
      };
    case 'known-circle':
      return {
        ...draft,
        diameter: typedMm(reference.diameterMm),
        points: { ...draft.points, 'known-circle': set(reference.rim) },
      };
    case 'known-points':
      return {
        ...draft,
        known: 'places',
        places: reference.points.map(({ mm }) => ({ across: typedMm(mm.x), down: typedMm(mm.y) })),
        points: { ...draft.points, 'known-points': set(reference.points.map(({ px }) => px)) },
      };
  }
}
