import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Layout } from '../../../../shared-lib/model/layout.ts';
import { cylinderPlaces } from '../../../../shared-lib/parts/cylinder-places.ts';
import { neighbourCylinders } from '../../../../shared-lib/parts/neighbour-cylinders.ts';
import { numberFromOrdinal } from '../../../../shared-lib/parts/number-from-ordinal.ts';
import { ordinalFromFreeEnd } from '../../../../shared-lib/parts/ordinal-from-free-end.ts';
import { speakNumbering } from '../../../../shared-lib/parts/speak-numbering.ts';
import { anyLayout } from './arbitrary-places.ts';
import { layoutOf } from './scenario-places.ts';

const six = layoutOf('s2');
const driveFirst: Layout = { ...six, numbering: { scheme: 'drive-first' } };
/** Source: the handbook's 2.2: bank by bank, 1-2-3-4 / 5-6-7-8. */
const bankByBank: Layout = {
  ...six,
  engine: { ...six.engine, arrangement: 'V', cylinders: 8, heads: 2 },
  numbering: {
    scheme: 'list',
    list: [1, 2, 3, 4, 5, 6, 7, 8].map((number) => ({
      number,
      bank: number <= 4 ? ('L' as const) : ('R' as const),
      fromFreeEnd: number <= 4 ? number : number - 4,
    })),
  },
};
/** Source: the handbook's 2.2: alternating, odd one bank, even the other. */
const alternating: Layout = {
  ...bankByBank,
  numbering: {
    scheme: 'list',
    list: [1, 2, 3, 4, 5, 6, 7, 8].map((number) => ({
      number,
      bank: number % 2 === 1 ? ('A' as const) : ('B' as const),
      fromFreeEnd: Math.ceil(number / 2),
    })),
  },
};

describe("the machine's own number", () => {
  it.each([
    ['counts from the fan', six, 1, 1, null],
    ['counts from the fan', six, 6, 6, null],
    ['counts from the flywheel', driveFirst, 1, 6, null],
    ['counts from the flywheel', driveFirst, 6, 1, null],
    ['goes bank by bank', bankByBank, 5, 1, 'R'],
    ['alternates between the banks', alternating, 6, 3, 'B'],
  ])('%s', (_, layout, number, fromFreeEnd, bank) => {
    expect(ordinalFromFreeEnd(number, layout)).toEqual({ fromFreeEnd, bank });
    expect(numberFromOrdinal(fromFreeEnd, bank as 'R' | 'B' | null, layout)).toBe(number);
  });

  it('is no number of the engine beyond its last', () => {
    expect(ordinalFromFreeEnd(7, six)).toBeNull();
    expect(numberFromOrdinal(7, null, six)).toBeNull();
    expect(numberFromOrdinal(1, 'L', six)).toBeNull();
  });

  it('stands in one place, and each place has one number', () => {
    fc.assert(
      fc.property(anyLayout, (layout) => {
        const numbers = cylinderPlaces(layout).map((place) => place.number);
        expect(numbers).toHaveLength(layout.engine.cylinders);
        const places = numbers.map((number) => ordinalFromFreeEnd(number, layout));
        expect(new Set(places.map((place) => JSON.stringify(place))).size).toBe(numbers.length);
        for (const number of numbers) {
          const place = ordinalFromFreeEnd(number, layout);
          expect(place && numberFromOrdinal(place.fromFreeEnd, place.bank, layout)).toBe(number);
        }
      }),
    );
  });
});

// Source: the handbook's 2.3 b.
describe('neighbours', () => {
  it.each([
    [six, 1, [2]],
    [six, 3, [2, 4]],
    [driveFirst, 3, [4, 2]],
    [bankByBank, 4, [3]],
    [bankByBank, 5, [6]],
    [alternating, 3, [1, 5]],
    [{ ...bankByBank, numbering: { scheme: 'free-first' as const } }, 3, []],
    [six, 9, []],
  ])('stand in the same bank', (layout, cylinder, expected) => {
    expect(neighbourCylinders(cylinder, layout)).toEqual(expected);
  });
});

describe('the sentence every report prints', () => {
  it.each([
    [six, 'Cylinders are counted from the fan end'],
    [driveFirst, 'Cylinders are counted from the flywheel end'],
    [bankByBank, 'left bank 1, 2, 3, 4; right bank 5, 6, 7, 8'],
    [alternating, 'bank A 1, 3, 5, 7; bank B 2, 4, 6, 8'],
    [{ ...six, numbering: { scheme: 'list' as const } }, 'not filled in yet'],
    [six, 'thrust side is the right'],
    [{ ...six, engine: { ...six.engine, rotation: 'CCW' as const } }, 'thrust side is the left'],
    [six, 'from the seat facing the direction of travel'],
  ])('names the scheme', (layout, words) => {
    expect(speakNumbering(layout)).toContain(words);
  });

  it('speaks of no seat on a stationary engine', () => {
    expect(speakNumbering(layoutOf('s5'))).not.toContain('seat');
  });
});
