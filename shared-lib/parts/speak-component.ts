import { AppError } from '../contract/errors.ts';
import type { Layout } from '../model/layout.ts';
import type { Component } from './component.ts';
import { componentsAlong } from './find-component.ts';
import { formatPath } from './format-location.ts';
import type { LocationNode, LocationPath } from './location.ts';
import { parseLocation } from './parse-location.ts';
import { cylinderOf, speakNode } from './speak-node.ts';

export interface SpokenPath {
  /** The parts to say, outermost first, without the cylinder. */
  readonly parts: readonly string[];
  /** The cylinder that stands outside the parts: `cylinder 3, exhaust seat`. */
  readonly cylinder: number | null;
  /** Whether the parts themselves carry a number of the engine's scheme: `liner 4`. */
  readonly numbered: boolean;
}

/** What a general part is for on this machine: `switch 1 (shut-down)`. */
const roleWords = {
  'shut-down': 'shut-down',
  interlock: 'interlock',
  guard: 'guard',
  'stop-control': 'stop control',
  'lift-structure': 'lift structure',
  hook: 'hook',
} as const;

interface Step {
  readonly node: LocationNode;
  readonly component: Component;
}

function stepsAlong(path: LocationPath): readonly Step[] {
  const components = componentsAlong(path);
  if (components.length < path.length) {
    const text = formatPath(path);
    const unknown = path[components.length];
    throw new AppError('location-unknown', {
      text,
      reason: `the machine has no part '${unknown?.code ?? text}' there`,
    });
  }
  return path.flatMap((node, depth) => {
    const component = components[depth];
    return component === undefined ? [] : [{ node, component }];
  });
}

/** From the last part that is spoken by its cylinder on; before that, the parts whose names are needed. */
function stepsToSay(steps: readonly Step[]): readonly Step[] {
  const ofCylinder = steps.findLastIndex((step) => step.component.ofCylinder === true);
  const from = Math.max(ofCylinder, 0);
  return steps.slice(from).filter((step, index, rest) => index === rest.length - 1 || step.component.silent !== true);
}

/** The words for a bare path, before they are put in an order. */
export function spokenPath(path: LocationPath, layout: Layout): SpokenPath {
  const steps = stepsToSay(stepsAlong(path));
  const outside = steps.find((step) => step.component.ofCylinder === true);
  const numbered = steps.some(({ node, component }) => {
    const by = component.counting?.by;
    return (by === 'cylinder' || by === 'main' || by === 'crankpin') && node.indices.length > 0;
  });
  return {
    parts: steps.map((step, index) => {
      const spoken = speakNode(step.node, step.component, layout);
      const role = index === steps.length - 1 ? layout.roles?.[formatPath(path)] : undefined;
      return role === undefined ? spoken : `${spoken} (${roleWords[role]})`;
    }),
    cylinder: outside === undefined ? null : cylinderOf(outside.node, outside.component),
    numbered,
  };
}

export function capitalise(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The title of a path that is already read: `Exhaust seat, cylinder 3`. */
export function speakPath(path: LocationPath, layout: Layout): string {
  const { parts, cylinder } = spokenPath(path, layout);
  return capitalise([...parts, ...(cylinder === null ? [] : [`cylinder ${cylinder}`])].join(', '));
}

/**
 * A component in a few words, for a title, a picker or a tag.
 *
 * @param pathText  a path; qualifiers are not spoken
 * @throws AppError 'location-malformed'; 'location-unknown' where the tree has no such part
 * @example speakComponent('ENG/HD.1/EVS.3.1', layout) // 'Exhaust seat, cylinder 3'
 */
export function speakComponent(pathText: string, layout: Layout): string {
  return speakPath(parseLocation(pathText).path, layout);
}
