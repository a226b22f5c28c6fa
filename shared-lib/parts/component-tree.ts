import type { Layout } from '../model/layout.ts';
import { childrenOf, type OfferedComponent, offered } from './children-of.ts';
import type { Component } from './component.ts';
import { componentTemplate } from './component-template.ts';
import { headCount } from './engine-counts.ts';
import { formatPath } from './format-location.ts';
import { isOffered } from './layout-needs.ts';
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

function withParts(place: OfferedComponent, layout: Layout): readonly OfferedComponent[] {
  return [place, ...childrenOf(place.path, layout).flatMap((child) => withParts(child, layout))];
}

/** Parts of all copies at once (the skirts of all pistons) are left to typing: each copy offers its own. */
function placesOf(assembly: Component, system: Component, layout: Layout): readonly OfferedComponent[] {
  const copies = offered(assembly, [{ code: system.code, indices: [] }], layout);
  const several = copies.length > 1;
  return copies.flatMap((copy, index) => (several && index === 0 ? [copy] : withParts(copy, layout)));
}

function assemblyChoice(assembly: Component, system: Component, layout: Layout): AssemblyChoice {
  const path = [system, assembly].map(({ code }) => ({ code, indices: [] }));
  const places = placesOf(assembly, system, layout);
  return {
    path: formatPath(path),
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
    .flatMap((system) =>
      offered(system, [], layout).map((line) => ({
        ...line,
        assemblies: (system.parts ?? [])
          .filter((assembly) => isOffered(assembly, layout))
          .map((assembly) => assemblyChoice(assembly, system, layout)),
      })),
    );
}
