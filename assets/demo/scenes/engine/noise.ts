/** Seeded noise. The same coordinates and seed give the same value on every machine: integer hashing, no Math.random. */

/** A hash of three whole numbers, 0 to 1. */
export function hash3(ix: number, iy: number, iz: number, seed: number): number {
  let h = Math.imul(ix, 0x27d4eb2d) ^ Math.imul(iy, 0x165667b1) ^ Math.imul(iz, 0x1b873593) ^ Math.imul(seed, 0x9e3779b1);
  h = Math.imul(h ^ (h >>> 15), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return ((h ^ (h >>> 16)) >>> 0) / 4294967296;
}

/** Value noise on a unit grid, 0 to 1. */
export function noise3(x: number, y: number, z: number, seed: number): number {
  const ix = Math.floor(x);
  const iy = Math.floor(y);
  const iz = Math.floor(z);
  const fx = x - ix;
  const fy = y - iy;
  const fz = z - iz;
  const u = fx * fx * (3 - 2 * fx);
  const v = fy * fy * (3 - 2 * fy);
  const w = fz * fz * (3 - 2 * fz);
  const a = hash3(ix, iy, iz, seed);
  const b = hash3(ix + 1, iy, iz, seed);
  const c = hash3(ix, iy + 1, iz, seed);
  const d = hash3(ix + 1, iy + 1, iz, seed);
  const e = hash3(ix, iy, iz + 1, seed);
  const f = hash3(ix + 1, iy, iz + 1, seed);
  const g = hash3(ix, iy + 1, iz + 1, seed);
  const h = hash3(ix + 1, iy + 1, iz + 1, seed);
  const low = a + (b - a) * u + (c - a + (a - b - c + d) * u) * v;
  const high = e + (f - e) * u + (g - e + (e - f - g + h) * u) * v;
  return low + (high - low) * w;
}

/** Two-dimensional value noise, 0 to 1. */
export function noise2(x: number, y: number, seed: number): number {
  const ix = Math.floor(x);
  const iy = Math.floor(y);
  const fx = x - ix;
  const fy = y - iy;
  const u = fx * fx * (3 - 2 * fx);
  const v = fy * fy * (3 - 2 * fy);
  const a = hash3(ix, iy, 7, seed);
  const b = hash3(ix + 1, iy, 7, seed);
  const c = hash3(ix, iy + 1, 7, seed);
  const d = hash3(ix + 1, iy + 1, 7, seed);
  return a + (b - a) * u + (c - a + (a - b - c + d) * u) * v;
}

export function fbm3(x: number, y: number, z: number, octaves: number, seed: number): number {
  let sum = 0;
  let weight = 0.5;
  let total = 0;
  let s = 1;
  for (let i = 0; i < octaves; i++) {
    sum += weight * noise3(x * s + i * 17.3, y * s - i * 9.1, z * s + i * 4.7, seed + i);
    total += weight;
    weight *= 0.5;
    s *= 2.03;
  }
  return sum / total;
}

export function fbm2(x: number, y: number, octaves: number, seed: number): number {
  let sum = 0;
  let weight = 0.5;
  let total = 0;
  let s = 1;
  for (let i = 0; i < octaves; i++) {
    sum += weight * noise2(x * s + i * 17.3, y * s - i * 9.1, seed + i);
    total += weight;
    weight *= 0.5;
    s *= 2.03;
  }
  return sum / total;
}

/** Scattered points, one per unit cell: distance to the nearest, to the second nearest, and the nearest one's own random number. */
export interface Cells {
  first: number;
  second: number;
  id: number;
}

export function cells2(x: number, y: number, seed: number, out: Cells): Cells {
  const ix = Math.floor(x);
  const iy = Math.floor(y);
  let first = 9;
  let second = 9;
  let id = 0;
  for (let j = -1; j <= 1; j++) {
    for (let i = -1; i <= 1; i++) {
      const cx = ix + i;
      const cy = iy + j;
      const dx = cx + hash3(cx, cy, 1, seed) - x;
      const dy = cy + hash3(cx, cy, 2, seed) - y;
      const d = dx * dx + dy * dy;
      if (d < first) {
        second = first;
        first = d;
        id = hash3(cx, cy, 3, seed);
      } else if (d < second) {
        second = d;
      }
    }
  }
  out.first = Math.sqrt(first);
  out.second = Math.sqrt(second);
  out.id = id;
  return out;
}

export const clamp01 = (v: number): number => (v < 0 ? 0 : v > 1 ? 1 : v);
export function smooth(low: number, high: number, v: number): number {
  const t = clamp01((v - low) / (high - low));
  return t * t * (3 - 2 * t);
}
export const mix = (a: number, b: number, t: number): number => a + (b - a) * t;

/** A small seeded generator for building scenes (mulberry32, public domain). */
export function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}
