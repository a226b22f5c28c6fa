import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkLocation } from '../../../../shared-lib/parts/check-location.ts';
import { childrenOf } from '../../../../shared-lib/parts/children-of.ts';
import { componentTree } from '../../../../shared-lib/parts/component-tree.ts';
import { findComponents } from '../../../../shared-lib/parts/find-components.ts';
import { isBelow } from '../../../../shared-lib/parts/is-below.ts';
import { parseLocation } from '../../../../shared-lib/parts/parse-location.ts';
import { proposedScope } from '../../../../shared-lib/parts/proposed-scope.ts';
import { anyLayout, anyMachine } from './arbitrary-places.ts';
import { layoutOf, scenarioPlaces } from './scenario-places.ts';

const backhoe = layoutOf('s6');
const parentBore = layoutOf('s1');
const wetLiner = layoutOf('s5');
const roller = layoutOf('s7');
const crane = layoutOf('s4');

const offeredPlaces = new Map<string, readonly string[]>();

function placesOf(scenario: string): readonly string[] {
  const known = offeredPlaces.get(scenario);
  if (known !== undefined) return known;
  const places = componentTree(layoutOf(scenario)).flatMap((system) => [
    system.path,
    ...system.assemblies.flatMap((assembly) => assembly.places.map((place) => place.path)),
  ]);
  offeredPlaces.set(scenario, places);
  return places;
}

/** A part whose number is typed is reached by its kind; a lock valve of a corner by its function. */
function bareOf(path: string): string {
  return path.replace(/\.\d+$/, '');
}

describe('the picker', () => {
  it.each([...scenarioPlaces])('reaches in three taps what case %s names: %s', (scenario, text) => {
    const [path = ''] = text.split('@');
    const offered = placesOf(scenario);
    const reachable = [path, bareOf(path), path.replace('LOCKV.RL', 'LOCKV.jack.RL')];
    expect(offered.some((place) => reachable.includes(place))).toBe(true);
  });

  it('offers no place twice, and each under its system', () => {
    fc.assert(
      fc.property(anyLayout, (layout) => {
        for (const system of componentTree(layout)) {
          const paths = system.assemblies.flatMap((assembly) => assembly.places.map((place) => place.path));
          expect(new Set(paths).size).toBe(paths.length);
          expect(paths.every((path) => isBelow(path, system.path))).toBe(true);
        }
      }),
      { numRuns: 15 },
    );
  });

  it('has no coolant on an air-cooled engine, but its fan', () => {
    const cooling = placesOf('s7').filter((path) => path.startsWith('COOL/'));
    expect(cooling).toContain('COOL/FAN');
    expect(cooling).not.toContain('COOL/RAD');
    expect(cooling).not.toContain('COOL/COOLANT');
  });

  it('has liners or bores as the engine has them', () => {
    expect(childrenOf('ENG', parentBore).map((child) => child.path)).not.toContain('ENG/LNR.1');
    expect(childrenOf('ENG/BLK', wetLiner).map((child) => child.path)).not.toContain('ENG/BLK/BORE.1');
    expect(childrenOf('ENG', wetLiner).map((child) => child.path)).toContain('ENG/LNR.6');
  });

  it('has no steering on a stationary engine', () => {
    expect(componentTree(wetLiner).map((system) => system.path)).not.toContain('STEER');
  });

  it('lists the systems at the top and the parts below', () => {
    expect(childrenOf('', backhoe).map((child) => child.label)).toContain('Brakes');
    expect(childrenOf('COOL/RAD', backhoe).map((child) => child.label)).toEqual([
      'Radiator, top tank',
      'Radiator, core',
      'Radiator, bottom tank',
      'Radiator, filler neck',
      'Radiator, drain',
    ]);
    expect(childrenOf('COOL/CAP', backhoe)).toEqual([]);
  });
});

