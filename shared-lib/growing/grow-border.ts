import { polygonArea } from '../geometry/plane.ts';
import type { Box, Size, XY } from '../geometry/spaces.ts';
import { type GreyImage, sampleAt } from '../tracing/grey.ts';
import { normalAt } from '../tracing/smooth-line.ts';
import { coloursOf, type Features, featuresOf, type Grain } from './features.ts';
import { floodFrom } from './flood.ts';
import { type Grown, grownFrom } from './grown.ts';
import { outlineOf, smoothRing } from './outline.ts';
import type { ColourPlanes, Look } from './planes.ts';
import { median } from './quantile.ts';
import { filledPart, type Settled, settle } from './settle.ts';
import { shortestLapse } from './stretches.ts';
import { boxesRound, boxRound, factorFor, local, seedsIn, spreadOf, toPhoto } from './surroundings.ts';

/** Pixels that surroundings are looked at with, and then the patch itself. */
const seekPixels = 40_000;
const settlePixels = 200_000;
/** Contrast, in scatters, under which a border is faint. */
const faintBelow = 1.6;
/** A border is sharp where this much of the whole step lies within that many pixels of it each way; else it fades. */
const leastStep = 0.4;
const acrossPx: Readonly<Record<Grain, number>> = { fine: 5, coarse: 14 };

/** Bays and tongues narrower than about this are no part of a border, px looked at: between pits there is sound metal. */
const evenPx: Readonly<Record<Grain, number>> = { fine: 1, coarse: 9 };

/** Standard uncertainty of a border, px looked at: found on drawn patches. Between pits it is a matter of opinion. */
const borderUncertainty: Readonly<Record<Sureness, number>> = { fine: 1, rough: 4, coarse: 5 };
/** Contrast, in scatters, from which colour alone is taken to tell a patch from what is round it. */
const coloursTellFrom = 2;

/** Another patch round the same spot is a rival where its border is as clear as this share of the taken one's ... */
const asClear = 0.8;
/** ... and it is so many times larger, or smaller. */
const otherSize = 1.5;

/** What a border is told by: sharp colours, roughness seen over its surroundings, or all of it seen over wide ones. */
type Sureness = Grain | 'rough';

interface Seen {
  readonly planes: ColourPlanes;
  readonly grain: Grain;
  readonly settled: Settled;
  readonly outline: XY[];
  readonly contrasts: readonly number[];
  /** Per point of the outline: how far inside and outside part within a few pixels, where on the whole they part by 1. */
  readonly steps: readonly number[];
  readonly sureness: Sureness;
}

/**
 * Finds the outline of a patch that looks unlike its surroundings, from a spot inside it. Surroundings of several sizes are
 * looked at, and the patch with the clearest border is taken.
 *
 * @returns null where nothing can be grown: too few pixels
 */
export function growBorder(look: Look, photo: Size, points: readonly XY[]): Grown | null {
  const found: { seen: Seen; score: number }[] = [];
  for (const box of boxesRound(points, photo)) {
    const planes = look(box, factorFor(box, seekPixels));
    for (const grain of ['fine', 'coarse'] as const) {
      const seen = seek(planes, grain, points);
      if (!seen) continue;
      found.push({ seen, score: clearness(seen, box, photo) });
    }
  }
  const [best, ...others] = found.sort((a, b) => b.score - a.score);
  if (!best) return null;
  const sharp = sharpen(look, best.seen, points, photo);
  const grown = sharp ?? best.seen;
  const area = areaOf(best.seen);
  const isOtherSize = (seen: Seen): boolean => Math.abs(Math.log(areaOf(seen) / area)) > Math.log(otherSize);
  // A patch that is not found again where it is looked at more closely is no surer than one with a rival.
  const isOther =
    sharp === null ||
    isOtherSize(sharp) ||
    others.some(({ seen, score }) => score > asClear * best.score && isOtherSize(seen));
  const { planes, outline, contrasts, steps, sureness } = grown;
  return grownFrom(
    outline.map((point) => toPhoto(planes, point)),
    contrasts.map((contrast, at) => contrast < faintBelow || (steps[at] ?? 0) < leastStep),
    photo,
    borderUncertainty[sureness] * planes.factor,
    isOther,
  );
}

const areaOf = ({ planes, outline }: Seen): number => polygonArea(outline) * planes.factor ** 2;

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
  return { planes, grain, settled, outline, contrasts, steps, sureness: grain };
}

/**
 * The border where colour alone puts it, if colour tells the two sides apart: how rough a pixel is is seen over its
 * surroundings, and an edge makes those rough on both sides, so a border by roughness comes to lie outside. How clear the
 * border is stays what all of it told.
 */
function byColour(seen: Seen, features: Features, seed: number): Seen {
  const { planes, grain, settled, contrasts, steps } = seen;
  if (grain === 'coarse') return seen;
  const found = settledFrom(planes, grain, coloursOf(features), settled.inside, seed, 3);
  if (found === null || median(found.contrasts) < coloursTellFrom) return { ...seen, sureness: 'rough' };
  const before = found.outline.map((point) => nearestOf(point, seen.outline));
  return {
    ...seen,
    outline: found.outline,
    contrasts: before.map((at) => contrasts[at] ?? 0),
    steps: before.map((at) => steps[at] ?? 0),
  };
}

/** The index of the nearest point. */
function nearestOf({ x, y }: XY, points: readonly XY[]): number {
  let [nearest, least] = [0, Number.POSITIVE_INFINITY];
  for (const [at, point] of points.entries()) {
    const square = (point.x - x) ** 2 + (point.y - y) ** 2;
    if (square < least) [nearest, least] = [at, square];
  }
  return nearest;
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
    for (let k = -shortestLapse; k <= shortestLapse; k += 1) sum += steps[(index + k + count) % count] as number;
    return sum / (2 * shortestLapse + 1);
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
  const seen = settledFrom(fine, grain, features, filledPart(mask, fine.width, fine.height, seed), seed, 5);
  return seen && byColour(seen, features, seed);
}
