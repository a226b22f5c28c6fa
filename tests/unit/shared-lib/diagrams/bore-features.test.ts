import { describe, expect, it } from 'vitest';
import { type BoreFeature, featureOf, featuresOfBore } from '../../../../shared-lib/diagrams/bore-features.ts';
import { headOfPath, hourOfSide } from '../../../../shared-lib/diagrams/cylinder-of-place.ts';
import { directionOfHour } from '../../../../shared-lib/diagrams/engine-plan.ts';
import type { Layout } from '../../../../shared-lib/model/layout.ts';
import { parseLocation } from '../../../../shared-lib/parts/parse-location.ts';
import { plainLayout } from '../../../support/ranking/a-finding.ts';

const engine = (intake: number, exhaust: number, fuel: Layout['engine']['fuel'] = 'diesel'): Layout => ({
  ...plainLayout,
  engine: { ...plainLayout.engine, fuel, valves: { intake, exhaust } } as Layout['engine'],
});
const at = (place: string, layout: Layout): BoreFeature => {
  const node = parseLocation(place).path.at(-1);
  const feature = node === undefined ? null : featureOf(node, layout);
  if (feature === null) throw new Error(`${place} stands nowhere`);
  return feature;
};
const counts = [
  [1, 1],
  [2, 1],
  [2, 2],
  [3, 2],
  [1, 2],
  [3, 1],
] as const;

describe.each(counts)('a head of %d intake and %d exhaust valves', (intake, exhaust) => {
  const layout = engine(intake, exhaust);
  const places = [
    ...Array.from({ length: intake }, (_, index) => `ENG/HD.1/IVS.3.${index + 1}`),
    ...Array.from({ length: exhaust }, (_, index) => `ENG/HD.1/EVS.3.${index + 1}`),
    'ENG/HD.1/INJB.3',
  ];

  // The handbook's 2.2: valves by cylinder, kind, then by order from the free end, which lies at the left of the drawing.
  it.each([
    ['IVS', intake],
    ['EVS', exhaust],
  ] as const)('%s stand in order from the fan end', (code, count) => {
    const xs = Array.from({ length: count }, (_, index) => at(`ENG/HD.1/${code}.3.${index + 1}`, layout).offset.x);
    expect(xs).toEqual([...xs].sort((a, b) => a - b));
    expect(new Set(xs).size).toBe(count);
  });

  it('no two of its parts cover one another, and none leaves the bore', () => {
    const parts = places.map((place) => at(place, layout));
    for (const [index, a] of parts.entries()) {
      expect(Math.hypot(a.offset.x, a.offset.y)).toBeLessThan(1);
      for (const b of parts.slice(index + 1)) {
        const apart = Math.hypot(a.offset.x - b.offset.x, a.offset.y - b.offset.y);
        expect(apart, `${a.code} ${a.within} and ${b.code} ${b.within}`).toBeGreaterThan(a.radius + b.radius - 1e-9);
      }
    }
  });

  it('intake valves stand on one side and exhaust valves on the other', () => {
    const sides = (code: string) =>
      featuresOfBore(layout)
        .filter((feature) => feature.code === code)
        .map(({ offset }) => Math.sign(offset.y));
    expect(new Set([...sides('IVS'), ...sides('EVS').map((side) => -side)]).size).toBe(1);
    expect(sides('IVS')).toHaveLength(intake);
    expect(sides('EVS')).toHaveLength(exhaust);
  });
});

describe('what stands where', () => {
  it.each([
    ['ENG/HD.1/EV.3.2', 'EVS', [2]],
    ['ENG/HD.1/EVG.3.1', 'EVS', [1]],
    ['ENG/HD.1/IV.3.2', 'IVS', [2]],
    ['ENG/HD.1/IVG.3.1', 'IVS', [1]],
    ['ENG/HD.1/GLOW.3', 'INJB', []],
    ['ENG/HD.1/PCH.3', 'INJB', []],
  ] as const)('%s at %s %j', (place, code, within) => {
    expect(at(place, engine(2, 2))).toMatchObject({ code, within });
  });

  it('a valve not numbered is the first; one the layout does not have is not lost', () => {
    expect(at('ENG/HD.1/EVS.3', engine(2, 2)).within).toEqual([1]);
    expect(at('ENG/HD.1/EVS.3.2', engine(1, 1)).within).toEqual([1]);
  });

  it('a bridge, ports and water jacket stand beside the valves; a bore is no part of its roof', () => {
    const features = ['BRIDGE', 'PORT-I', 'PORT-E', 'WJ'].map((code) => at(`ENG/HD.1/${code}.3`, engine(1, 1)));
    expect(new Set(features.map(({ offset }) => `${offset.x} ${offset.y}`)).size).toBe(4);
    const bore = parseLocation('ENG/BLK/BORE.3').path.at(-1);
    expect(bore && featureOf(bore, engine(1, 1))).toBeNull();
  });

  it('a petrol head has no injector bore', () => {
    const codes = (fuel: Layout['engine']['fuel']) => featuresOfBore(engine(1, 1, fuel)).map(({ code }) => code);
    expect(codes('diesel')).toContain('INJB');
    expect(codes('petrol')).not.toContain('INJB');
  });
});

describe('sides as hours of the deck clock', () => {
  // The handbook's 2.2: 12 is the free end, 3 right, 6 the drive end, 9 left; thrust is right on a clockwise engine.
  it.each([
    ['FRONT', 'CW', 12],
    ['R', 'CW', 3],
    ['REAR', 'CW', 6],
    ['L', 'CW', 9],
    ['THR', 'CW', 3],
    ['MIN', 'CW', 9],
    ['THR', 'CCW', 9],
    ['MIN', 'CCW', 3],
  ] as const)('%s of an engine that turns %s is %d', (side, rotation, hour) => {
    const layout = { ...plainLayout, engine: { ...plainLayout.engine, rotation } };
    expect(hourOfSide(side, layout)).toBe(hour);
  });

  it('thrust and minor thrust lie opposite', () => {
    for (const rotation of ['CW', 'CCW'] as const) {
      const layout = { ...plainLayout, engine: { ...plainLayout.engine, rotation } };
      const [thrust, minor] = (['THR', 'MIN'] as const).map((side) => hourOfSide(side, layout) ?? Number.NaN);
      const [a, b] = [directionOfHour(thrust ?? 0, false), directionOfHour(minor ?? 0, false)];
      expect(a.x + b.x).toBeCloseTo(0, 9);
      expect(a.y + b.y).toBeCloseTo(0, 9);
    }
  });

  it.each([
    ['ENG/HD.2/FIRE', 2],
    ['ENG/HG.3', 3],
    ['ENG/BLK/DECK.2', 2],
    ['ENG/HD', 1],
    ['ENG/BLK', 1],
  ])('%s is on head %d', (place, head) => {
    expect(headOfPath(parseLocation(place).path)).toBe(head);
  });
});
