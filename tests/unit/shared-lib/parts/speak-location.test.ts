import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Layout } from '../../../../shared-lib/model/layout.ts';
import type { Component } from '../../../../shared-lib/parts/component.ts';
import { componentTemplate } from '../../../../shared-lib/parts/component-template.ts';
import { faces, placeMarks, sides, views, zones } from '../../../../shared-lib/parts/location.ts';
import { speakComponent } from '../../../../shared-lib/parts/speak-component.ts';
import { speakLocation } from '../../../../shared-lib/parts/speak-location.ts';
import { anyPlace } from './arbitrary-places.ts';
import { layoutOf, scenarioPlaces } from './scenario-places.ts';

const skidSteer = layoutOf('s1');
const dryLiner = layoutOf('s2');
const crane = layoutOf('s4');
const wetLiner = layoutOf('s5');
const backhoe = layoutOf('s6');
const roller = layoutOf('s7');
const driveFirst: Layout = { ...skidSteer, numbering: { scheme: 'drive-first' } };
const fourValves: Layout = {
  ...skidSteer,
  engine: { ...skidSteer.engine, valves: { intake: 2, exhaust: 2 } },
};
const banks: Layout = {
  ...skidSteer,
  engine: { ...skidSteer.engine, arrangement: 'V', heads: 2 },
  numbering: {
    scheme: 'list',
    list: [
      { number: 1, bank: 'L', fromFreeEnd: 1 },
      { number: 2, bank: 'R', fromFreeEnd: 1 },
      { number: 3, bank: 'L', fromFreeEnd: 2 },
      { number: 4, bank: 'R', fromFreeEnd: 2 },
    ],
  },
};

// Source: the handbook's examples of text to be spoken (2.3), word for word; its first example counts from the fan end.
describe("the handbook's examples", () => {
  it('says which end cylinders count from, once, in the long form', () => {
    expect(speakLocation('ENG/HD.1/EVS.3.1@from=EVS.3.1;to=INJB.3', skidSteer, { long: true })).toBe(
      'Cylinder 3 (counted from the fan end), exhaust seat, running towards the injector bore',
    );
  });

  it.each([
    [
      'ENG/BLK/DECK.1@btw=WJ.2,BOLT.5;clk=2',
      skidSteer,
      "Block deck at cylinder 2, between coolant passage and head-bolt hole 5, two o'clock seen from above",
    ],
    [
      'ENG/LNR.4@side=THR;face=OUT;z=90-160',
      wetLiner,
      'Liner 4, coolant side, thrust side, 90–160 mm below the flange',
    ],
  ])('%s', (text, layout, spoken) => {
    expect(speakLocation(text, layout)).toBe(spoken);
  });
});

