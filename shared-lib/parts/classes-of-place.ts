import type { Layout } from '../model/layout.ts';
import type { ComponentClass } from './component.ts';
import { componentsAlong } from './find-component.ts';
import { formatPath } from './format-location.ts';
import type { LocationNode, LocationPath } from './location.ts';
import { oncePerPlace } from './once-per-place.ts';
import { parseLocation } from './parse-location.ts';

const roleClasses: Record<NonNullable<Layout['roles']>[string], readonly ComponentClass[]> = {
  'shut-down': ['shut-down'],
  interlock: ['interlock'],
  guard: ['guard'],
  'stop-control': ['stop-control'],
  'lift-structure': ['lift-structure', 'load-holding'],
  hook: ['hook', 'load-holding'],
};

/** What a function word makes of a hydraulic part: the steering cylinder belongs to the steering, wherever it hangs. */
const functionClasses: ReadonlyMap<string, readonly ComponentClass[]> = new Map([
  ['steer', ['steering']],
  ['brake', ['brakes', 'service-brake']],
]);

function classesOfFunction(node: LocationNode): readonly ComponentClass[] {
  return node.indices.flatMap((index) => (typeof index === 'string' ? (functionClasses.get(index) ?? []) : []));
}

function classesOfRoles(path: LocationPath, layout: Layout): readonly ComponentClass[] {
  return path.flatMap((_, index) => {
    const role = layout.roles?.[formatPath(path.slice(0, index + 1))];
    return role === undefined ? [] : roleClasses[role];
  });
}

/**
 * Everything a place is, for cautions, named conditions and the critical system: its own classes, those of the parts
 * above it, its function's, and its role on this machine.
 *
 * @param locationText  a place or bare path of the location grammar
 * @throws AppError 'location-malformed'
 */
export const classesOfPlace = oncePerPlace((locationText, layout): ReadonlySet<ComponentClass> => {
  const { path } = parseLocation(locationText);
  const classes = new Set<ComponentClass>();
  for (const component of componentsAlong(path)) {
    for (const dropped of component.notClasses ?? []) classes.delete(dropped);
    for (const own of component.classes ?? []) classes.add(own);
  }
  for (const node of path) for (const own of classesOfFunction(node)) classes.add(own);
  for (const own of classesOfRoles(path, layout)) classes.add(own);
  const gasInside = layout.engine.fuel === 'LPG' || layout.engine.fuel === 'gas';
  if (classes.has('gas-fuel')) {
    if (gasInside) classes.add('fuel-under-pressure');
    else classes.delete('gas-fuel');
  }
  return classes;
});
