import { blur } from '../tracing/blur.ts';
import { type GreyImage, sampleGrey } from '../tracing/grey.ts';

/** A corner that can be found again, in pixels of the picture it was looked for in. */
export interface Feature {
  readonly x: number;
  readonly y: number;
  readonly strength: number;
  /** 256 bits. */
  readonly code: Uint32Array;
}

const levels = 6;
const levelStep = 1.25;
const perLevel = 350;
const patchPx = 15;
const bits = 256;

/** Pairs of places in a patch whose brightness is compared: a fixed draw, so that every photo is asked the same. */
const pattern = ((): readonly (readonly [number, number, number, number])[] => {
  let state = 20240229;
  const next = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
  // Near the middle more often than at the rim.
  const place = (): number => Math.max(-patchPx, Math.min(patchPx, (next() + next() + next() - 1.5) * patchPx));
  return Array.from({ length: bits }, () => [place(), place(), place(), place()] as const);
})();

/**
 * Corners over a pyramid of sizes, each with the direction of its patch's centroid and a code of brightness comparisons
 * turned by it.
 * Source: Harris and Stephens (1988) for the corners; Rublee et al., ORB (ICCV 2011), for centroid and turned code.
 */
export function findFeatures(image: GreyImage): Feature[] {
  const features: Feature[] = [];
  for (let level = 0; level < levels; level += 1) {
    const scale = levelStep ** level;
    const width = Math.floor(image.width / scale);
    const height = Math.floor(image.height / scale);
    if (width < 6 * patchPx || height < 6 * patchPx) break;
    const data = level === 0 ? blur(image.data, width, height, 1) : resized(image, width, height, scale);
    const picture: GreyImage = { width, height, left: 0, top: 0, data };
    for (const { x, y, strength } of corners(picture)) {
      features.push({ x: (x + 0.5) * scale - 0.5, y: (y + 0.5) * scale - 0.5, strength, code: codeOf(picture, x, y) });
    }
  }
  return features;
}

function resized(image: GreyImage, width: number, height: number, scale: number): Float32Array {
  const soft = { ...image, data: blur(image.data, image.width, image.height, 0.5 * scale + 0.5) };
  const data = new Float32Array(width * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      data[y * width + x] = sampleGrey(soft, { x: (x + 0.5) * scale - 0.5, y: (y + 0.5) * scale - 0.5 });
    }
  }
  return data;
}

function corners({ data, width, height }: GreyImage): { x: number; y: number; strength: number }[] {
  const size = width * height;
  const [xx, xy, yy] = [new Float32Array(size), new Float32Array(size), new Float32Array(size)];
  for (let y = 1; y < height - 1; y += 1) {
    for (let x = 1; x < width - 1; x += 1) {
      const at = y * width + x;
      const dx = (data[at + 1] as number) - (data[at - 1] as number);
      const dy = (data[at + width] as number) - (data[at - width] as number);
      xx[at] = dx * dx;
      xy[at] = dx * dy;
      yy[at] = dy * dy;
    }
  }
  const [a, b, c] = [xx, xy, yy].map((map) => blur(map, width, height, 1.5));
  const response = new Float32Array(size);
  if (!a || !b || !c) return [];
  for (let at = 0; at < size; at += 1) {
    const [p, q, r] = [a[at] as number, b[at] as number, c[at] as number];
    response[at] = p * r - q * q - 0.05 * (p + r) ** 2;
  }
  const found: { x: number; y: number; strength: number }[] = [];
  const edge = patchPx + 4;
  for (let y = edge; y < height - edge; y += 1) {
    for (let x = edge; x < width - edge; x += 1) {
      const at = y * width + x;
      const own = response[at] as number;
      if (own > 1 && isPeak(response, at, width, own)) found.push({ x, y, strength: own });
    }
  }
  return spreadOut(found, width, height);
}

function isPeak(response: Float32Array, at: number, width: number, own: number): boolean {
  for (let dy = -2; dy <= 2; dy += 1) {
    for (let dx = -2; dx <= 2; dx += 1) {
      if ((dx !== 0 || dy !== 0) && (response[at + dy * width + dx] as number) >= own) return false;
    }
  }
  return true;
}

/** The strongest of every field of a grid, so that one busy corner does not take all. */
function spreadOut<T extends { x: number; y: number; strength: number }>(
  found: readonly T[],
  width: number,
  height: number,
): T[] {
  const fields = 8;
  const most = Math.ceil((2 * perLevel) / (fields * fields));
  const grid = new Map<number, T[]>();
  for (const one of found) {
    const key = Math.floor((one.x * fields) / width) + fields * Math.floor((one.y * fields) / height);
    const field = grid.get(key);
    if (field) field.push(one);
    else grid.set(key, [one]);
  }
  return [...grid.values()]
    .flatMap((field) => field.sort((p, q) => q.strength - p.strength).slice(0, most))
    .sort((p, q) => q.strength - p.strength)
    .slice(0, perLevel);
}

function codeOf({ data, width }: GreyImage, x: number, y: number): Uint32Array {
  let mx = 0;
  let my = 0;
  for (let dy = -patchPx; dy <= patchPx; dy += 1) {
    const reach = Math.floor(Math.sqrt(patchPx * patchPx - dy * dy));
    for (let dx = -reach; dx <= reach; dx += 1) {
      const value = data[(y + dy) * width + x + dx] as number;
      mx += dx * value;
      my += dy * value;
    }
  }
  const size = Math.hypot(mx, my) || 1;
  const [c, s] = [mx / size, my / size];
  const code = new Uint32Array(bits / 32);
  const at = (px: number, py: number): number =>
    data[(y + clip(Math.round(s * px + c * py))) * width + x + clip(Math.round(c * px - s * py))] as number;
  for (const [k, [ax, ay, bx, by]] of pattern.entries()) {
    if (at(ax, ay) < at(bx, by)) code[k >> 5] = (code[k >> 5] as number) | (1 << (k & 31));
  }
  return code;
}

/** A corner of the patch turned by an eighth reaches past it. */
function clip(value: number): number {
  return Math.max(-patchPx - 3, Math.min(patchPx + 3, value));
}
