import type { Measured } from '../calibration/show-measured.ts';
import { sizeWarnings, sizeWords } from '../measuring/words.ts';
import { unitFor } from '../quantities/show-quantity.ts';
import { convert, type UnitSystem, unitNamed } from '../quantities/units.ts';
import { type Growth, sayGrowth } from './growth.ts';
import type { FindingGrowth, GrowthGap } from './growth-of-finding.ts';

const gapWords: Readonly<Record<GrowthGap, string>> = {
  'other-part': 'A part was fitted there since, or it cannot be told: this is not the same one grown older.',
  'no-mark-then': 'Nothing of this finding is marked on the earlier photo.',
  'no-mark-now': "Nothing of this finding is marked on today's photo.",
  'only-carried': "Today's mark is still the old one as it was carried over: set it where it is today.",
  'not-alike': 'A length and an area cannot be compared.',
  'no-scale-then': "The earlier photo's mark has no scale: set a scale on that photo.",
  'no-scale-now': "Today's mark has no scale: set a scale on this photo.",
};

/** What is missing before the two sizes can be compared, each with its remedy. */
export function gapsOf({ missing }: Pick<FindingGrowth, 'missing'>): string[] {
  return missing.map((gap) => gapWords[gap]);
}

const gapFacts: Readonly<Record<GrowthGap, string>> = {
  'other-part': 'a part was fitted there since, or that cannot be told',
  'no-mark-then': 'it is not marked on the earlier photo',
  'no-mark-now': 'it is not marked on the later photo',
  'only-carried': 'the later mark was carried over from the earlier photo and not set anew',
  'not-alike': 'a length and an area cannot be compared',
  'no-scale-then': 'the earlier photo has no scale',
  'no-scale-now': 'the later photo has no scale',
};

/** The same for a reader who can do nothing about it. */
export function whyNotTold({ missing, growth }: Pick<FindingGrowth, 'missing' | 'growth'>): string {
  if (growth?.state === 'not-comparable') return 'a size or its uncertainty is missing';
  return missing.map((gap) => gapFacts[gap]).join('; ');
}

/** What became of it, in the shop's units; empty where it cannot be told. */
export function growthWords({ growth, sizeNow }: FindingGrowth, system: UnitSystem): string {
  if (!growth || !sizeNow) return '';
  const from = unitNamed(sizeNow.unit);
  const to = unitNamed(unitFor(sizeNow.unit, system));
  if (!from || !to || growth.state === 'not-comparable') return sayGrowth(growth, sizeNow.unit);
  const shown = ({ value, expanded }: Measured): Measured => ({
    value: convert(value, from, to) ?? value,
    expanded: convert(expanded, from, to) ?? expanded,
  });
  const converted: Growth =
    growth.state === 'no-change-told'
      ? { ...growth, growth: shown(growth.growth) }
      : { ...growth, growth: shown(growth.growth), per100Hours: growth.per100Hours && shown(growth.per100Hours) };
  return sayGrowth(converted, to.symbol);
}

/** `23.0 ± 0.4 mm then, 36.4 ± 0.5 mm now`. */
export function bothSizes({ sizeThen, sizeNow }: FindingGrowth, system: UnitSystem): string {
  if (!sizeThen || !sizeNow) return '';
  return `${sizeWords(sizeThen, system)} then, ${sizeWords(sizeNow, system)} now`;
}

/** Why one of the two sizes may be wrong. */
export function growthWarnings({ sizeThen, sizeNow }: Pick<FindingGrowth, 'sizeThen' | 'sizeNow'>): string[] {
  return [...new Set([sizeThen, sizeNow].flatMap((size) => (size ? sizeWarnings(size) : [])))];
}

/**
 * What a reader must not take from it.
 * Source: the handbook's sheet on crack growth: two points give no safe life, and no growth shown is not no growth.
 */
export function growthCaution({ growth }: Pick<FindingGrowth, 'growth'>): string {
  if (growth?.state === 'grown') return 'Growth usually gets faster. Two sizes give no safe life.';
  if (growth?.state === 'no-change-told') return 'That is not the same as no growth.';
  return '';
}
