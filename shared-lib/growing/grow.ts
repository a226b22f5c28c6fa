import { polygonArea } from '../geometry/plane.ts';
import type { Box, Size, XY } from '../geometry/spaces.ts';
import { type GreyImage, sampleAt } from '../tracing/grey.ts';
import { evenlySpaced, normalAt } from '../tracing/smooth-line.ts';
import { type Features, featuresOf, type Grain } from './features.ts';
import { floodFrom } from './flood.ts';
import { outlineOf, smoothRing } from './outline.ts';
import type { ColourPlanes, Look } from './planes.ts';
import { filledPart, type Settled, settle } from './settle.ts';

/** Goes into the origin of every grown mark. */
export const growerVersion = '1';

export interface GrowRequest {
  /** A spot inside the patch, or a line drawn over it: ImagePoints. */
  readonly points: readonly XY[];
}

/** Why a person has to look at a grown outline. */
export type GrowDoubt = 'border-faint' | 'reaches-edge' | 'no-patch' | 'other-extent';

export interface Grown {
  /** A closed chain, about a pixel apart, in pixels of the upright original. */
  readonly outline: readonly XY[];
  readonly areaPx2: number;
  /** How surely the border lies where it is drawn, px of the photo (standard uncertainty). */
  readonly borderPx: number;
  /** Stretches of the outline by index where the border has no contrast; one that runs over the end has from > to. */
  readonly faint: readonly (readonly [number, number])[];
  readonly faintShare: number;
  readonly unsure: boolean;
  readonly doubts: readonly GrowDoubt[];
}

/** Half edges of the surroundings that a patch is sought in, px of the photo, and pixels each is looked at with. */
const reaches = [120, 300, 800, 2000, 5000] as const;
/** A shorter line is a spot, px of the photo. */
const leastRun = 16;
const seekPixels = 40_000;
const settlePixels = 200_000;
/** A seed is this wide, in pixels looked at. */
const seedRadius = 2;
/** Contrast, in scatters, under which a border is faint. */
const faintBelow = 1.6;
/** A border is sharp where this much of the whole step lies within that many pixels of it each way; else it fades. */
const leastStep = 0.4;
const acrossPx: Readonly<Record<Grain, number>> = { fine: 5, coarse: 14 };
/** Shorter lapses are noise, px looked at. */
const shortestFaint = 8;

/** Bays and tongues narrower than about this are no part of a border, px looked at: between pits there is sound metal. */
const evenPx: Readonly<Record<Grain, number>> = { fine: 1, coarse: 9 };

/** Standard uncertainty of a border, px looked at: found on drawn patches. Between pits it is a matter of opinion. */
const borderUncertainty: Readonly<Record<Grain, number>> = { fine: 1, coarse: 5 };

/** Another patch round the same spot is a rival where its border is as clear as this share of the taken one's ... */
const asClear = 0.8;
/** ... and it is so many times larger, or smaller. */
const otherSize = 1.5;

interface Seen {
  readonly planes: ColourPlanes;
  readonly grain: Grain;
  readonly settled: Settled;
  readonly outline: XY[];
  readonly contrasts: readonly number[];
  /** Per point of the outline: how far inside and outside part within a few pixels, where on the whole they part by 1. */
  readonly steps: readonly number[];
}

/**
 * Finds the outline of a scuffed, scaled or pitted patch from a spot inside it. Surroundings of several sizes are looked
 * at, and the patch with the clearest border is taken.
 *
 * @returns null where nothing can be grown: too few pixels
 */
export function growArea(look: Look, photo: Size, request: GrowRequest): Grown | null {
  const { points } = request;
  const found: { seen: Seen; score: number }[] = [];
  let before = '';
  for (const reach of reachesFor(points)) {
    const box = boxRound(points, reach, photo);
    const key = Object.values(box).join();
    if (key === before) break;
    before = key;
    const planes = look(box, factorFor(box, seekPixels));
    for (const grain of ['fine', 'coarse'] as const) {
      const seen = seek(planes, grain, points);
      if (!seen) continue;
      found.push({ seen, score: clearness(seen, box, photo) });
    }
  }
  const [best, ...others] = found.sort((a, b) => b.score - a.score);
  if (!best) return null;
  const grown = sharpen(look, best.seen, points, photo) ?? best.seen;
  const area = areaOf(best.seen);
  const isOther = others.some(
    ({ seen, score }) => score > asClear * best.score && Math.abs(Math.log(areaOf(seen) / area)) > Math.log(otherSize),
  );
  return grownFrom(grown, photo, isOther);
}

const areaOf = ({ planes, outline }: Seen): number => polygonArea(outline) * planes.factor ** 2;

