import { describe, expect, it } from 'vitest';
import type { Measurement } from '../../../../shared-lib/calibration/measure.ts';
import { changesSince, writtenChange, writtenOtherwise } from '../../../../shared-lib/comparison/changes-since.ts';
import { growthBetween } from '../../../../shared-lib/comparison/growth.ts';
import type { FindingGrowth } from '../../../../shared-lib/comparison/growth-of-finding.ts';
import type { KeptComparison } from '../../../../shared-lib/contract/comparisons.ts';
import type { OldFinding } from '../../../../shared-lib/contract/returning.ts';
import { compareSizes } from '../../../../shared-lib/returning/compare-sizes.ts';
import { aFinding } from '../../../support/ranking/a-finding.ts';

const typed = (text: string, value: number) => ({
  typed: text,
  value,
  unit: 'mm',
  resolution: null,
  uncertainty: null,
  origin: 'measured' as const,
});
const before = aFinding(3, { quantities: { length: typed('22 mm', 22), opening: typed('0.2 mm', 0.2) } });
const now = aFinding(3, {
  id: 'today',
  quantities: { length: typed('31 mm', 31), opening: typed('0.6 mm', 0.6) },
});

// 22 to 31 mm over 210 h, each to 0.5 mm: 4.3 mm per 100 h. Source: the handbook's worked example of crack growth.
const old = (stop: string | null = null): OldFinding => ({
  tag: { findingId: before.id, number: 3, tier: 0, state: 'confirmed' },
  title: '',
  words: '',
  visitId: 'then',
  date: '2025-10-06',
  trueHours: 4182,
  hoursSince: 210,
  firstDate: '2025-10-06',
  timesTold: 1,
  decided: null,
  mended: false,
  due: null,
  photo: null,
  answer: null,
  takenUpAs: 'today',
  sizes: compareSizes(before, now, { hours: 210, units: 'metric', stop }),
  maybe: [],
});

const measured = (value: number, expanded: number): Measurement => ({
  what: 'length',
  unit: 'mm',
  value,
  u: expanded / 2,
  expanded,
  shares: {},
  warnings: [],
  text: '',
});

const grown: FindingGrowth = {
  findingId: 'today',
  earlierFindingId: before.id,
  markId: 'b',
  earlierMarkId: 'a',
  sizeThen: measured(23, 0.6),
  sizeNow: measured(36.4, 0.8),
  hoursThen: 4182,
  hoursNow: 4391,
  growth: growthBetween({ value: 23, u: 0.3, hours: 4182 }, { value: 36.4, u: 0.4, hours: 4391 }),
  missing: [],
};
const untold: FindingGrowth = { ...grown, sizeThen: null, growth: null, missing: ['no-scale-then'] };

const kept = (growth: FindingGrowth, visitId = 'then') =>
  ({ earlier: { visitId }, growth: [growth] }) as unknown as KeptComparison;

const flat = (text: string) => text.replaceAll(/\s/gu, ' ');
const words = (comparisons: readonly KeptComparison[], of = old()) =>
  changesSince(of, comparisons, 'metric').map((change) => flat(change.words));

const written = 'Length 22 mm then, 31 mm now: +9 mm ± 1 mm, 4.3 mm per 100 h.';

describe('how a finding has changed', () => {
  it('is told as it was written down where no photo measures it', () => {
    expect(words([])[0]).toBe(written);
    expect(words([kept(untold)])[0]).toBe(written);
    expect(changesSince(old(), [], 'metric')[0]?.isWorse).toBe(true);
  });

  it('is told once, by the photos, where they measure it; what they do not measure stays as written', () => {
    const told = words([kept(grown)]);
    expect(told[0]).toBe(
      'By the photos: 23.0 ± 0.6 mm then, 36.4 ± 0.8 mm now. Grown by 13.4 ± 1.0 mm, 6.4 ± 0.5 mm per 100 h.',
    );
    expect(told.filter((each) => /22 mm|31 mm/.test(each))).toEqual([]);
    expect(told[1]).toMatch(/^Opening 0\.2 mm then, 0\.6 mm now/);
  });

  it('photos of another visit, or of another finding, do not stand for it', () => {
    expect(words([kept(grown, 'long before')])[0]).toBe(written);
    expect(words([kept({ ...grown, findingId: 'other' })])[0]).toBe(written);
  });

  it('beside the photos it is told in the very same words where they cannot tell it', () => {
    expect(flat(writtenChange(untold, { visitId: 'then' }, [old()])?.words ?? '')).toBe(written);
    expect(writtenChange(untold, { visitId: 'long before' }, [old()])).toBeNull();
  });

  it('is not told of another part', () => {
    const other = old('the part was changed between');
    expect(words([], other)[0]).toBe('Length 22 mm then, 31 mm now: not comparable: the part was changed between.');
    expect(writtenChange(untold, { visitId: 'then' }, [other])).toBeNull();
  });
});

it.each([
  [31, 36.4, 'The finding says 31 mm, its mark measures 36.4 ± 0.8 mm: put one of them right.'],
  // Inside 0.5 mm of the rule and 0.8 mm of the photo together.
  [31, 32.3, ''],
  [31, 32.31, 'The finding says 31 mm, its mark measures 32.3 ± 0.8 mm: put one of them right.'],
])('%d mm written beside %d mm measured', (mm, value, wanted) => {
  const finding = { ...now, quantities: { length: typed(`${mm} mm`, mm) } };
  expect(flat(writtenOtherwise({ ...grown, sizeNow: measured(value, 0.8) }, finding, 'metric'))).toBe(wanted);
});

// What was typed as ± stands before what is usual for a rule (0.5 mm): 6 + 0.8 covers 5.4, 0.1 + 0.8 does not cover 1.
it.each([
  [6, 36.4, true],
  [0.1, 32, false],
])('31 ± %d mm written beside %d mm measured agree: %s', (uncertainty, value, agree) => {
  const finding = { ...now, quantities: { length: { ...typed('31 mm', 31), uncertainty } } };
  expect(writtenOtherwise({ ...grown, sizeNow: measured(value, 0.8) }, finding, 'metric') === '').toBe(agree);
});