// The wording below is our own; the handbook's 2.2 gives the conventions it must carry.
describe('a place is said as a mechanic says it', () => {
  it.each([
    [
      'ENG/HD.1/EVS.3.1@from=EVS.3.1;to=INJB.3',
      skidSteer,
      'Cylinder 3, exhaust seat, running towards the injector bore',
    ],
    [
      'ENG/HD.1/BRIDGE.2@from=EVS.2.1;to=HB.4',
      skidSteer,
      'Cylinder 2, bridge between the seats, running from the exhaust seat towards head-bolt hole 4',
    ],
    [
      'ENG/HD.1/BRIDGE.2@to=BRIDGE.3',
      skidSteer,
      'Cylinder 2, bridge between the seats, running towards the bridge between the seats of cylinder 3',
    ],
    ['ENG/HD.1/EVS.3.2', fourValves, 'Cylinder 3, exhaust seat 2'],
    ['ENG/HD.2/FIRE', banks, 'Cylinder head 2, fire face'],
    ['ENG/LNR.5@side=THR;face=IN;z=5-115', dryLiner, 'Liner 5, bore surface, thrust side, 5–115 mm below the flange'],
    ['ENG/LNR.5@face=OUT', dryLiner, 'Liner 5, outer surface'],
    ['ENG/LNR.5@zone=TRR', dryLiner, 'Liner 5, at top-ring reversal'],
    ['ENG/PST.5/SKT@side=THR', dryLiner, 'Piston 5, skirt, thrust side'],
    ['ENG/ROD.5/RBRG', dryLiner, 'Connecting rod 5, big-end shells'],
    ['ENG/ROD.5/RBRG.U', dryLiner, 'Connecting rod 5, upper big-end shell'],
    ['ENG/CRK/MBRG.4', wetLiner, 'Main bearing 4'],
    ['ENG/CRK/MBRG.4.LO', wetLiner, 'Main bearing 4, lower shell'],
    ['ENG/LUB/SUMP', wetLiner, 'Oil sump'],
    [
      'HYD/CYL.boom.L/RODH@clk=6;z=210',
      backhoe,
      "Left boom cylinder, rod, 210 mm from the rod eye, six o'clock (twelve is up)",
    ],
    ['HYD/HOSE.steer.L@end=A;z=340', backhoe, 'Left steering hose, 340 mm from the pump end'],
    ['HYD/HOSE.boom.L@end=B', backhoe, 'Left boom hose, at the actuator end'],
    ['HYD/HOSE.jack.RL@end=A;z=260', crane, 'Rear-left jack hose, 260 mm from the pump end'],
    ['HYD/HOSE', crane, 'Hydraulic hoses'],
    ['HYD/LOCKV.RL', crane, 'Rear-left load-holding lock valve'],
    ['HYD/DCV.1.3', backhoe, 'Control valve 1, section 3'],
    ['HYD/CYL.boom.L/EYE.b', backhoe, 'Left boom cylinder, base eye'],
    ['FRM/LOADERTWR.R@near=PIN.2:30', backhoe, 'Right loader tower, 30 mm from pin 2'],
    ['COOL/HOSE.upper', skidSteer, 'Upper coolant hose'],
    ['COOL/RAD/NECK', skidSteer, 'Radiator, filler neck'],
    ['BRK/LINING', roller, 'Brake linings'],
    ['BRK/LINING.L', roller, 'Left brake lining'],
    ['ELEC/CBL.pos', roller, 'Positive battery cable'],
    ['ELEC/SW.1', wetLiner, 'Switch 1 (shut-down)'],
    ['ELEC/SW.1', roller, 'Switch 1'],
    ['DRV/WHEEL.FR/LOCKRING', backhoe, 'Front-right wheel, lock ring'],
    ['FRM/MAST/CHAIN.L', backhoe, 'Left lift chain'],
  ])('%s', (text, layout, spoken) => {
    expect(speakLocation(text, layout)).toBe(spoken);
  });

  it.each([
    ['ENG/HD.1/FIRE@clk=2', "Cylinder head, fire face, ten o'clock seen from below (two o'clock seen from above)"],
    [
      'ENG/HD.1/EVS.3.1@clk=2.5',
      'Cylinder 3, exhaust seat, half past nine seen from below (half past two seen from above)',
    ],
    [
      'ENG/HD.1@face=FIRE;clk=1-3',
      "Cylinder head, fire face, from nine to eleven o'clock seen from below (from one to three o'clock seen from above)",
    ],
    [
      'ENG/HD.1@face=FIRE;clk=12',
      "Cylinder head, fire face, twelve o'clock seen from below (twelve o'clock seen from above)",
    ],
  ])('a fire face is said from below, and the deck clock with it: %s', (text, spoken) => {
    expect(speakLocation(text, skidSteer)).toBe(spoken);
  });

  it.each([
    ['ENG/PST.1', driveFirst, 'Piston 1 (counted from the flywheel end)'],
    ['ENG/PST.3', banks, "Piston 3 (the maker's own number, left bank)"],
    ['ENG/CRK/MJ.3', skidSteer, 'Main journal 3 (counted from the fan end)'],
    [
      'ENG/BLK/DECK.1@btw=WJ.2,WJ.3',
      skidSteer,
      'Block deck at cylinder 2 (counted from the fan end), between coolant passage and coolant passage of cylinder 3',
    ],
    ['HYD/CYL.boom.L', backhoe, 'Left boom cylinder'],
  ])('the long form names the end the numbers start from: %s', (text, layout, spoken) => {
    expect(speakLocation(text, layout, { long: true })).toBe(spoken);
  });

  it.each([
    ['ENG/HD.1/EVS.3.1@from=EVS.3.1;to=INJB.3', 'Exhaust seat, cylinder 3'],
    ['ENG/LNR.4', 'Liner 4'],
    ['ENG/PST.4/SKT', 'Piston 4, skirt'],
    ['ENG', 'Engine'],
    ['HYD', 'Hydraulic system'],
  ])('a title is short: %s', (text, spoken) => {
    expect(speakComponent(text, wetLiner)).toBe(spoken);
  });
});

function codesOf(components: readonly Component[]): readonly string[] {
  return components.flatMap((component) => [component.code, ...codesOf(component.parts ?? [])]);
}

/** Single letters are left out: an A or an L may stand in a plain sentence. */
const grammarWords = new Set(
  [...codesOf(componentTemplate), ...placeMarks, ...sides, ...zones, ...faces, ...views].filter(
    (word) => word.length > 1,
  ),
);

function leaks(spoken: string): readonly string[] {
  return spoken.split(/[^A-Za-z0-9-]+/).filter((word) => grammarWords.has(word));
}

describe('codes stay inside', () => {
  it('is able to see a leak', () => {
    expect(leaks('Cylinder 3, EVS')).toEqual(['EVS']);
  });

  it.each([...scenarioPlaces])('case %s: %s', (scenario, text) => {
    const spoken = speakLocation(text, layoutOf(scenario), { long: true });
    expect(leaks(spoken)).toEqual([]);
    expect(spoken).toMatch(/^[A-Z][a-z]/);
  });

  it('whatever place is said on whatever machine', () => {
    fc.assert(
      fc.property(anyPlace, fc.boolean(), ({ layout, text }, long) => {
        const spoken = speakLocation(text, layout, { long });
        expect(spoken.trim()).not.toBe('');
        expect(spoken).not.toContain('undefined');
        expect(spoken).not.toMatch(/, ,|,,| {2}/);
        expect(leaks(spoken)).toEqual([]);
        expect(leaks(speakComponent(text, layout))).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });
});
