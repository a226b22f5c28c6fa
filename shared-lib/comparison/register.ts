import {
  directHomography,
  fitHomography,
  type Homography,
  invert,
  type PointPair,
  project,
  turnAlike,
} from '../calibration/homography.ts';
import { AppError } from '../contract/errors.ts';
import { distance } from '../geometry/plane.ts';
import type { Size, XY } from '../geometry/spaces.ts';
import { type GreyImage, shrinkGrey } from '../tracing/grey.ts';
import { findFeatures } from './features.ts';
import { matchFeatures } from './match-features.ts';
import { fitSimilarity } from './similarity.ts';

/** How the earlier photo lies over the later one, in pixels of both upright originals. */
export interface Registration {
  readonly state: 'registered';
  readonly model: 'homography' | 'similarity';
  /** From the earlier photo to the later one. */
  readonly toLater: Homography;
  readonly pairs: readonly PointPair[];
  /** Distance of each pair's later point from where the earlier one lands, px. */
  readonly residualsPx: readonly number[];
  readonly rmsPx: number;
}

export type SuggestedRegistration = Registration | { readonly state: 'nothing-in-common' };

/** From points that a person matched: two or three give shift, turn and scale, four or more the perspective too.
 *
 * @throws AppError 'calibration-too-few-points', '...-collinear', '...-crossing'
 */
export function registerByHand(pairs: readonly PointPair[]): Registration {
  if (pairs.length >= 4) {
    const toLater = fitHomography(pairs);
    if (!turnAlike(pairs)) throw new AppError('calibration-points-crossing', {});
    return registered('homography', toLater, pairs);
  }
  if (pairs.length < 2) throw new AppError('calibration-too-few-points', { fewest: 2, given: pairs.length });
  const similarity = fitSimilarity(pairs);
  if (!similarity) throw new AppError('calibration-zero-length', {});
  return registered('similarity', similarity, pairs);
}

function registered(model: Registration['model'], toLater: Homography, pairs: readonly PointPair[]): Registration {
  const residualsPx = pairs.map((pair) => residual(toLater, pair));
  const rmsPx = Math.sqrt(residualsPx.reduce((sum, r) => sum + r * r, 0) / residualsPx.length);
  return { state: 'registered', model, toLater, pairs, residualsPx, rmsPx };
}

function residual(h: Homography, { from, to }: PointPair): number {
  const there = project(h, from);
  return there ? distance(there, to) : Number.POSITIVE_INFINITY;
}

/** Longer side of the copies that features are looked for in, px. */
const workingEdge = 900;
const tolerancePx = 3.5;
const rounds = 3000;
/** Fewer pairs that agree may agree by chance. */
const fewestInliers = 16;
const leastInlierShare = 0.2;

/**
 * Suggests how two photos of one part lie over each other, from corners found in both (random sample consensus over
 * homographies, Fischler and Bolles 1981). That they have nothing in common is an answer.
 *
 * @param random  uniform from 0 to 1; a fixed seed gives the same suggestion every time
 */
export function suggestRegistration(before: GreyImage, after: GreyImage, random: () => number): SuggestedRegistration {
  const [small, other] = [shrunk(before), shrunk(after)];
  const matches = matchFeatures(findFeatures(small.image), findFeatures(other.image));
  const found = consensus(matches, random);
  const isEnough = found !== null && found.length >= fewestInliers && found.length >= leastInlierShare * matches.length;
  if (!isEnough) return { state: 'nothing-in-common' };
  const pairs = found.map(({ from, to }) => ({ from: small.toFull(from), to: other.toFull(to) }));
  const toLater = fitHomography(pairs);
  return isSane(toLater, before) ? registered('homography', toLater, pairs) : { state: 'nothing-in-common' };
}

function shrunk(image: GreyImage): { image: GreyImage; toFull: (point: XY) => XY } {
  const factor = Math.max(1, Math.round(Math.max(image.width, image.height) / workingEdge));
  return {
    image: shrinkGrey(image, factor),
    toFull: ({ x, y }) => ({ x: image.left + (x + 0.5) * factor - 0.5, y: image.top + (y + 0.5) * factor - 0.5 }),
  };
}

function consensus(matches: readonly PointPair[], random: () => number): readonly PointPair[] | null {
  if (matches.length < fewestInliers) return null;
  let best: readonly PointPair[] = [];
  let needed = rounds;
  for (let round = 0; round < needed; round += 1) {
    const sample = Array.from({ length: 4 }, () => matches[Math.floor(random() * matches.length)] as PointPair);
    if (new Set(sample).size < 4 || !turnAlike(sample)) continue;
    const inliers = inliersOf(sample, matches);
    if (inliers.length <= best.length) continue;
    best = inliers;
    // As many rounds as give a clean sample with a probability of 99.9 %.
    const clean = (best.length / matches.length) ** 4;
    needed = Math.min(rounds, Math.ceil(Math.log(0.001) / Math.log(1 - Math.min(0.999, clean))));
  }
  for (let again = 0; again < 3 && best.length >= 4; again += 1) {
    const next = inliersOf(best, matches);
    if (next.length <= best.length) break;
    best = next;
  }
  return best;
}

function inliersOf(sample: readonly PointPair[], matches: readonly PointPair[]): readonly PointPair[] {
  try {
    const h = directHomography(sample);
    return matches.filter((match) => residual(h, match) < tolerancePx);
  } catch (error) {
    // A sample on a line says nothing; the next one may.
    if (error instanceof AppError) return [];
    throw error;
  }
}

/** A photo of the same part is neither mirrored, nor folded, nor five times nearer. */
function isSane(h: Homography, { left, top, width, height }: GreyImage): boolean {
  const corners = [
    { x: left, y: top },
    { x: left + width, y: top },
    { x: left + width, y: top + height },
    { x: left, y: top + height },
  ];
  const seen = corners.map((corner) => project(h, corner));
  let turned = 0;
  let area = 0;
  for (const [i, a] of seen.entries()) {
    const [b, c] = [seen[(i + 1) % 4], seen[(i + 2) % 4]];
    if (!a || !b || !c) return false;
    if ((b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) > 0) turned += 1;
    area += (a.x * b.y - a.y * b.x) / 2;
  }
  const ratio = area / (width * height);
  return turned === 4 && ratio > 1 / 25 && ratio < 25;
}

/** An earlier mark's points on the later photo; null for one that falls off it. */
export function carryPoints({ toLater }: Registration, points: readonly XY[], photo: Size): (XY | null)[] {
  return points.map((point) => {
    const there = project(toLater, point);
    const isOn =
      there && there.x >= -0.5 && there.y >= -0.5 && there.x <= photo.width - 0.5 && there.y <= photo.height - 0.5;
    return isOn ? there : null;
  });
}

/** From the later photo back to the earlier one. */
export function toEarlier({ toLater }: Registration): Homography | null {
  return invert(toLater);
}
