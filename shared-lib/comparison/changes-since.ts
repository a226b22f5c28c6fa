import type { KeptComparison } from '../contract/comparisons.ts';
import type { ComparedSize, OldFinding } from '../contract/returning.ts';
import { sizeWords } from '../measuring/words.ts';
import type { Finding } from '../model/finding.ts';
import { quantityKind } from '../quantities/dictionary.ts';
import { fallbackUncertainty } from '../quantities/fallback-uncertainty.ts';
import { showQuantity } from '../quantities/show-quantity.ts';
import { convert, type UnitSystem, unitNamed } from '../quantities/units.ts';
import type { FindingGrowth } from './growth-of-finding.ts';
import { bothSizes, growthWords } from './growth-words.ts';

/** One change of a finding, told once wherever it is told. */
export interface Change {
  readonly words: string;
  readonly isWorse: boolean;
}

/** What the photos measure, or could: a patch's area, else a length. */
function quantitiesOf({ sizeNow, sizeThen }: FindingGrowth): readonly string[] {
  const size = sizeNow ?? sizeThen;
  return size === null ? ['length', 'area'] : [size.what];
}

/** Whether the photos tell it by themselves. */
export const isTold = ({ growth }: FindingGrowth): boolean => growth !== null && growth.state !== 'not-comparable';

/** `Length 22 mm then, 31 mm now: +9 ± 1 mm, 4.3 mm per 100 h.` */
export const sizeChange = ({ what, was, now, change, state }: ComparedSize): Change => ({
  words: `${what.charAt(0).toUpperCase()}${what.slice(1)} ${was} then, ${now} now: ${change}.`,
  isWorse: state === 'worse',
});

/** As the two photos tell it; null where they cannot. */
export function photoChange(growth: FindingGrowth, units: UnitSystem): Change | null {
  if (!isTold(growth)) return null;
  return {
    words: `${bothSizes(growth, units)}. ${growthWords(growth, units)}`,
    isWorse: growth.growth?.state === 'grown',
  };
}

/**
 * All that has changed of a finding since an earlier visit. Two photos of these very visits that measure it stand before the
 * same size as it was written down: one change, one number. What they do not measure is told as it was written.
 */
export function changesSince(
  old: OldFinding,
  comparisons: readonly KeptComparison[],
  units: UnitSystem,
): readonly Change[] {
  const growth = comparisons
    .filter(({ earlier }) => earlier.visitId === old.visitId)
    .flatMap((kept) => kept.growth)
    .find((each) => each.findingId === old.takenUpAs && isTold(each));
  const byPhotos = growth === undefined ? null : photoChange(growth, units);
  if (growth === undefined || byPhotos === null) return old.sizes.map(sizeChange);
  const others = old.sizes.filter(({ quantity }) => !quantitiesOf(growth).includes(quantity));
  return [{ ...byPhotos, words: `By the photos: ${byPhotos.words}` }, ...others.map(sizeChange)];
}

/** The same change where the photos cannot tell it but both visits wrote it down; null where they did not. */
export function writtenChange(
  growth: FindingGrowth,
  { visitId }: { readonly visitId: string },
  old: readonly OldFinding[],
): Change | null {
  const since = old.find((each) => each.takenUpAs === growth.findingId && each.visitId === visitId);
  const size = since?.sizes.find(({ quantity }) => quantitiesOf(growth).includes(quantity));
  return size === undefined || size.state === 'not-comparable' ? null : sizeChange(size);
}

/** The finding says another size than its mark measures, by more than both can be off: for the mechanic, to put one right. */
export function writtenOtherwise(growth: FindingGrowth, finding: Finding, units: UnitSystem): string {
  const { sizeNow } = growth;
  if (!sizeNow) return '';
  const id = sizeNow.what;
  const written = finding.quantities[id];
  if (written === undefined || written.value === null) return '';
  const [from, to] = [unitNamed(written.unit), unitNamed(sizeNow.unit)];
  if (from === null || to === null) return '';
  const off = written.uncertainty ?? fallbackUncertainty(quantityKind(id), written.value, written.unit, written.origin);
  const [value, uncertainty] = [convert(written.value, from, to), convert(off ?? 0, from, to)];
  if (value === null || uncertainty === null || sizeNow.expanded === null) return '';
  if (Math.abs(value - sizeNow.value) <= uncertainty + sizeNow.expanded) return '';
  return `The finding says ${showQuantity(written, units)}, its mark measures ${sizeWords(sizeNow, units)}: put one of them right.`;
}
