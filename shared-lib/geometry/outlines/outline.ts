import type { XY } from '../spaces.ts';

/** One unbroken stroke of a drawing. */
export interface Stroke {
  readonly points: readonly XY[];
  readonly closed: boolean;
  /** A stretch where a tracer guessed its way. */
  readonly isUnsure?: boolean;
}

/** Stretches of a chain, from point to point by index. */
export type Stretches = readonly (readonly [from: number, to: number])[];

/**
 * How a shape is drawn round, beside or at its points. Takes the points in the space that is drawn in (screen pixels,
 * or a report's own points), so offsets and ticks keep their size whatever the photo's scale.
 */
export type OutlineOf = (points: readonly XY[]) => readonly Stroke[];

export function openStroke(...points: XY[]): Stroke {
  return { points, closed: false };
}
