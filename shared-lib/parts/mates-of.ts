import { AppError } from '../contract/errors.ts';
import type { Layout } from '../model/layout.ts';
import { checkLocation } from './check-location.ts';
import { headCount, headOfCylinder } from './engine-counts.ts';
import { componentsAlong } from './find-component.ts';
import { formatLocation, formatPath } from './format-location.ts';
import type { Location, LocationIndex, LocationNode, Qualifiers } from './location.ts';
import { matingRules, type SharedCoordinates } from './mating-parts.ts';
import { neighbourCylinders } from './neighbour-cylinders.ts';
import { parseLocation } from './parse-location.ts';

export interface Mate {
  /** A place to look at next. */
  readonly location: string;
  /** Why, in the mechanic's words. */
  readonly why: string;
}

/** Parts whose neighbours share the web of gasket between two bores. */
const webParts = ['BRIDGE', 'EVS', 'IVS', 'FRING', 'BORE', 'CBORE', 'LNR'];

function ruleKey({ path, qualifiers }: Location): string | null {
  const node = path.at(-1);
  const parent = path.at(-2);
  if (node === undefined) return null;
  if (node.code === 'LNR') return qualifiers.face === undefined ? null : `LNR>${qualifiers.face}`;
  if (parent?.code === 'LNR' && (node.code === 'IN' || node.code === 'OUT')) return `LNR>${node.code}`;
  // The pin of a track or a frame is not the piston's.
  if (node.code === 'PIN' && parent?.code !== 'ENG') return null;
  return node.code;
}

/** The node whose index `#` stands for: a face of a liner has none of its own. */
function ownNode(location: Location): LocationNode | undefined {
  const node = location.path.at(-1);
  return node !== undefined && (node.code === 'IN' || node.code === 'OUT') ? location.path.at(-2) : node;
}

function joined(indices: readonly LocationIndex[]): string {
  return indices.map((index) => `.${index}`).join('');
}

function fill(mate: string, location: Location): string {
  const own = ownNode(location)?.indices ?? [];
  const above = location.path.at(-2)?.indices ?? [];
  return mate
    .replace(/^\.\//, `${formatPath(location.path.slice(0, -1))}/`)
    .replace('.#.#', joined(own))
    .replace('.#', joined(own.slice(0, 1)))
    .replace('.^', joined(above));
}

function sharedQualifiers(qualifiers: Qualifiers, shared: SharedCoordinates): Qualifiers {
  const { side, clock, depth } = qualifiers;
  const clockToo = shared === 'clock' || shared === 'side, clock and depth';
  const sideToo = shared === 'side' || shared === 'side, clock and depth';
  return {
    ...(sideToo && side !== undefined ? { side } : {}),
    ...(clockToo && clock !== undefined ? { clock } : {}),
    ...(shared === 'side, clock and depth' && depth !== undefined ? { depth } : {}),
  };
}

function exists(location: Location, layout: Layout): boolean {
  try {
    checkLocation(location, layout);
    return true;
  } catch (error) {
    if (error instanceof AppError) return false;
    throw error;
  }
}

function matingParts(location: Location, layout: Layout): readonly Mate[] {
  const key = ruleKey(location);
  return matingRules
    .filter((rule) => rule.part === key && (rule.when?.(layout) ?? true))
    .flatMap((rule) =>
      rule.mates.map((mate) => {
        const place = parseLocation(fill(mate, location));
        const qualifiers = { ...place.qualifiers, ...sharedQualifiers(location.qualifiers, rule.shared) };
        return { place: { ...place, qualifiers }, why: rule.why };
      }),
    )
    .filter(({ place }) => exists(place, layout))
    .map(({ place, why }) => ({ location: formatLocation(place), why }));
}

/** The same part of the cylinders to both sides, where one gasket covers both. */
function neighbours(location: Location, layout: Layout): readonly Mate[] {
  const at = location.path.findIndex((node) => webParts.includes(node.code));
  const node = location.path[at];
  const cylinder = node?.indices[0];
  const isCounted = componentsAlong(location.path)[at]?.counting?.by === 'cylinder';
  if (node === undefined || typeof cylinder !== 'number' || !isCounted) return [];
  const head = headCount(layout) === 1 ? 1 : headOfCylinder(cylinder, layout);
  return neighbourCylinders(cylinder, layout)
    .filter((other) => head === null || (headCount(layout) === 1 ? 1 : headOfCylinder(other, layout)) === head)
    .map((other) => {
      const moved = { code: node.code, indices: [other, ...node.indices.slice(1)] };
      const path = location.path.map((step, depth) => (depth === at ? moved : step));
      const face = location.qualifiers.face;
      return { path, qualifiers: face === undefined ? {} : { face } };
    })
    .filter((place) => exists(place, layout))
    .map((place) => ({
      location: formatLocation(place),
      why: `it stands next to cylinder ${cylinder} and shares its gasket web`,
    }));
}

/**
 * Where to look next: the parts that mate with a place, at the same coordinates where they share them, and the same part of
 * the neighbouring cylinders under the same gasket.
 *
 * @param locationText  a place of the location grammar
 * @returns  places that exist on the layout; clock positions stay in the deck frame, and speaking them mirrors them
 * @throws AppError 'location-malformed'
 * Source: the handbook's 2.3 b and c; the pairs stand in `mating-parts.ts`.
 */
export function matesOf(locationText: string, layout: Layout): readonly Mate[] {
  const location = parseLocation(locationText);
  return [...matingParts(location, layout), ...neighbours(location, layout)];
}
