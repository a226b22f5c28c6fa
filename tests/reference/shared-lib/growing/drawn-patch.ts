import { isInsidePolygon } from '../../../../shared-lib/geometry/plane.ts';
import type { Box, Size, XY } from '../../../../shared-lib/geometry/spaces.ts';
import type { ColourPlanes, Look } from '../../../../shared-lib/growing/planes.ts';
import { blur } from '../../../../shared-lib/tracing/blur.ts';
import { gaussian, seeded } from '../tracing/drawn-surface.ts';

/**
 * Drawn patches on drawn metal: no open photographs of scuffed, scaled or pitted parts with a true outline were found, so
 * these are made up and say so. What is exact about them is the outline: a wavy ring, drawn by four samples a pixel each
 * way along its edge.
 */
export const patchKinds = ['scuffed', 'scaled', 'pitted', 'rusty'] as const;
export type PatchKind = (typeof patchKinds)[number];

/** How pits lie in a pitted patch. */
export interface Pits {
  /** Of the patch, by area. */
  readonly share: number;
  readonly acrossPx: number;
  /** Ragged: a rough surface under a level, so they run into each other. Round: strewn at random, each by itself. */
  readonly form: 'ragged' | 'round';
  /** How much darker the metal between them is than that outside, grey levels. */
  readonly dulled: number;
}

const usualPits: Pits = { share: 0.24, acrossPx: 4.4, form: 'ragged', dulled: 8 };

export interface DrawnPatch {
  readonly size: Size;
  /** Red, green, blue, 0 to 255, row by row. */
  readonly rgb: readonly [Float32Array, Float32Array, Float32Array];
  readonly truth: readonly XY[];
  readonly middle: XY;
}

const size: Size = { width: 420, height: 360 };
const count = size.width * size.height;

function noise(random: () => number, sigma: number, spread: number): Float32Array {
  const plain = Float32Array.from({ length: count }, () => gaussian(random));
  const smooth = sigma === 0 ? plain : blur(plain, size.width, size.height, sigma);
  let squares = 0;
  for (const value of smooth) squares += value * value;
  const scale = spread / Math.sqrt(squares / count);
  return smooth.map((value) => value * scale);
}

export function wavyRing(random: () => number, middle: XY, radius: number): XY[] {
  const waves = [2, 3, 4, 5].map((turns) => ({ turns, by: (0.22 / turns) * gaussian(random), from: 6.28 * random() }));
  return Array.from({ length: 240 }, (_, i) => {
    const angle = (2 * Math.PI * i) / 240;
    const reach = waves.reduce((sum, { turns, by, from }) => sum + by * Math.cos(turns * angle + from), 1);
    return { x: middle.x + radius * reach * Math.cos(angle), y: middle.y + 0.8 * radius * reach * Math.sin(angle) };
  });
}

/** Share of every pixel that lies in the ring. */
export function inked(ring: readonly XY[]): Float32Array {
  const ink = new Float32Array(count);
  const edge = new Uint8Array(count);
  for (const [i, a] of ring.entries()) {
    const b = ring[(i + 1) % ring.length] ?? a;
    for (let t = 0; t <= 1; t += 0.1) {
      const x = Math.round(a.x + t * (b.x - a.x));
      const y = Math.round(a.y + t * (b.y - a.y));
      for (let dy = -1; dy <= 1; dy += 1) for (let dx = -1; dx <= 1; dx += 1) edge[(y + dy) * size.width + x + dx] = 1;
    }
  }
  for (let y = 0; y < size.height; y += 1) {
    let isIn = false;
    let isKnown = false;
    for (let x = 0; x < size.width; x += 1) {
      const at = y * size.width + x;
      if (edge[at]) {
        let hits = 0;
        for (let sy = 0; sy < 4; sy += 1) {
          for (let sx = 0; sx < 4; sx += 1) {
            if (isInsidePolygon({ x: x + (sx - 1.5) / 4, y: y + (sy - 1.5) / 4 }, ring)) hits += 1;
          }
        }
        ink[at] = hits / 16;
        isKnown = false;
        continue;
      }
      if (!isKnown) isIn = isInsidePolygon({ x, y }, ring);
      isKnown = true;
      ink[at] = isIn ? 1 : 0;
    }
  }
  return ink;
}

/** How much of every pixel is pit, all over the picture. */
function pitted(random: () => number, { share, acrossPx, form }: Pits): Float32Array {
  if (form === 'ragged') {
    const rough = noise(random, acrossPx / 2, 1);
    const level = rough.toSorted()[Math.floor((1 - share) * count)] ?? 0;
    return rough.map((value) => (value > level ? 1 : 0));
  }
  const pit = new Float32Array(count);
  // Circles that may overlap leave exp(-number x area) of the surface free.
  const pits = Math.round((-Math.log(1 - share) * count) / (Math.PI * (acrossPx / 2) ** 2 * 1.04));
  for (let made = 0; made < pits; made += 1) {
    const [cx, cy] = [random() * size.width, random() * size.height];
    const radius = (acrossPx / 2) * (1 + 0.2 * gaussian(random));
    for (let y = Math.ceil(cy - radius - 1); y <= cy + radius + 1; y += 1) {
      for (let x = Math.ceil(cx - radius - 1); x <= cx + radius + 1; x += 1) {
        if (x < 0 || y < 0 || x >= size.width || y >= size.height) continue;
        const inPit = Math.min(1, Math.max(0, radius + 0.5 - Math.hypot(x - cx, y - cy)));
        pit[y * size.width + x] = Math.max(pit[y * size.width + x] ?? 0, inPit);
      }
    }
  }
  return pit;
}

