import type { Layout } from '../model/layout.ts';
import type { Component } from './component.ts';
import { componentsAlong } from './find-component.ts';
import { formatLocation } from './format-location.ts';
import { type LocationIndex, type LocationPath, placeMarks, type Qualifiers } from './location.ts';
import { oncePerPlace } from './once-per-place.ts';
import { ordinalFromFreeEnd } from './ordinal-from-free-end.ts';
import { parseLocation } from './parse-location.ts';
import { treeOrder } from './tree-order.ts';

const marks: readonly string[] = placeMarks;
const bankOrder = { L: 1, R: 2, A: 1, B: 2 } as const;

/** Numbers of the cylinders' scheme sort from the free end; a number the engine does not have comes after the others. */
function numberKey(value: number, position: number, component: Component | undefined, layout: Layout): number[] {
  const by = component?.counting?.by;
  if (position === 0 && (by === 'cylinder' || by === 'crankpin')) {
    const place = ordinalFromFreeEnd(value, layout);
    if (place === null) return [1, 1, value, 0];
    return [1, 0, place.fromFreeEnd, place.bank === null ? 0 : bankOrder[place.bank]];
  }
  const backwards = position === 0 && by === 'main' && layout.numbering.scheme === 'drive-first';
  return [1, 0, backwards ? -value : value, 0];
}

function indexKey(index: LocationIndex, position: number, component: Component | undefined, layout: Layout): number[] {
  if (typeof index === 'number') return numberKey(index, position, component, layout);
  const mark = marks.indexOf(index);
  if (mark >= 0) return [3, 0, mark, 0];
  const word = layout.hydraulics.indexOf(index);
  return [2, word < 0 ? 1 : 0, Math.max(word, 0), 0];
}

/** No index means all of them and stands before each of them. */
function pathKey(path: LocationPath, layout: Layout): number[][] {
  const components = componentsAlong(path);
  return path.flatMap((node, depth) => [
    ...node.indices.map((index, position) => indexKey(index, position, components[depth], layout)),
    [0, 0, 0, 0],
  ]);
}

/** The whole part before a spot on it; twelve o'clock is where the clock begins. */
function spotKey(qualifiers: Qualifiers): number[][] {
  const { depth, clock } = qualifiers;
  return [
    depth === undefined ? [0] : [1, depth.fromMm, depth.toMm],
    clock === undefined ? [0] : [1, clock.fromHour % 12, clock.toHour % 12],
  ];
}

function compareNumbers(a: readonly number[], b: readonly number[]): number {
  for (let position = 0; position < Math.max(a.length, b.length); position += 1) {
    const difference = (a[position] ?? -1) - (b[position] ?? -1);
    if (difference !== 0) return difference;
  }
  return 0;
}

function compareKeys(a: readonly number[][], b: readonly number[][]): number {
  for (let position = 0; position < Math.max(a.length, b.length); position += 1) {
    const difference = compareNumbers(a[position] ?? [], b[position] ?? []);
    if (difference !== 0) return difference;
  }
  return 0;
}

interface PlaceKey {
  readonly order: number;
  readonly path: readonly number[][];
  readonly spot: readonly number[][];
  readonly text: string;
}

const placeKey = oncePerPlace((place, layout): PlaceKey => {
  const location = parseLocation(place);
  return {
    order: treeOrder(location.path),
    path: pathKey(location.path, layout),
    spot: spotKey(location.qualifiers),
    text: formatLocation(location),
  };
});

/**
 * The order of two places: tree order, then index, then distance, then clock position.
 *
 * @param a, b  places of the location grammar
 * @param layout  whose numbering scheme decides: cylinders sort from the free end, whatever their numbers
 * @returns  below 0 when `a` comes first, above 0 when `b` does, 0 only for the same place written in the same way
 * @throws AppError 'location-malformed'
 * Source: the handbook's 2.3 d. What that leaves equal is settled by the canonical text, so that the order is total.
 */
export function compareLocations(a: string, b: string, layout: Layout): number {
  const first = placeKey(a, layout);
  const second = placeKey(b, layout);
  return (
    first.order - second.order ||
    compareKeys(first.path, second.path) ||
    compareKeys(first.spot, second.spot) ||
    (first.text < second.text ? -1 : first.text > second.text ? 1 : 0)
  );
}