// Common practice, no source: what a mechanic would type.
describe('the search', () => {
  it.each([
    ['exh seat 3', backhoe, 'ENG/HD.1/EVS.3.1'],
    ['seat 3 exh', backhoe, 'ENG/HD.1/EVS.3.1'],
    ['bore 3', parentBore, 'ENG/BLK/BORE.3'],
    ['bore 3', wetLiner, 'ENG/LNR.3/IN'],
    ['left boom hose', backhoe, 'HYD/HOSE.boom.L'],
    ['LH boom hose', backhoe, 'HYD/HOSE.boom.L'],
    ['rl jack cyl', crane, 'HYD/CYL.jack.RL'],
    ['head bolt hole 7', backhoe, 'ENG/BLK/BOLT.7'],
    ['piston 2 skirt', backhoe, 'ENG/PST.2/SKT'],
    ['cylinder 2 piston', backhoe, 'ENG/PST.2'],
    ['ground strap 1', backhoe, 'ELEC/GND.1'],
    ['earth strap', backhoe, 'ELEC/GND'],
    ['wrist pin 4', backhoe, 'ENG/PIN.4'],
    ['main 3 upper', backhoe, 'ENG/CRK/MBRG.3.U'],
    ['tire front left', backhoe, 'DRV/WHEEL.FL/TYRE'],
    ['radiator', backhoe, 'COOL/RAD'],
    ['pto shield', backhoe, 'DRV/PTO/SHIELD'],
    ['rad cap', backhoe, 'COOL/CAP'],
    ['sleeve 2', wetLiner, 'ENG/LNR.2'],
    ['steering wheel', backhoe, 'STEER/WHEELS'],
    ['parking brake', roller, 'BRK/PARK'],
  ])('%s', (text, layout, path) => {
    expect(findComponents(text, layout)[0]?.path).toBe(path);
  });

  it.each([
    ['', backhoe],
    ['   ', backhoe],
    ['xyzzy', backhoe],
    ['piston 9', backhoe],
    ['liner 2', parentBore],
    ['radiator', roller],
  ])('finds nothing for "%s"', (text, layout) => {
    expect(findComponents(text, layout)).toEqual([]);
  });

  it('gives no more lines than there is room for', () => {
    expect(findComponents('cylinder', backhoe, 5)).toHaveLength(5);
  });

  it('finds only places the machine has', () => {
    const words = fc.constantFrom('piston', 'seat', 'left', 'hose', 'bolt', 'valve', '1', '3', '7', '12', 'bearing');
    fc.assert(
      fc.property(anyMachine, fc.array(words, { minLength: 1, maxLength: 3 }), ({ layout }, asked) => {
        for (const { path } of findComponents(asked.join(' '), layout))
          expect(() => checkLocation(parseLocation(path), layout)).not.toThrow();
      }),
      { numRuns: 30 },
    );
  });
});

describe('the scope proposed at intake', () => {
  it.each(['s0', 's1', 's2', 's3', 's4', 's5', 's6', 's7'])('exists on the machine of case %s', (scenario) => {
    const layout = layoutOf(scenario);
    const items = proposedScope(layout);
    expect(new Set(items).size).toBe(items.length);
    for (const item of items) expect(() => checkLocation(parseLocation(item), layout)).not.toThrow();
  });

  // Source: the handbook's S7: no cooling items on an air-cooled engine.
  it('has no cooling items on an air-cooled engine', () => {
    expect(proposedScope(roller).filter((item) => isBelow(item, 'COOL'))).toEqual([]);
    expect(proposedScope(backhoe)).toContain('COOL/RAD');
  });

  it('has no running gear on a stationary engine, no hydraulics where there are none', () => {
    const items = proposedScope(wetLiner);
    for (const system of ['STEER', 'BRK', 'DRV', 'HYD'])
      expect(items.filter((item) => isBelow(item, system))).toEqual([]);
  });

  it('looks at each head, each function and what the machine has besides', () => {
    expect(proposedScope({ ...parentBore, engine: { ...parentBore.engine, heads: 2 } })).toContain('ENG/HD.2');
    expect(proposedScope(crane)).toEqual(expect.arrayContaining(['HYD/CYL.jack', 'HYD/CYL.hoist', 'FRM/OUTR']));
    expect(proposedScope(parentBore)).toContain('PROT/ARMSUP');
    expect(proposedScope(layoutOf('s2'))).toContain('DRV/PTO');
  });

  it('promises no liners while nobody knows whether there are any', () => {
    expect(proposedScope(backhoe)).not.toContain('ENG/LNR');
    expect(proposedScope(wetLiner)).toContain('ENG/LNR');
  });
});
