import type { XY } from '../geometry/spaces.ts';
import type { Layout } from '../model/layout.ts';
import type { LocationNode } from '../parts/location.ts';

/** What stands in a bore's roof: a sketch, since no layout says where a maker put it. Bore radii, looked down on. */
export interface BoreFeature {
  readonly code: string;
  /** What follows the cylinder's number: which of several valves. */
  readonly within: readonly number[];
  readonly offset: XY;
  readonly radius: number;
}

const valveRadius = { 1: 0.34, 2: 0.26, 3: 0.2 } as const;
/** How far the rows of valves stand off the middle. */
const rowOffset = 0.42;
const injectorRadius = 0.15;

/** How far a row of valves of this size reaches into the injector in the middle. */
const reachesIn = (count: number): number => Math.max(0, valveRadius[atMost3(count)] + injectorRadius - rowOffset);

function valves(code: string, count: 1 | 2 | 3, y: number, shift: number): BoreFeature[] {
  const radius = valveRadius[count];
  return Array.from({ length: count }, (_, index) => ({
    code,
    within: [index + 1],
    offset: { x: shift + (index - (count - 1) / 2) * (2 * radius + 0.06), y },
    radius,
  }));
}

function atMost3(count: number): 1 | 2 | 3 {
  return count >= 3 ? 3 : count === 2 ? 2 : 1;
}

/** Intake valves on one side, exhaust on the other, in order from the fan end; the injector in what room is left. */
export function featuresOfBore(layout: Layout): readonly BoreFeature[] {
  const { valves: count, fuel } = layout.engine;
  const single = count.intake === 1 && count.exhaust === 1;
  const shift = single ? -0.16 : 0;
  const between = { x: 0, y: reachesIn(count.intake) - reachesIn(count.exhaust) };
  const injector = { code: 'INJB', within: [], offset: single ? { x: 0.6, y: 0 } : between, radius: injectorRadius };
  return [
    ...valves('IVS', atMost3(count.intake), -rowOffset, shift),
    ...valves('EVS', atMost3(count.exhaust), rowOffset, shift),
    ...(fuel === 'diesel' ? [injector] : []),
  ];
}

const standsAt: ReadonlyMap<string, string> = new Map([
  ['IV', 'IVS'],
  ['IVG', 'IVS'],
  ['EV', 'EVS'],
  ['EVG', 'EVS'],
  ['PCH', 'INJB'],
  ['GLOW', 'INJB'],
]);

const besides: ReadonlyMap<string, { readonly offset: XY; readonly radius: number }> = new Map([
  ['BRIDGE', { offset: { x: -0.16, y: 0 }, radius: 0.06 }],
  ['PORT-I', { offset: { x: 0, y: -1.14 }, radius: 0.06 }],
  ['PORT-E', { offset: { x: 0, y: 1.14 }, radius: 0.06 }],
  ['WJ', { offset: { x: 0.4, y: -1.14 }, radius: 0.06 }],
]);

/** Where a part of a cylinder's roof stands; null for one that is the bore itself. */
export function featureOf({ code, indices }: LocationNode, layout: Layout): BoreFeature | null {
  const beside = besides.get(code);
  if (beside !== undefined) return { code, within: [], ...beside };
  const drawn = standsAt.get(code) ?? code;
  const which = typeof indices[1] === 'number' ? indices[1] : 1;
  const features = featuresOfBore(layout).filter((feature) => feature.code === drawn);
  return features[which - 1] ?? features[0] ?? null;
}
