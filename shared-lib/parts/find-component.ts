import type { Component } from './component.ts';
import { componentTemplate } from './component-template.ts';
import type { LocationPath } from './location.ts';

/** The components along a path, system first; shorter than the path where a code is not known there. */
export function componentsAlong(path: LocationPath): readonly Component[] {
  const found: Component[] = [];
  let level: readonly Component[] = componentTemplate;
  for (const node of path) {
    const next = level.find((component) => component.code === node.code);
    if (next === undefined) break;
    found.push(next);
    level = next.parts ?? [];
  }
  return found;
}

/**
 * The component a path ends at, with its name and its own classes.
 *
 * @returns  null where the tree has no such part
 */
export function findComponent(path: LocationPath): Component | null {
  const found = componentsAlong(path);
  return found.length === path.length ? (found.at(-1) ?? null) : null;
}
