import type { Layout } from '../model/layout.ts';
import type { Component } from './component.ts';
import { componentTemplate } from './component-template.ts';
import { copiesOf, takesNumber } from './copies-of.ts';
import { findComponent } from './find-component.ts';
import { formatPath } from './format-location.ts';
import { headProblem } from './head-problem.ts';
import { isOffered } from './layout-needs.ts';
import type { LocationPath } from './location.ts';
import { parseLocation } from './parse-location.ts';
import { speakPath } from './speak-component.ts';
import { pluralOf } from './speak-node.ts';

/** One line of a picker. */
export interface OfferedComponent {
  readonly path: string;
  /** In words, fit for a title: `Exhaust seat, cylinder 3`. */
  readonly label: string;
  /** The plural of its kind, to stand above it and its like. */
  readonly group: string;
  /** A number may still be typed behind the path: its copies are not counted by the layout. */
  readonly takesNumber: boolean;
}

/** The paths of every offered copy of a component; a cylinder is offered under its own head only. */
export function copyPaths(component: Component, above: LocationPath, layout: Layout): readonly LocationPath[] {
  const system = above[0]?.code ?? component.code;
  return copiesOf(component, system, layout)
    .map((indices) => [...above, { code: component.code, indices }])
    .filter((path) => headProblem(path, layout) === null);
}

/** A path as a line to pick. */
export function offeredAt(path: LocationPath, component: Component, layout: Layout): OfferedComponent {
  return {
    path: formatPath(path),
    label: speakPath(path, layout),
    group: pluralOf(component),
    takesNumber: path.at(-1)?.indices.length === 0 && takesNumber(component),
  };
}

/**
 * The parts directly below a path, each copy on its own; first, where there are several, all of them as one.
 *
 * @param pathText  a bare path, or the empty text for the systems of the machine
 * @throws AppError 'location-malformed'
 */
export function childrenOf(pathText: string, layout: Layout): readonly OfferedComponent[] {
  const above = pathText === '' ? [] : parseLocation(pathText).path;
  const parts = above.length === 0 ? componentTemplate : (findComponent(above)?.parts ?? []);
  return parts
    .filter((part) => isOffered(part, layout))
    .flatMap((part) => copyPaths(part, above, layout).map((path) => offeredAt(path, part, layout)));
}
