import { describe, expect, it } from 'vitest';
import type { Measurement } from '../../../../shared-lib/calibration/measure.ts';
import { growthOfFinding } from '../../../../shared-lib/comparison/growth-of-finding.ts';
import {
  bothSizes,
  gapsOf,
  growthCaution,
  growthWarnings,
  growthWords,
  whyNotTold,
} from '../../../../shared-lib/comparison/growth-words.ts';
import type { Mark } from '../../../../shared-lib/model/mark.ts';

const mark = (id: string, shape: Mark['shape'], origin: Mark['origin'] = { by: 'hand' }): Mark => ({
  id,
  shotId: 's',
  findingId: 'f',
  shape,
  points: [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
  ],
  role: 'finding',
  origin,
  calibrationId: 'c',
  tagAt: null,
  note: '',
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

const side = (marks: readonly Mark[], size: Measurement | null, hours: number | null) => ({
  marks,
  sizeOf: () => size,
  hours,
});

const same = { isOtherPart: false };
const named = (compared: ReturnType<typeof growthOfFinding>) => ({
  ...compared,
  findingId: 'f2',
  earlierFindingId: 'f1',
});

describe('what became of a finding between two photos', () => {
  // By hand: 36.4 - 23.0 = 13.4; the square root of 0.6 squared + 0.8 squared = 1.0 (GUM 5.1.2); over 209 h, per 100 h:
  // 6.411 and 0.478.
  const grown = growthOfFinding(
    side([mark('a', 'path')], measured(23, 0.6), 4182),
    side([mark('b', 'path')], measured(36.4, 0.8), 4391),
    same,
  );

  it('tells growth with its uncertainty and its rate', () => {
    expect(grown.growth?.state).toBe('grown');
    if (grown.growth?.state !== 'grown') return;
    expect(grown.growth.growth.value).toBeCloseTo(13.4, 9);
    expect(grown.growth.growth.expanded).toBeCloseTo(1, 9);
    expect(grown.growth.per100Hours?.value).toBeCloseTo(6.411, 3);
    expect(grown.growth.per100Hours?.expanded).toBeCloseTo(0.478, 3);
    expect(growthWords(named(grown), 'metric')).toBe('Grown by 13.4 ± 1.0 mm, 6.4 ± 0.5 mm per 100 h.');
    expect(bothSizes(named(grown), 'metric')).toBe('23.0 ± 0.6 mm then, 36.4 ± 0.8 mm now');
    expect(growthCaution(grown)).toContain('no safe life');
  });

  it('speaks inches to a shop that works in them', () => {
    // 13.4 mm is 0.5276 in, 1 mm 0.0394 in; 6.411 mm 0.2524 in, 0.478 mm 0.0188 in (25.4 mm exactly to the inch).
    expect(growthWords(named(grown), 'us')).toBe('Grown by 0.53 ± 0.04 in, 0.252 ± 0.019 in per 100 h.');
  });

  it('says where no change can be told, and that it is not no growth', () => {
    const still = growthOfFinding(
      side([mark('a', 'line')], measured(14, 0.9), 100),
      side([mark('b', 'line')], measured(14.5, 0.9), 200),
      same,
    );
    expect(growthWords(named(still), 'metric')).toBe('No change that can be told (0.5 ± 1.3 mm).');
    expect(growthCaution(still)).toBe('That is not the same as no growth.');
  });

  it('warns where a size may be wrong, once, and speaks square inches of a patch', () => {
    const off = (value: number): Measurement => ({
      ...measured(value, 20),
      what: 'area',
      unit: 'mm²',
      warnings: ['off-plane'],
    });
    const patch = growthOfFinding(
      side([mark('a', 'area')], off(1000), 1),
      side([mark('b', 'area')], off(1645.16), 2),
      same,
    );
    expect(growthWarnings(patch)).toHaveLength(1);
    // 645.16 mm² are one square inch exactly; the square root of twice 20 squared, 28.3 mm², is 0.044 of one.
    expect(growthWords(named(patch), 'us')).toMatch(/^Grown by 1\.00 ± 0\.04 in²/);
  });

  it('says each thing that is missing, and nothing else where the part is another', () => {
    const none = side([], null, null);
    expect(growthOfFinding(none, none, same).missing).toEqual(['no-mark-then', 'no-mark-now']);
    const unscaled = growthOfFinding(side([mark('a', 'path')], null, 1), side([mark('b', 'line')], null, 2), same);
    expect(unscaled.missing).toEqual(['no-scale-then', 'no-scale-now']);
    expect(gapsOf(unscaled)).toHaveLength(2);
    expect(whyNotTold(unscaled)).toBe('the earlier photo has no scale; the later photo has no scale');
    expect(growthWords(named(unscaled), 'metric')).toBe('');
    const other = growthOfFinding(none, none, { isOtherPart: true });
    expect(other.missing).toEqual(['other-part']);
    const unlike = growthOfFinding(
      side([mark('a', 'area')], measured(1, 0.1), 1),
      side([mark('b', 'line')], measured(1, 0.1), 2),
      same,
    );
    expect(unlike).toMatchObject({ growth: null, missing: ['not-alike'] });
  });

  it.each(['arrow', 'point'] as const)('an %s has no size to compare', (shape) => {
    const sized = side([mark('a', 'path')], measured(23, 0.6), 1);
    const pointing = side([mark('b', shape)], measured(36.4, 0.8), 2);
    expect(growthOfFinding(sized, pointing, same)).toMatchObject({
      growth: null,
      markId: null,
      missing: ['no-mark-now'],
    });
    expect(growthOfFinding(pointing, sized, same)).toMatchObject({ growth: null, missing: ['no-mark-then'] });
  });

  it('holds a mark against the one it was taken over from, not against the first', () => {
    const then = [mark('a', 'line'), mark('b', 'line')];
    const now = [mark('c', 'line', { by: 'carried', fromMarkId: 'b', isSetAnew: true })];
    const compared = growthOfFinding(side(then, measured(1, 0.1), 1), side(now, measured(9, 0.1), 2), same);
    expect(compared).toMatchObject({ earlierMarkId: 'b', markId: 'c' });
    // One that was only carried over gives way to one that was drawn today.
    const both = [mark('c', 'line', { by: 'carried', fromMarkId: 'b' }), mark('d', 'line')];
    const drawn = growthOfFinding(side(then, measured(1, 0.1), 1), side(both, measured(9, 0.1), 2), same);
    expect(drawn).toMatchObject({ markId: 'd', missing: [] });
  });
});
