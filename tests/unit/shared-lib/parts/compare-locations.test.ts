import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Layout } from '../../../../shared-lib/model/layout.ts';
import { compareLocations } from '../../../../shared-lib/parts/compare-locations.ts';
import { formatLocation } from '../../../../shared-lib/parts/format-location.ts';
import { parseLocation } from '../../../../shared-lib/parts/parse-location.ts';
import { anyLocation, anyMachine, placesOn } from './arbitrary-places.ts';
import { layoutOf } from './scenario-places.ts';

const six = layoutOf('s2');
const crane = layoutOf('s4');
const driveFirst: Layout = { ...six, numbering: { scheme: 'drive-first' } };

// Source: the handbook's 2.3 d: tree order, then index, then z, then clk; its tree is 2.1.
describe('the order of places', () => {
  it.each([
    ['the engine before the brakes', ['ENG/CRK', 'BRK/PARK'], six],
    ['parking brake after the discs', ['BRK/DISC.L', 'BRK/LINING.L', 'BRK/PARK'], six],
    ['the whole before its parts', ['ENG/PST.5', 'ENG/PST.5/CRN', 'ENG/PST.5/SKT'], six],
    ['all of them before one of them', ['ENG/LNR', 'ENG/LNR.1', 'ENG/LNR.2'], six],
    ['tree order before the number', ['ENG/HD.1/IV.6.1', 'ENG/HD.1/EVS.1.1'], six],
    ['numbers as numbers', ['HYD/RV.2', 'HYD/RV.10'], six],
    ['from the free end, counted from there', ['ENG/PST.1', 'ENG/PST.2', 'ENG/PST.6'], six],
    ['from the free end, counted from the flywheel', ['ENG/PST.6', 'ENG/PST.2', 'ENG/PST.1'], driveFirst],
    ['main bearings from the free end too', ['ENG/CRK/MJ.7', 'ENG/CRK/MJ.1'], driveFirst],
    [
      'left, right, then round the corners',
      ['HYD/CYL.jack', 'HYD/CYL.jack.FL', 'HYD/CYL.jack.RL', 'HYD/CYL.jack.RR'],
      crane,
    ],
    ["functions in the machine's order", ['HYD/CYL.jack.FL', 'HYD/CYL.boom', 'HYD/CYL.hoist'], crane],
    ['the index before the depth', ['ENG/LNR.1@z=90', 'ENG/LNR.2@z=5'], six],
    ['the part before a spot on it', ['ENG/LNR.1', 'ENG/LNR.1@z=5', 'ENG/LNR.1@z=90', 'ENG/LNR.1@z=90-160'], six],
    ['the depth before the clock', ['ENG/LNR.1@clk=9;z=5', 'ENG/LNR.1@clk=2;z=90'], six],
    ['the clock from twelve on', ['ENG/LNR.1@clk=12', 'ENG/LNR.1@clk=0.5', 'ENG/LNR.1@clk=3', 'ENG/LNR.1@clk=11'], six],
  ])('%s', (_, inOrder, layout) => {
    const shuffled = [...inOrder].reverse();
    expect(shuffled.sort((a, b) => compareLocations(a, b, layout))).toEqual(inOrder);
  });

  it('does not look at how a place was typed', () => {
    expect(compareLocations('ENG/LNR.1@z=5;clk=2', 'ENG/LNR.1@clk=2;z=5-5', six)).toBe(0);
  });
});

const anyThree = fc.oneof(
  anyMachine.chain((machine) =>
    fc
      .tuple(placesOn(machine), placesOn(machine), placesOn(machine))
      .map((places) => ({ layout: machine.layout, places })),
  ),
  fc.tuple(anyMachine, anyLocation, anyLocation, anyLocation).map(([{ layout }, a, b, c]) => ({
    layout,
    places: [formatLocation(a), formatLocation(b), formatLocation(c)] as [string, string, string],
  })),
);

describe('the order is total', () => {
  it('one comes first, or they are the same place', () => {
    fc.assert(
      fc.property(anyThree, ({ layout, places: [a, b] }) => {
        fc.pre(a.length <= 300 && b.length <= 300);
        const there = Math.sign(compareLocations(a, b, layout));
        expect(Math.sign(compareLocations(b, a, layout)) + there).toBe(0);
        expect(compareLocations(a, a, layout)).toBe(0);
        expect(there === 0).toBe(formatLocation(parseLocation(a)) === formatLocation(parseLocation(b)));
      }),
      { numRuns: 200 },
    );
  });

  it('holds along three', () => {
    fc.assert(
      fc.property(anyThree, ({ layout, places }) => {
        fc.pre(places.every((place) => place.length <= 300));
        const [a, b, c] = [...places].sort((x, y) => compareLocations(x, y, layout)) as [string, string, string];
        expect(compareLocations(a, b, layout)).toBeLessThanOrEqual(0);
        expect(compareLocations(b, c, layout)).toBeLessThanOrEqual(0);
        expect(compareLocations(a, c, layout)).toBeLessThanOrEqual(0);
      }),
      { numRuns: 200 },
    );
  });
});
