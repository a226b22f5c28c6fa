import type { Layout } from '../model/layout.ts';
import { classesOfPlace } from './classes-of-place.ts';
import type { ComponentClass } from './component.ts';

const criticalClasses: readonly ComponentClass[] = [
  'steering',
  'brakes',
  // load-holding: cylinders, lock valves, chains, forks, hooks, outriggers, lift structure, stability indicators
  'load-holding',
  'hydraulic-cylinder',
  'lock-valve',
  'chain',
  'fork',
  'hook',
  'outrigger',
  'lift-structure',
  'arm-support',
  'stability-indicator',
  // protection: rollover frame, belts, guards, interlocks, shut-downs, stop control
  'protection',
  'rollover-frame',
  'falling-object-guard',
  'belt',
  'guard',
  'interlock',
  'shut-down',
  'stop-control',
  'wheel',
  'rim',
  'fuel-under-pressure',
];

/**
 * Whether a place belongs to a system whose failure can hurt somebody at once: steering, brakes, load-holding,
 * protection, wheels and rims, fuel under pressure.
 *
 * @param locationText  a place of the location grammar
 * @throws AppError 'location-malformed'
 * Source: the handbook's ranking rule, criticalSystem (12.1). A fuel tank is critical only where gas stands in it under
 * pressure; seat and fire extinguisher are in no list there and stay out.
 */
export function isCriticalSystem(locationText: string, layout: Layout): boolean {
  const classes = classesOfPlace(locationText, layout);
  return criticalClasses.some((critical) => classes.has(critical));
}
