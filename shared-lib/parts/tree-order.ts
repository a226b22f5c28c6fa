import type { Component } from './component.ts';
import { componentTemplate } from './component-template.ts';
import type { LocationPath } from './location.ts';

function codesInOrder(components: readonly Component[], above: string): readonly string[] {
  return components.flatMap((component) => {
    const codes = `${above}/${component.code}`;
    return [codes, ...codesInOrder(component.parts ?? [], codes)];
  });
}

const positions: ReadonlyMap<string, number> = new Map(
  codesInOrder(componentTemplate, '').map((codes, position) => [codes, position]),
);

/**
 * Where a component stands in the tree, whatever its number: the parent before its parts, then as the tree lists them.
 *
 * @returns  a whole number, 0 for the engine; a path the tree does not know stands last
 * Source: the handbook's tree order (2.1, 2.3 d).
 */
export function treeOrder(path: LocationPath): number {
  return positions.get(path.map((node) => `/${node.code}`).join('')) ?? positions.size;
}