/** `strength` 1 is plain to see; 0 leaves the bare surface. */
export function drawPatch(kind: PatchKind, seed: number, radius: number, strength = 1, pits = usualPits): DrawnPatch {
  const random = seeded(seed);
  const middle = { x: size.width / 2 + 20 * gaussian(random), y: size.height / 2 + 15 * gaussian(random) };
  const truth = wavyRing(random, middle, radius);
  const ink = inked(truth);
  const grain = noise(random, 0.6, 4);
  const blotches = noise(random, 12, 3);
  const streaks = Float32Array.from({ length: size.height }, () => 3 * gaussian(random));
  const rough = noise(random, 0.8, 1);
  const blobs = noise(random, 2.2, 1);
  const camera = [noise(random, 0.5, 2), noise(random, 0.5, 2), noise(random, 0.5, 2)];
  const inPit = kind === 'pitted' ? pitted(random, pits) : null;
  const base = Float32Array.from({ length: count }, (_, at) => {
    const x = at % size.width;
    const y = Math.floor(at / size.width);
    // A lamp from one side: the light falls off across the part.
    const lamp = 1 + 0.18 * Math.cos(x / 260) - 0.1 * (y / size.height);
    return lamp * (125 + (grain[at] ?? 0) + (blotches[at] ?? 0) + (streaks[y] ?? 0));
  });
  const paint: Record<PatchKind, (at: number) => readonly [number, number, number]> = {
    scuffed: (at) => {
      const y = Math.floor(at / size.width);
      const line = 26 + 9 * (streaks[(y * 7) % size.height] ?? 0) * 0.3 + 10 * (rough[at] ?? 0);
      return [line, line, line];
    },
    scaled: (at) => [38 + 8 * (blobs[at] ?? 0), 34 + 8 * (blobs[at] ?? 0), 18 + 8 * (blobs[at] ?? 0)],
    pitted: (at) => {
      const own = inPit?.[at] ?? 0;
      const pit = -55 * own - pits.dulled * (1 - own);
      return [pit, pit, pit];
    },
    rusty: (at) => {
      const shade = 12 * (blobs[at] ?? 0) + 8 * (rough[at] ?? 0);
      return [12 + shade, -22 + shade, -45 + shade];
    },
  };
  const channel = (k: 0 | 1 | 2) =>
    Float32Array.from(base, (value, at) => {
      const share = strength * (ink[at] ?? 0);
      return Math.min(255, Math.max(0, value + share * paint[kind](at)[k] + (camera[k]?.[at] ?? 0)));
    });
  return { size, rgb: [channel(0), channel(1), channel(2)], truth, middle };
}

/** A patch that fades out towards the right, until the bare surface is left. */
export function drawFading(kind: PatchKind, seed: number, radius: number): DrawnPatch {
  const [patch, bare] = [drawPatch(kind, seed, radius, 1), drawPatch(kind, seed, radius, 0)];
  const fading = (k: 0 | 1 | 2) =>
    patch.rgb[k].map((value, at) => {
      const kept = Math.min(1, Math.max(0, (patch.middle.x + 50 - (at % patch.size.width)) / 90));
      return kept * value + (1 - kept) * (bare.rgb[k][at] ?? 0);
    });
  return { ...patch, rgb: [fading(0), fading(1), fading(2)] };
}

/** As the recorder looks at a photo: opponent colours, blocks averaged. */
export const lookAt =
  ({ size: photo, rgb: [red, green, blue] }: DrawnPatch): Look =>
  (box: Box, factor: number): ColourPlanes => {
    const left = Math.max(0, box.left);
    const top = Math.max(0, box.top);
    const width = Math.floor((Math.min(photo.width - 1, box.right) - left + 1) / factor);
    const height = Math.floor((Math.min(photo.height - 1, box.bottom) - top + 1) / factor);
    const mean = (of: (at: number) => number): Float32Array =>
      Float32Array.from({ length: width * height }, (_, at) => {
        let sum = 0;
        for (let dy = 0; dy < factor; dy += 1) {
          for (let dx = 0; dx < factor; dx += 1) {
            const x = left + (at % width) * factor + dx;
            const y = top + Math.floor(at / width) * factor + dy;
            sum += of(y * photo.width + x);
          }
        }
        return sum / factor ** 2;
      });
    const [r, g, b] = [(at: number) => red[at] ?? 0, (at: number) => green[at] ?? 0, (at: number) => blue[at] ?? 0];
    return {
      width,
      height,
      left,
      top,
      factor,
      light: mean((at) => 0.299 * r(at) + 0.587 * g(at) + 0.114 * b(at)),
      red: mean((at) => r(at) - g(at)),
      yellow: mean((at) => (r(at) + g(at)) / 2 - b(at)),
    };
  };
