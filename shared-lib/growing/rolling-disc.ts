import type { Size } from '../geometry/spaces.ts';
import { distanceMap } from './distance-map.ts';
import { filledPart } from './settle.ts';

/** Distances are between the middles of pixels, so the disc's own edge lies about this much within them. */
const pixelPx = 0.3;

export interface Rolled {
  /** Per pixel: distance to the nearest one that is set. */
  readonly toSet: Float32Array;
  /** Per pixel: how far inside the outline that the disc leaves, px; below 0 outside. */
  readonly within: Float32Array;
}

/**
 * A disc is rolled round the pixels that are set, from outside; what it cannot reach is inside. Holes are filled, and only
 * the part that holds the seed is kept.
 *
 * Source: closing by a disc (Serra, Image analysis and mathematical morphology, 1982), whose outline is that of the alpha
 * shape of the same radius (Edelsbrunner, Kirkpatrick and Seidel, On the shape of a set of points in the plane, 1983).
 */
export function rollDisc(isSet: Uint8Array, { width, height }: Size, radius: number, seed: number): Rolled {
  const toSet = distanceMap(isSet, width, height);
  const near = new Uint8Array(toSet.length);
  for (let at = 0; at < near.length; at += 1) near[at] = (toSet[at] as number) <= radius ? 1 : 0;
  const outside = filledPart(near, width, height, seed);
  for (let at = 0; at < outside.length; at += 1) outside[at] = 1 - (outside[at] as number);
  const within = distanceMap(outside, width, height);
  for (let at = 0; at < within.length; at += 1) within[at] = (within[at] as number) - radius - pixelPx;
  return { toSet, within };
}