/** A line run over a patch says about how large it is: its surroundings are sought no wider than that. */
function reachesFor(points: readonly XY[]): readonly number[] {
  const across = Math.hypot(...spreadOf(points));
  if (across < leastRun) return reaches;
  return [0.3, 0.7, 1.4].map((share) => Math.max(40, share * across));
}

function boxRound(points: readonly XY[], reach: number, photo: Size): Box {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return {
    left: Math.max(0, Math.round(Math.min(...xs) - reach)),
    top: Math.max(0, Math.round(Math.min(...ys) - reach)),
    right: Math.min(photo.width - 1, Math.round(Math.max(...xs) + reach)),
    bottom: Math.min(photo.height - 1, Math.round(Math.max(...ys) + reach)),
  };
}

const factorFor = ({ left, top, right, bottom }: Box, pixels: number): number =>
  Math.max(1, Math.ceil(Math.sqrt(((right - left + 1) * (bottom - top + 1)) / pixels)));

const local = ({ left, top, factor }: ColourPlanes, { x, y }: XY): XY => ({
  x: (x - left + 0.5) / factor - 0.5,
  y: (y - top + 0.5) / factor - 0.5,
});

function seedsIn(planes: ColourPlanes, points: readonly XY[]): number[] {
  const { width, height } = planes;
  const spots = evenlySpaced(
    points.map((point) => local(planes, point)),
    seedRadius,
  );
  const seeds = new Set<number>();
  for (const spot of spots) {
    for (let dy = -seedRadius; dy <= seedRadius; dy += 1) {
      for (let dx = -seedRadius; dx <= seedRadius; dx += 1) {
        const x = Math.round(spot.x) + dx;
        const y = Math.round(spot.y) + dy;
        if (dx * dx + dy * dy > seedRadius * seedRadius + 1) continue;
        if (x >= 0 && y >= 0 && x < width && y < height) seeds.add(y * width + x);
      }
    }
  }
  return [...seeds];
}

function seek(planes: ColourPlanes, grain: Grain, points: readonly XY[]): Seen | null {
  const { width, height } = planes;
  if (width < 24 || height < 24) return null;
  const features = featuresOf(planes, grain);
  const seeds = seedsIn(planes, points);
  const [seed] = seeds;
  if (seed === undefined) return null;
  const flood = floodFrom(features, seeds, Math.max(60, 1.5 * seeds.length), 0.7 * width * height);
  if (!flood) return null;
  const mask = Uint8Array.from(flood.reachedAt, (level) => (level <= flood.level ? 1 : 0));
  return settledFrom(planes, grain, features, filledPart(mask, width, height, seed), seed, 3);
}

function settledFrom(
  planes: ColourPlanes,
  grain: Grain,
  features: Features,
  mask: Uint8Array,
  seed: number,
  turns: number,
): Seen | null {
  const { width, height } = planes;
  const settled = settle(features, mask, seed, turns, evenPx[grain]);
  const ring = settled && outlineOf(settled, width, height);
  if (!settled || !ring || ring.length < 12) return null;
  const outline = smoothRing(ring, 2);
  const contrasts = outline.map(({ x, y }) => {
    const column = Math.min(width - 1, Math.max(0, Math.round(x)));
    const row = Math.min(height - 1, Math.max(0, Math.round(y)));
    return settled.contrast[row * width + column] as number;
  });
  const steps = stepsAcross({ width, height, left: 0, top: 0, data: settled.field }, outline, acrossPx[grain]);
  return { planes, grain, settled, outline, contrasts, steps };
}

/** The step across the border at every point of the outline, in the mean of its neighbours. */
function stepsAcross(field: GreyImage, outline: readonly XY[], reach: number): number[] {
  const turnsLeft = isTurningLeft(outline) ? 1 : -1;
  const steps = outline.map((point, index) => {
    const normal = normalAt(outline, index, 4);
    const [dx, dy] = [turnsLeft * reach * normal.x, turnsLeft * reach * normal.y];
    return sampleAt(field, point.x + dx, point.y + dy) - sampleAt(field, point.x - dx, point.y - dy);
  });
  const count = steps.length;
  return steps.map((_, index) => {
    let sum = 0;
    for (let k = -shortestFaint; k <= shortestFaint; k += 1) sum += steps[(index + k + count) % count] as number;
    return sum / (2 * shortestFaint + 1);
  });
}

/** Whether the inside lies along the normals that `normalAt` gives. */
function isTurningLeft(ring: readonly XY[]): boolean {
  let twice = 0;
  for (const [index, a] of ring.entries()) {
    const b = ring[(index + 1) % ring.length] ?? a;
    twice += a.x * b.y - b.x * a.y;
  }
  return twice > 0;
}

