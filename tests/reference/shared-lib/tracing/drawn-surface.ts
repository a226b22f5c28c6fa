import { distanceToChain } from '../../../../shared-lib/geometry/plane.ts';
import type { XY } from '../../../../shared-lib/geometry/spaces.ts';
import { blur } from '../../../../shared-lib/tracing/blur.ts';
import type { GreyImage } from '../../../../shared-lib/tracing/grey.ts';

/**
 * Drawn metal: no open photographs of cracks in oily iron with a true line were found, so the surfaces are made up and
 * say so. What is exact about them is the crack: a line drawn by its distance, width and depth.
 */
export type Surface = 'machined' | 'rust' | 'oil-film';

/** Mulberry32, from memory: a small generator with a fixed seed, so that every run sees the same surface. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** Box and Muller's transform of two uniform numbers. */
export function gaussian(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

const size = 320;

function noise(random: () => number, sigma: number, spread: number): Float32Array {
  const plain = Float32Array.from({ length: size * size }, () => gaussian(random));
  const smooth = sigma === 0 ? plain : blur(plain, size, size, sigma);
  let squares = 0;
  for (const value of smooth) squares += value * value;
  const scale = spread / Math.sqrt(squares / smooth.length);
  return smooth.map((value) => value * scale);
}

function surfaceOf(kind: Surface, random: () => number): Float32Array {
  const grain = noise(random, 0.7, 4);
  const lines = Float32Array.from({ length: size }, () => gaussian(random));
  const blotches = noise(random, 6, kind === 'rust' ? 14 : 3);
  const speckle = noise(random, 1.5, kind === 'rust' ? 9 : 2);
  return grain.map((value, at) => {
    const x = at % size;
    const y = Math.floor(at / size);
    const feed = kind === 'machined' ? 5 * (lines[y] ?? 0) + 4 * Math.sin(y * 0.9 + x * 0.002) : 0;
    const film = kind === 'oil-film' ? 40 * Math.sin(x / 90) * Math.cos(y / 70) : 0;
    return 130 + value + feed + film + (blotches[at] ?? 0) + (speckle[at] ?? 0);
  });
}

/** A way that wanders: a random walk in direction that is drawn back to its course. */
export function wanderingLine(random: () => number): XY[] {
  const points: XY[] = [{ x: 20, y: 60 + 200 * random() }];
  let turn = 0;
  for (let last = points[0]; last && last.x < size - 20; last = points.at(-1)) {
    turn = 0.9 * turn + 0.22 * gaussian(random);
    const back = (size / 2 - last.y) / size;
    points.push({ x: last.x + 2 * Math.cos(turn), y: last.y + 2 * Math.sin(turn) + 0.6 * back });
  }
  return points;
}

export interface DrawnCrack {
  readonly grey: GreyImage;
  readonly truth: readonly XY[];
}

export function drawCrack(kind: Surface, seed: number, widthPx: number, depth: number): DrawnCrack {
  const random = seeded(seed);
  const surface = surfaceOf(kind, random);
  const truth = wanderingLine(random);
  const ink = new Float32Array(size * size);
  // Only the chain's part near a column can be near a pixel of it.
  const columns = Array.from({ length: size }, (_, x) => truth.filter((point) => Math.abs(point.x - x) < 16));
  for (let at = 0; at < ink.length; at += 1) {
    const x = at % size;
    const y = Math.floor(at / size);
    const near = columns[x] ?? [];
    if (near.length < 2 || !near.some((point) => Math.abs(point.y - y) < 12)) continue;
    const away = distanceToChain({ x, y }, near, false);
    ink[at] = Math.min(1, Math.max(0, widthPx / 2 + 0.5 - away));
  }
  const soft = blur(ink, size, size, 0.6);
  const data = surface.map((value, at) => Math.min(255, Math.max(0, value - depth * (soft[at] ?? 0))));
  return { grey: { width: size, height: size, left: 0, top: 0, data }, truth };
}

/** The same surface with nothing in it. */
export function drawBare(kind: Surface, seed: number): GreyImage {
  return { width: size, height: size, left: 0, top: 0, data: surfaceOf(kind, seeded(seed)) };
}
