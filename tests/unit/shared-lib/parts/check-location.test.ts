import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AppError } from '../../../../shared-lib/contract/errors.ts';
import type { Layout } from '../../../../shared-lib/model/layout.ts';
import { checkLocation } from '../../../../shared-lib/parts/check-location.ts';
import { layoutOrphans } from '../../../../shared-lib/parts/layout-orphans.ts';
import { parseLocation } from '../../../../shared-lib/parts/parse-location.ts';
import { anyPlace } from './arbitrary-places.ts';
import { layoutOf, scenarioPlaces } from './scenario-places.ts';

function refusalOf(text: string, layout: Layout): AppError | null {
  try {
    checkLocation(parseLocation(text), layout);
    return null;
  } catch (error) {
    if (error instanceof AppError) return error;
    throw error;
  }
}

const skidSteer = layoutOf('s1');
const backhoe = layoutOf('s6');
const wetLiner = layoutOf('s5');
const roller = layoutOf('s7');

const listed: Layout = {
  ...skidSteer,
  engine: { ...skidSteer.engine, arrangement: 'V', cylinders: 4, heads: 2 },
  numbering: {
    scheme: 'list',
    list: [
      { number: 1, bank: 'L', fromFreeEnd: 1 },
      { number: 3, bank: 'L', fromFreeEnd: 2 },
      { number: 12, bank: 'R', fromFreeEnd: 1 },
      { number: 14, bank: 'R', fromFreeEnd: 2 },
    ],
  },
};
const headEach: Layout = { ...skidSteer, engine: { ...skidSteer.engine, heads: 4 } };
const gasTruck: Layout = { ...skidSteer, engine: { ...skidSteer.engine, fuel: 'LPG' } };
const singleCylinder: Layout = {
  ...skidSteer,
  engine: { ...skidSteer.engine, cylinders: 1, valves: { intake: 2, exhaust: 2 } },
};

describe('a place the machine has', () => {
  it.each([...scenarioPlaces])('is taken in case %s: %s', (scenario, text) => {
    expect(refusalOf(text, layoutOf(scenario))).toBeNull();
  });

  // Source: the handbook's examples (2.3).
  it.each([
    ['ENG/HD.1/EVS.3.1@from=EVS.3.1;to=INJB.3', skidSteer],
    ['ENG/BLK/DECK.1@btw=WJ.2,BOLT.5;clk=2', skidSteer],
    ['ENG/LNR.4@side=THR;face=OUT;z=90-160', wetLiner],
    ['HYD/CYL.boom.L/RODH@clk=6;z=210', backhoe],
    ['HYD/HOSE.steer.L@end=A;z=340', backhoe],
    ['FRM/LOADERTWR.R@near=PIN.2:30', backhoe],
  ])('%s', (text, layout) => {
    expect(refusalOf(text, layout)).toBeNull();
  });

  it.each([
    ['a liner where the liner type is unknown', 'ENG/LNR.3', backhoe],
    ['a bore where the liner type is unknown', 'ENG/BLK/BORE.3', backhoe],
    ['the half hour before one', 'ENG/BLK/BORE.3@clk=0.5', skidSteer],
    ['twelve', 'ENG/BLK/BORE.3@clk=12', skidSteer],
    ["a number of the maker's list", 'ENG/PST.14', listed],
    ['the second valve of a four-valve head', 'ENG/HD.1/EV.1.2', singleCylinder],
    ['its own head over each cylinder', 'ENG/HD.3/EVS.3.1', headEach],
    ['the fan of an air-cooled engine', 'COOL/FAN', roller],
    ['brakes on a trailer-mounted engine, an odd truth', 'BRK/LINING.L', wetLiner],
    ['all of a kind', 'ENG/PST', skidSteer],
    ['the regulator of a gas engine', 'FUEL/REG', gasTruck],
  ])('%s', (_, text, layout) => {
    expect(refusalOf(text, layout)).toBeNull();
  });

  it('is every place that a picker offers, and every place those can point at', () => {
    fc.assert(
      fc.property(anyPlace, ({ layout, text }) => {
        expect(refusalOf(text, layout)).toBeNull();
      }),
      { numRuns: 200 },
    );
  });
});

