import type { Edges } from '../verdict/limit.ts';

/**
 * A value on the scale of its limit, drawn from left to right: 0 is where nothing is spent, 1 is the limit. Beyond is
 * past 1, whichever side is bad.
 */
export interface LimitBar {
  readonly value: number;
  /** What it can be off by, as the two ends of a bracket. */
  readonly bracket: readonly [from: number, to: number] | null;
  /** Where the middle zone begins, when the limit has one. */
  readonly watchFrom: number | null;
}

/** One side of a limit as a straight scale: `zero` maps to 0, `edge` to 1. */
interface Scale {
  readonly zero: number;
  readonly edge: number;
}

const at = ({ zero, edge }: Scale, value: number): number => (value - zero) / (edge - zero);

function scalesOf({ min, max, badBelow, badAbove }: Edges, value: number, off: number): readonly Scale[] {
  const upper = badAbove ?? max;
  const lower = badBelow ?? min;
  if (upper !== undefined && lower !== undefined) {
    const middle = (upper + lower) / 2;
    const scales = [
      { zero: middle, edge: upper },
      { zero: middle, edge: lower },
    ];
    return scales.filter(({ zero, edge }) => zero !== edge);
  }
  if (upper !== undefined) {
    if (upper > 0) return [{ zero: 0, edge: upper }];
    return [{ zero: upper - spanAt(upper, value, off), edge: upper }];
  }
  if (lower !== undefined) {
    // The middle zone takes half of the scale at most, so that what is good has room too.
    const room = 2 * ((min ?? lower) - lower);
    return [{ zero: lower + Math.max(room, spanAt(lower, value, off)), edge: lower }];
  }
  return [];
}

/** How wide a scale is that does not begin at nothing: as wide as the limit is large, or as far as the value lies. */
const spanAt = (edge: number, value: number, off: number): number =>
  Math.abs(edge) > 0 ? Math.abs(edge) : Math.max(Math.abs(value), 4 * off, 1e-12);

/** Null where there is no limit to draw against. */
export function limitBar(value: number, uncertainty: number | null, limit: Edges | null): LimitBar | null {
  if (limit === null || !Number.isFinite(value)) return null;
  const off = uncertainty ?? 0;
  const scales = scalesOf(limit, value, off);
  const worst = scales.toSorted((a, b) => at(b, value) - at(a, value))[0];
  if (worst === undefined) return null;
  const ends = [at(worst, value - off), at(worst, value + off)].toSorted((a, b) => a - b);
  const [from = 0, to = 0] = ends;
  const isUpper = worst.edge > worst.zero;
  const begins = isUpper ? limit.max : limit.min;
  const bad = isUpper ? limit.badAbove : limit.badBelow;
  return {
    value: Math.max(0, at(worst, value)),
    bracket: uncertainty === null || uncertainty === 0 ? null : [Math.max(0, from), Math.max(0, to)],
    watchFrom: begins === undefined || bad === undefined ? null : Math.max(0, at(worst, begins)),
  };
}
