import type { Layout } from '../model/layout.ts';
import { componentsAlong } from '../parts/find-component.ts';
import type { Location, LocationPath } from '../parts/location.ts';
import { resolveReference } from '../parts/resolve-reference.ts';
import { cylinderOf } from '../parts/speak-node.ts';

function cylinderAlong(path: LocationPath): number | null {
  const components = componentsAlong(path);
  for (const [depth, node] of path.entries()) {
    const component = components[depth];
    const cylinder = component === undefined ? null : cylinderOf(node, component);
    if (cylinder !== null) return cylinder;
  }
  return null;
}

/** The parts that a place refers to, as full paths: between these, from here, towards there, near that. */
export function referencesOf({ path, qualifiers }: Location): readonly LocationPath[] {
  const { between, near, from, to } = qualifiers;
  return [...(between ?? []), near?.part, from, to].flatMap((reference) => {
    const resolved = reference === undefined ? null : resolveReference(reference, path);
    return resolved === null ? [] : [resolved];
  });
}

/** The cylinder's own number that a place belongs to: its own, or the one its references name. */
export function cylinderOfPlace(location: Location): number | null {
  const own = cylinderAlong(location.path);
  if (own !== null) return own;
  for (const reference of referencesOf(location)) {
    const cylinder = cylinderAlong(reference);
    if (cylinder !== null) return cylinder;
  }
  return null;
}

/** The index of the head, deck or gasket a path goes through; the only one where it does not say. */
export function headOfPath(path: LocationPath): number {
  const node = path.find(({ code }) => ['HD', 'HG', 'DECK'].includes(code));
  const [index] = node?.indices ?? [];
  return typeof index === 'number' ? index : 1;
}

/** Which side of the engine, as an hour of the deck clock; null for sides that no clock has. */
export function hourOfSide(side: Location['qualifiers']['side'], layout: Layout): number | null {
  const thrustHour = layout.engine.rotation === 'CW' ? 3 : 9;
  switch (side) {
    case 'THR':
      return thrustHour;
    case 'MIN':
      return 12 - thrustHour;
    case 'FRONT':
      return 12;
    case 'REAR':
      return 6;
    case 'R':
      return 3;
    case 'L':
      return 9;
    default:
      return null;
  }
}