// Source: the handbook's list of what must be rejected (2.3), and its tree (2.1).
describe('a place the machine does not have', () => {
  it.each([
    ['ENG/PST.5', skidSteer, 'no cylinder 5'],
    ['ENG/PST.0', skidSteer, 'counted from 1'],
    ['ENG/HD.1/EVS.5.1', skidSteer, 'no cylinder 5'],
    ['ENG/HD.1/EVS.3.2', skidSteer, 'no exhaust valve 2'],
    ['ENG/HD.1/IV.1.3', singleCylinder, 'no intake valve 3'],
    ['ENG/HD.2', skidSteer, 'no cylinder head 2'],
    ['ENG/HD.2/EVS.3.1', headEach, 'does not stand under cylinder head 2'],
    ['ENG/CRK/MJ.6', skidSteer, 'no main journal 6'],
    ['ENG/LNR.3', skidSteer, 'no liners'],
    ['ENG/LNR.3/IN', skidSteer, 'no liners'],
    ['ENG/BLK/CBORE.3', skidSteer, 'no liners'],
    ['ENG/LNR.3/SEAL.1', layoutOf('s2'), 'no wet liners'],
    ['ENG/BLK/BORE.3', wetLiner, 'wet liners'],
    ['ENG/BLK/BORE.3@clk=12.5', skidSteer, 'no position 12.5'],
    ['ENG/BLK/BORE.3@clk=0', skidSteer, 'no position 0'],
    ['ENG/BLK/BORE.3@clk=11-13', skidSteer, 'no position 13'],
    ['COOL/RAD', roller, 'no coolant'],
    ['COOL/CAP', roller, 'no coolant'],
    ['COOL/COOLANT', roller, 'no coolant'],
    ['COOL/TSTAT.1', roller, 'by air'],
    ['ENG/BLK/WJ.1', roller, 'no coolant'],
    ['ENG/BLK/DECK.1@btw=WJ.2,BOLT.5', roller, 'no coolant'],
    ['HYD/CYL.blade.L', backhoe, "no 'blade'"],
    ['HYD/HOSE.jack.RL', backhoe, "no 'jack'"],
    ['HYD/HOSE.boom.U', backhoe, 'left, right'],
    ['COOL/HOSE.side', skidSteer, "'side'"],
    ['STEER/KPIN.FL', skidSteer, 'left and right'],
    ['FUEL/CARB', skidSteer, 'diesel'],
    ['FUEL/INJP', gasTruck, 'not a diesel'],
    ['ENG/PST.2', listed, "maker's list has 1, 3, 12, 14"],
    ['FOO', skidSteer, "the machine has no part 'FOO'"],
    ['ENG/FOO', skidSteer, "the engine has no part 'FOO'"],
    ['PROT/ROPS.1', skidSteer, 'not counted'],
    ['ENG/PST.3.1', skidSteer, 'too many'],
    ['ENG/HD.1/EVS.3.1@to=INJB.7', skidSteer, 'no cylinder 7'],
    ['ENG/HD.1/EVS.3.1@to=ZZ.7', skidSteer, "no part 'ZZ'"],
    ['FRM/LOADERTWR.R@near=LNR.1:30', skidSteer, "no part 'LNR'"],
  ])('%s is refused', (text, layout, reason) => {
    const refusal = refusalOf(text, layout);
    expect(refusal?.code).toBe('location-unknown');
    expect(refusal?.details.text).toBe(text);
    expect(refusal?.details.reason).toContain(reason);
  });
});

describe('a changed layout', () => {
  it('names the places it would orphan, each once', () => {
    const fewer: Layout = { ...backhoe, hydraulics: ['boom'], engine: { ...backhoe.engine, cylinders: 3 } };
    expect(
      layoutOrphans(['ENG/PST.4', 'ENG/PST.3', 'HYD/CYL.bucket.L', 'HYD/CYL.boom', 'ENG/PST.4', 'not a place'], fewer),
    ).toEqual(['ENG/PST.4', 'HYD/CYL.bucket.L', 'not a place']);
  });

  it('orphans the radiator of an engine that turns out to be cooled by air', () => {
    const air: Layout = { ...backhoe, engine: { ...backhoe.engine, cooling: 'air' } };
    expect(layoutOrphans(['COOL/RAD/NECK', 'COOL/FAN', 'COOL'], air)).toEqual(['COOL/RAD/NECK']);
  });
});
