import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cautionsForFinding } from '../../../shared-lib/cautions/cautions-for.ts';
import type { Layout } from '../../../shared-lib/model/layout.ts';
import { classesOfPlace } from '../../../shared-lib/parts/classes-of-place.ts';
import { findComponents } from '../../../shared-lib/parts/find-components.ts';
import { proposedScope } from '../../../shared-lib/parts/proposed-scope.ts';
import { speakComponent } from '../../../shared-lib/parts/speak-component.ts';
import { impossibleCause } from '../../../shared-lib/ranking/cause-timing.ts';
import { compute } from '../../../shared-lib/sheets/compute.ts';
import { sheets } from '../../../shared-lib/sheets/index.ts';
import type { ReadInputs } from '../../../shared-lib/sheets/read-inputs.ts';
import { cluesOf } from '../../../shared-lib/suspicions/clues.ts';
import { photoReason } from '../../../shared-lib/wording/photo-reasons.ts';
import { sheetName } from '../../../shared-lib/wording/report.ts';
import { aFinding, plainLayout } from '../../support/ranking/a-finding.ts';

/**
 * A word that every JavaScript object answers to is a word like any other: whatever is typed, it reads as a word that
 * nothing knows.
 */
const known = Object.getOwnPropertyNames(Object.prototype);
const unknown = 'qzxkwv';

/** Functions and other things that are no data must not get into an answer unseen. */
const asText = (value: unknown): string =>
  JSON.stringify(value, (_key, each: unknown) => {
    if (typeof each === 'function') throw new TypeError('a function is no answer');
    if (each instanceof Set) return [...each];
    return each;
  });

describe('on a sheet', () => {
  /** Every word field holds the word, whatever the field would take: a sheet may not rely on having been guarded. */
  const given = (word: string): ReadInputs => ({
    number: () => null,
    repeats: () => [],
    list: () => null,
    rows: () => null,
    word: () => word,
    uncertainty: () => null,
    at: '',
  });

  it('reads in every field as a word that nothing knows', () => {
    fc.assert(
      fc.property(fc.constantFrom(...sheets), fc.constantFrom(...known), (sheet, word) => {
        const told = (typed: string) => asText([sheet.compute(given(typed)), sheet.checks(given(typed))]);
        expect(told(word).replaceAll(word, unknown)).toBe(told(unknown));
      }),
      { numRuns: 2000 },
    );
  });

  it('names no field, no result and no limit', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...sheets),
        fc.constantFrom(...known.filter((word) => word !== '__proto__')),
        ({ id }, word) => {
          const told = (typed: string) => {
            const more = { [typed]: '1' };
            return asText(
              compute(id, {
                inputs: more,
                conditions: more,
                results: more,
                limits: { [typed]: { max: '1', source: 'maker' } },
              }),
            );
          };
          expect(told(word).replaceAll(word, unknown)).toBe(told(unknown));
        },
      ),
      { numRuns: 500 },
    );
  });
});

describe('as a function of the hydraulics', () => {
  const told = (word: string) => {
    const layout: Layout = { ...plainLayout, hydraulics: [word] };
    const place = `HYD/CYL.${word}`;
    return asText({
      spoken: speakComponent(place, layout).toLowerCase(),
      classes: classesOfPlace(place, layout),
      scope: proposedScope(layout),
      found: findComponents(`${word} cylinder`, layout).map(({ label }) => label.toLowerCase()),
      cautions: cautionsForFinding(aFinding(1, { locations: [place] }), layout).map(({ caution }) => caution.id),
    });
  };

  it.each(known.filter((word) => /^[a-z]+$/.test(word)))('%s moves nothing that is known', (word) => {
    expect(told(word).replaceAll(word, unknown)).toBe(told(unknown));
  });
});

it.each(known)('%s is no sheet, no reason, no defect that takes time to form, and no clue', (word) => {
  expect(sheetName(word)).toBe('Reading');
  expect(photoReason(word)).toBe(word);
  const cause = { absentOn: { date: '2026-06-01', known: 'said' as const }, thereOn: null };
  expect(impossibleCause({ ...cause, defect: word }, { absentOn: null, thereOn: '2026-06-02' })).toBeNull();
  expect(cluesOf({ what: word, defect: null }, word)).toEqual({
    kinds: [],
    isKindSaid: false,
    own: [],
    complaint: [],
  });
});
