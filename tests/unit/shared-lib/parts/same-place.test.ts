import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isBelow } from '../../../../shared-lib/parts/is-below.ts';
import { samePlace } from '../../../../shared-lib/parts/same-place.ts';
import { systemOf } from '../../../../shared-lib/parts/system-of.ts';
import { anyMachine, anyPlace, placesOn } from './arbitrary-places.ts';

// Source: the handbook's 2.3 a: same path, overlapping clk (mod 12), overlapping z.
describe('the same place', () => {
  it.each([
    ['ENG/LNR.4', 'ENG/LNR.4'],
    ['ENG/LNR.4@z=90-160', 'ENG/LNR.4@z=150-200'],
    ['ENG/LNR.4@z=90-160', 'ENG/LNR.4@z=160'],
    ['ENG/LNR.4@z=90-160', 'ENG/LNR.4@clk=3'],
    ['ENG/LNR.4@clk=11-1', 'ENG/LNR.4@clk=12'],
    ['ENG/LNR.4@clk=11-1', 'ENG/LNR.4@clk=0.5-4'],
    ['ENG/LNR.4@clk=10-2', 'ENG/LNR.4@clk=11-12'],
    ['ENG/LNR.4@clk=9-3', 'ENG/LNR.4@clk=3-9'],
    ['ENG/LNR.4@side=THR', 'ENG/LNR.4@side=THR;face=OUT'],
    ['HYD/HOSE.boom.L@end=A;z=340', 'HYD/HOSE.boom.L@end=A;z=330-350'],
    ['HYD/HOSE.boom.L@end=A;z=340', 'HYD/HOSE.boom.L@end=B;z=340'],
  ])('%s may be %s', (a, b) => {
    expect(samePlace(a, b)).toBe(true);
  });

  it.each([
    ['ENG/LNR.4', 'ENG/LNR.5'],
    ['ENG/LNR.4', 'ENG/LNR.4/OUT'],
    ['ENG/LNR.4@z=90-160', 'ENG/LNR.4@z=161'],
    ['ENG/LNR.4@clk=11-1', 'ENG/LNR.4@clk=1.5'],
    ['ENG/LNR.4@clk=1-11', 'ENG/LNR.4@clk=12'],
    ['ENG/LNR.4@clk=10-2', 'ENG/LNR.4@clk=3-9'],
    ['ENG/LNR.4@clk=2;z=90', 'ENG/LNR.4@clk=2;z=20'],
    ['ENG/LNR.4@face=IN', 'ENG/LNR.4@face=OUT'],
    ['ENG/PST.4/SKT@side=THR', 'ENG/PST.4/SKT@side=MIN'],
    ['HYD/HOSE.boom.L@end=A', 'HYD/HOSE.boom.L@end=B'],
  ])('%s is not %s', (a, b) => {
    expect(samePlace(a, b)).toBe(false);
  });

  it('is itself, and looks the same from both', () => {
    fc.assert(
      fc.property(
        anyMachine.chain((machine) => fc.tuple(placesOn(machine), placesOn(machine))),
        ([a, b]) => {
          expect(samePlace(a, a)).toBe(true);
          expect(samePlace(a, b)).toBe(samePlace(b, a));
        },
      ),
      { numRuns: 200 },
    );
  });

  it('overlaps round the dial as counting the half hours says', () => {
    const hour = fc.integer({ min: 1, max: 24 }).map((halves) => halves / 2);
    const halvesOf = (from: number, to: number): readonly number[] => {
      const steps = ((to - from) * 2 + 24) % 24;
      return Array.from({ length: steps + 1 }, (_, step) => (from * 2 + step) % 24);
    };
    fc.assert(
      fc.property(hour, hour, hour, hour, (a, b, c, d) => {
        const counted = halvesOf(a, b).some((half) => halvesOf(c, d).includes(half));
        expect(samePlace(`ENG/LNR.4@clk=${a}-${b}`, `ENG/LNR.4@clk=${c}-${d}`)).toBe(counted);
      }),
    );
  });
});

describe('an item of the inspection covers', () => {
  it.each([
    ['ENG/HD.1/EVS.3.1@from=EVS.3.1;to=INJB.3', 'ENG'],
    ['ENG/HD.1/EVS.3.1', 'ENG/HD.1'],
    ['ENG/HD.1/EVS.3.1', 'ENG/HD'],
    ['BRK/LINING.L', 'BRK/LINING'],
    ['BRK/LINING', 'BRK/LINING'],
    ['HYD/CYL.boom.L/BAR', 'HYD/CYL.boom'],
    ['ENG/LNR.4@clk=2', 'ENG/LNR.4@z=5'],
  ])('%s by %s', (place, item) => {
    expect(isBelow(place, item)).toBe(true);
  });

  it.each([
    ['ENG', 'ENG/HD.1'],
    ['ENG/HD.2/EVS.3.1', 'ENG/HD.1'],
    ['BRK/LINING', 'BRK/LINING.L'],
    ['BRK/LINING.R', 'BRK/LINING.L'],
    ['HYD/CYL.bucket', 'HYD/CYL.boom'],
    ['ENG/PST.10', 'ENG/PST.1'],
    ['COOL/CAP', 'FUEL'],
  ])('not %s by %s', (place, item) => {
    expect(isBelow(place, item)).toBe(false);
  });

  it('and every place lies in its system', () => {
    expect(systemOf('HYD/HOSE.boom.L@end=A;z=340')).toBe('HYD');
    fc.assert(
      fc.property(anyPlace, ({ text }) => {
        expect(isBelow(text, systemOf(text))).toBe(true);
      }),
      { numRuns: 100 },
    );
  });
});
