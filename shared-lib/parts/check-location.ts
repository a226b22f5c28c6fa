import { AppError } from '../contract/errors.ts';
import type { Layout } from '../model/layout.ts';
import { componentsAlong } from './find-component.ts';
import { formatLocation } from './format-location.ts';
import { headProblem } from './head-problem.ts';
import { indexProblem } from './index-problem.ts';
import { missingNeed } from './layout-needs.ts';
import type { Location, LocationPath, Qualifiers } from './location.ts';
import { resolveReference } from './resolve-reference.ts';

type Problem = string | null;

function pathProblem(path: LocationPath, layout: Layout): Problem {
  const components = componentsAlong(path);
  for (const [depth, component] of components.entries()) {
    const node = path[depth];
    const problem = missingNeed(component, layout) ?? (node ? indexProblem(node, component, layout) : null);
    if (problem !== null) return problem;
  }
  const unknown = path[components.length];
  if (unknown !== undefined) {
    const parent = components.at(-1);
    return `${parent === undefined ? 'the machine' : `the ${parent.name}`} has no part '${unknown.code}'`;
  }
  return headProblem(path, layout);
}

function referenceProblem(reference: LocationPath, path: LocationPath, layout: Layout): Problem {
  const resolved = resolveReference(reference, path);
  if (resolved === null) return `there is no part '${reference.at(-1)?.code ?? ''}' to point at from there`;
  return pathProblem(resolved, layout);
}

function clockProblem({ clock }: Qualifiers): Problem {
  if (clock === undefined) return null;
  const outside = [clock.fromHour, clock.toHour].find((hour) => hour < 0.5 || hour > 12);
  return outside === undefined ? null : `a clock has no position ${outside}: it runs from half past twelve to twelve`;
}

function qualifierProblem(location: Location, layout: Layout): Problem {
  const { from, to, between, near } = location.qualifiers;
  const references = [from, to, ...(between ?? []), near?.part].filter((reference) => reference !== undefined);
  for (const reference of references) {
    const problem = referenceProblem(reference, location.path, layout);
    if (problem !== null) return problem;
  }
  return clockProblem(location.qualifiers);
}

/**
 * Refuses a place that a machine does not have.
 *
 * Parts of the running gear on a stationary engine are not refused: an odd truth must be recordable. Where the liner type is
 * unknown, liners and bores both are.
 *
 * @throws AppError 'location-unknown' with the text and a reason in the mechanic's words: a number beyond the engine's, a
 *   valve beyond its valves, a liner on a parent-bore engine, a coolant part on an air-cooled one, a clock position outside
 *   0.5–12, a hydraulic function or a part the machine does not have
 * Source: the handbook's list of what must be rejected (2.3).
 */
export function checkLocation(location: Location, layout: Layout): void {
  const reason = pathProblem(location.path, layout) ?? qualifierProblem(location, layout);
  if (reason !== null) throw new AppError('location-unknown', { text: formatLocation(location), reason });
}
