import { formatPath } from './format-location.ts';
import type { ClockRange, DepthRange, Qualifiers, Side } from './location.ts';
import { parseLocation } from './parse-location.ts';

/** Two places at opposite sides, faces or ends can't be one, whatever else is left open. */
const opposites: readonly (readonly [Side, Side])[] = [
  ['THR', 'MIN'],
  ['FRONT', 'REAR'],
  ['INT', 'EXH'],
  ['L', 'R'],
  ['TOP', 'BOT'],
  ['IN', 'OUT'],
];

function onOppositeSides(a: Side | undefined, b: Side | undefined): boolean {
  return opposites.some(([one, other]) => (a === one && b === other) || (a === other && b === one));
}

function differ<Value>(a: Value | undefined, b: Value | undefined): boolean {
  return a !== undefined && b !== undefined && a !== b;
}

/** Hours clockwise from one position to another, 0 up to but not including 12. */
function hoursClockwise(from: number, to: number): number {
  return (((to - from) % 12) + 12) % 12;
}

function holds(range: ClockRange, hour: number): boolean {
  return hoursClockwise(range.fromHour, hour) <= hoursClockwise(range.fromHour, range.toHour);
}

function clocksOverlap(a: ClockRange | undefined, b: ClockRange | undefined): boolean {
  if (a === undefined || b === undefined) return true;
  return holds(a, b.fromHour) || holds(b, a.fromHour);
}

function depthsOverlap(a: DepthRange | undefined, b: DepthRange | undefined): boolean {
  if (a === undefined || b === undefined) return true;
  return a.fromMm <= b.toMm && b.fromMm <= a.toMm;
}

function contradict(a: Qualifiers, b: Qualifiers): boolean {
  return onOppositeSides(a.side, b.side) || differ(a.face, b.face) || (differ(a.end, b.end) && !(a.depth && b.depth));
}

/**
 * Whether two places may be one: what a return visit asks before it calls a finding the same condition.
 *
 * Same path, clock positions that overlap round the dial, distances that overlap; what one of them leaves open does not
 * speak against it. Opposite sides, different faces and different ends do.
 *
 * @throws AppError 'location-malformed'
 * Source: the handbook's 2.3 a; the rule about opposite sides is common practice, no source.
 * @example samePlace('ENG/LNR.4@clk=11-1', 'ENG/LNR.4@clk=0.5') // true
 */
export function samePlace(a: string, b: string): boolean {
  const first = parseLocation(a);
  const second = parseLocation(b);
  return (
    formatPath(first.path) === formatPath(second.path) &&
    clocksOverlap(first.qualifiers.clock, second.qualifiers.clock) &&
    depthsOverlap(first.qualifiers.depth, second.qualifiers.depth) &&
    !contradict(first.qualifiers, second.qualifiers)
  );
}
