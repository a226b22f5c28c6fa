import type { Layout } from '../model/layout.ts';
import { copyPaths, type OfferedComponent, offeredAt } from './children-of.ts';
import type { Component } from './component.ts';
import { componentTemplate } from './component-template.ts';
import { headCount } from './engine-counts.ts';
import { formatPath } from './format-location.ts';
import { isOffered } from './layout-needs.ts';
import type { LocationNode, LocationPath } from './location.ts';
import { capitalise } from './speak-component.ts';
import { pluralOf } from './speak-node.ts';

/** The second tap: all pistons, the block, the radiator. */
export interface AssemblyChoice {
  readonly path: string;
  readonly label: string;
  /** The third tap: the assembly itself, its copies and every part of each. */
  readonly places: readonly OfferedComponent[];
}

/** The first tap. */
export interface SystemChoice extends OfferedComponent {
  readonly assemblies: readonly AssemblyChoice[];
}

function withParts(path: LocationPath, component: Component, layout: Layout): readonly OfferedComponent[] {
  const below = (component.parts ?? [])
    .filter((part) => isOffered(part, layout))
    .flatMap((part) => copyPaths(part, path, layout).flatMap((copy) => withParts(copy, part, layout)));
  return [offeredAt(path, component, layout), ...below];
}

/** Parts of all copies at once (the skirts of all pistons) are left to typing: each copy offers its own. */
function placesOf(assembly: Component, system: LocationNode, layout: Layout): readonly OfferedComponent[] {
  const [first, ...rest] = copyPaths(assembly, [system], layout);
  if (first === undefined) return [];
  if (rest.length === 0) return withParts(first, assembly, layout);
  return [offeredAt(first, assembly, layout), ...rest.flatMap((copy) => withParts(copy, assembly, layout))];
}

function assemblyChoice(assembly: Component, system: LocationNode, layout: Layout): AssemblyChoice {
  const places = placesOf(assembly, system, layout);
  return {
    path: formatPath([system, { code: assembly.code, indices: [] }]),
    label: places.length === 1 ? (places[0]?.label ?? '') : capitalise(labelOf(assembly, layout)),
    places,
  };
}

function labelOf(assembly: Component, layout: Layout): string {
  const one = assembly.counting === undefined || assembly.single === true;
  const oneHead = assembly.counting?.by === 'head' && headCount(layout) === 1;
  return one || oneHead ? assembly.name : pluralOf(assembly);
}

/**
 * The tree a picker shows, in three taps at most: system, assembly, place with its number.
 *
 * Holds what the machine can have: no cooling parts with coolant on an air-cooled engine, no liners on a parent bore, no
 * running gear on a stationary engine.
 */
export function componentTree(layout: Layout): readonly SystemChoice[] {
  return componentTemplate
    .filter((system) => isOffered(system, layout))
    .map((system) => {
      const node = { code: system.code, indices: [] };
      return {
        ...offeredAt([node], system, layout),
        assemblies: (system.parts ?? [])
          .filter((assembly) => isOffered(assembly, layout))
          .map((assembly) => assemblyChoice(assembly, node, layout)),
      };
    });
}
