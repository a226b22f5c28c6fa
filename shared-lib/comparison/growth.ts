import { type Measured, showMeasured } from '../calibration/show-measured.ts';

/** A mark's size at one visit. */
export interface SizeThen {
  readonly value: number;
  /** Standard uncertainty. */
  readonly u: number;
  /** True hours of the machine; null where they were not read. */
  readonly hours: number | null;
}

export type Growth =
  | {
      readonly state: 'grown' | 'smaller';
      readonly growth: Measured;
      /** Null where the hours between are not known, or none passed. */
      readonly per100Hours: Measured | null;
    }
  /** The change lies inside its own uncertainty. */
  | { readonly state: 'no-change-told'; readonly growth: Measured }
  /** A size or its uncertainty is missing. */
  | { readonly state: 'not-comparable' };

/**
 * What became of a crack or patch between two visits. Both sizes are taken as independent: two photos, two calibrations.
 * Source: JCGM 100:2008 (GUM) 5.1.2 for a difference; a change is told where it exceeds its own expanded uncertainty (k = 2).
 */
export function growthBetween(before: SizeThen, after: SizeThen): Growth {
  const growth = { value: after.value - before.value, expanded: 2 * Math.hypot(before.u, after.u) };
  if (!Number.isFinite(growth.value) || !Number.isFinite(growth.expanded)) return { state: 'not-comparable' };
  if (Math.abs(growth.value) <= growth.expanded) return { state: 'no-change-told', growth };
  const hours = before.hours === null || after.hours === null ? 0 : after.hours - before.hours;
  const per = (x: number): number => (100 * x) / hours;
  return {
    state: growth.value > 0 ? 'grown' : 'smaller',
    growth,
    per100Hours: hours > 0 ? { value: per(growth.value), expanded: per(growth.expanded) } : null,
  };
}

/** One line, in the unit of the sizes. */
export function sayGrowth(growth: Growth, unit: string): string {
  if (growth.state === 'not-comparable') return 'These two sizes cannot be compared.';
  const by = showMeasured(growth.growth, unit);
  if (growth.state === 'no-change-told') return `No change that can be told (${by}).`;
  if (growth.state === 'smaller')
    return `Smaller by ${showMeasured({ ...growth.growth, value: -growth.growth.value }, unit)}: is it the same one?`;
  return `Grown by ${by}${growth.per100Hours ? `, ${showMeasured(growth.per100Hours, unit)} per 100 h` : ''}.`;
}
