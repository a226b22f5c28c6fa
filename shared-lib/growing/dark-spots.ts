import { blur, boxMean } from '../tracing/blur.ts';
import type { ColourPlanes } from './planes.ts';

/** How much darker every pixel is than what lies round it, and where that is most. */
export interface Depths {
  readonly width: number;
  readonly height: number;
  /** Grey levels. */
  readonly depth: Float32Array;
  /** Pixels darker than all their neighbours. */
  readonly lows: readonly number[];
}

/** What is finer is the camera's, px looked at. */
const grainSigma = 0.9;
/** Half edge of what lies round a pixel, twice averaged, px looked at. */
const roundPx = 7;

export function depthsOf({ width, height, light }: ColourPlanes): Depths {
  const sharp = blur(light, width, height, grainSigma);
  const depth = boxMean(boxMean(light, width, height, roundPx), width, height, roundPx);
  for (let at = 0; at < depth.length; at += 1) depth[at] = (depth[at] as number) - (sharp[at] as number);
  const lows: number[] = [];
  for (let y = 1; y < height - 1; y += 1) {
    for (let x = 1; x < width - 1; x += 1) {
      const at = y * width + x;
      if ((depth[at] as number) > 0 && isLow(sharp, at, width)) lows.push(at);
    }
  }
  return { width, height, depth, lows };
}

function isLow(light: Float32Array, at: number, width: number): boolean {
  const own = light[at] as number;
  return (
    own < (light[at - 1] as number) &&
    own <= (light[at + 1] as number) &&
    own < (light[at - width] as number) &&
    own <= (light[at + width] as number) &&
    own < (light[at - width - 1] as number) &&
    own <= (light[at + width + 1] as number) &&
    own < (light[at - width + 1] as number) &&
    own <= (light[at + width - 1] as number)
  );
}

/** A dark spot with the pixels that are at least half as deep. */
export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly depth: number;
  readonly pixels: readonly number[];
}

/** Smaller ones are the camera's. */
const fewestPixels = 2;

/** Spots deeper than a level, the deepest first; one that runs into another is part of it. */
export function darkSpots({ width, height, depth, lows }: Depths, level: number): Spot[] {
  const isTaken = new Uint8Array(width * height);
  const depthAt = (at: number): number => depth[at] as number;
  const spots: Spot[] = [];
  for (const low of lows.filter((at) => depthAt(at) > level).sort((a, b) => depthAt(b) - depthAt(a))) {
    if (isTaken[low]) continue;
    const half = depthAt(low) / 2;
    const pixels: number[] = [];
    const visit = (at: number): void => {
      if (isTaken[at] || depthAt(at) < half) return;
      isTaken[at] = 1;
      pixels.push(at);
    };
    visit(low);
    for (const at of pixels) {
      const x = at % width;
      if (x > 0) visit(at - 1);
      if (x < width - 1) visit(at + 1);
      if (at >= width) visit(at - width);
      if (at < width * (height - 1)) visit(at + width);
    }
    if (pixels.length < fewestPixels) continue;
    spots.push({ x: low % width, y: Math.floor(low / width), depth: depthAt(low), pixels });
  }
  return spots;
}