/** How clear the border is on the whole; a border that is the surroundings' own edge is none. */
function clearness({ planes, outline, contrasts }: Seen, box: Box, photo: Size): number {
  const { width, height } = planes;
  const cut = outline.filter(
    ({ x, y }) =>
      (x < 2 && box.left > 0) ||
      (y < 2 && box.top > 0) ||
      (x > width - 3 && box.right < photo.width - 1) ||
      (y > height - 3 && box.bottom < photo.height - 1),
  ).length;
  const sum = contrasts.reduce((total, contrast) => total + Math.min(6, contrast), 0);
  return (sum / contrasts.length) * (1 - Math.min(1, (4 * cut) / outline.length));
}

/** The same patch at as many pixels as are worth it. */
function sharpen(
  look: Look,
  { planes, grain, settled, outline }: Seen,
  points: readonly XY[],
  photo: Size,
): Seen | null {
  const ring = outline.map((point) => toPhoto(planes, point));
  const size = Math.max(...spreadOf(ring));
  const box = boxRound(ring, Math.max(24, 0.25 * size), photo);
  const factor = factorFor(box, settlePixels);
  const fine = look(box, factor);
  const features = featuresOf(fine, grain);
  const mask = new Uint8Array(fine.width * fine.height);
  for (let y = 0; y < fine.height; y += 1) {
    for (let x = 0; x < fine.width; x += 1) {
      const at = local(planes, toPhoto(fine, { x, y }));
      const column = Math.min(planes.width - 1, Math.max(0, Math.round(at.x)));
      const row = Math.min(planes.height - 1, Math.max(0, Math.round(at.y)));
      mask[y * fine.width + x] = settled.inside[row * planes.width + column] as number;
    }
  }
  const [seed] = seedsIn(fine, points);
  if (seed === undefined) return null;
  return settledFrom(fine, grain, features, filledPart(mask, fine.width, fine.height, seed), seed, 5);
}

const toPhoto = ({ left, top, factor }: ColourPlanes, { x, y }: XY): XY => ({
  x: (x + 0.5) * factor - 0.5 + left,
  y: (y + 0.5) * factor - 0.5 + top,
});

function spreadOf(ring: readonly XY[]): [number, number] {
  const xs = ring.map(({ x }) => x);
  const ys = ring.map(({ y }) => y);
  return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
}

function grownFrom({ planes, grain, outline, contrasts, steps }: Seen, photo: Size, isOther: boolean): Grown {
  const isFaint = steadied(contrasts.map((contrast, at) => contrast < faintBelow || (steps[at] ?? 0) < leastStep));
  const ring = outline.map((point) => toPhoto(planes, point));
  const onEdge = ring.filter(
    ({ x, y }) => x < 1.5 || y < 1.5 || x > photo.width - 2.5 || y > photo.height - 2.5,
  ).length;
  const faintShare = isFaint.filter(Boolean).length / Math.max(1, isFaint.length);
  const doubts: GrowDoubt[] = [];
  if (faintShare > 0.5) doubts.push('no-patch');
  else if (faintShare > 0.03) doubts.push('border-faint');
  if (onEdge / ring.length > 0.02) doubts.push('reaches-edge');
  if (isOther) doubts.push('other-extent');
  return {
    outline: ring,
    areaPx2: polygonArea(ring),
    borderPx: borderUncertainty[grain] * planes.factor,
    faint: runs(isFaint),
    faintShare,
    unsure: doubts.length > 0,
    doubts,
  };
}

/** Lapses shorter than noise are filled, and so are gaps between them. */
function steadied(flags: readonly boolean[]): boolean[] {
  const count = flags.length;
  return flags.map((_, index) => {
    let said = 0;
    for (let k = -shortestFaint; k <= shortestFaint; k += 1) if (flags[(index + k + count) % count]) said += 1;
    return said > shortestFaint;
  });
}

function runs(flags: readonly boolean[]): [number, number][] {
  const found: [number, number][] = [];
  let from = -1;
  for (const [index, flag] of flags.entries()) {
    if (flag && from < 0) from = index;
    if (!flag && from >= 0) {
      found.push([from, index - 1]);
      from = -1;
    }
  }
  if (from >= 0) found.push([from, flags.length - 1]);
  const first = found[0];
  const last = found.at(-1);
  if (found.length > 1 && first?.[0] === 0 && last?.[1] === flags.length - 1) {
    return [[last[0], first[1]], ...found.slice(1, -1)];
  }
  return found;
}
