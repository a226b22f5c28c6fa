import type { XY } from '../geometry/spaces.ts';
import { boxMean } from '../tracing/blur.ts';
import { type CutGap, cutGap } from './cut-gap.ts';
import { type Depths, darkSpots, type Spot } from './dark-spots.ts';
import type { ColourPlanes } from './planes.ts';
import { median, quantile } from './quantile.ts';
import { type Rolled, rollDisc } from './rolling-disc.ts';
import { isSoundBetween } from './sound-between.ts';
import { twoClasses } from './two-classes.ts';

/** A patch of pits, in pixels looked at. */
export interface PitPatch {
  readonly inside: Uint8Array;
  /** How far inside the border every pixel lies, px; below 0 outside. */
  readonly field: Float32Array;
  /** The least depth that counts as a pit, grey levels. */
  readonly level: number;
  /** How far from one pit another of the same patch is looked for, px. */
  readonly reach: number;
  /** Standard uncertainty of the area, px squared. */
  readonly areaU: number;
}

/** Half edges of what is looked at round a tap to tell pits from grain, px: near by first, for few pits drown in much grain. */
const windows = [60, 120] as const;
/** Grain alone falls into classes about 2.8 scatters apart. */
const leastApart = 3.1;
/** Fewer pits have no envelope to speak of. */
const fewestPits = 6;
/** Pits nearest to a tap that say how close they lie. */
const nearestCount = 12;
/** Between pits strewn at random the third nearest is 0.89 spacings off; a disc that is to find the next has to be larger. */
const firstReach = 1.25;
/** All but so much of the metal inside is nearer to a pit than the disc's radius, and some to spare. */
const reachedShare = 0.98;
const toSpare = 1.2;
/** A pit belongs where others are this share as close round it as inside the patch, looked at this many radii round. */
const leastCrowd = 0.15;
const crowdReach = 1.35;
/** Where hardly any spots lie outside, so many radii off, a lonely one is a pit as well. */
const farOff = 3;
const cleanCrowd = 0.03;
const timesStray = 10;

/** A tap may lie so many radii from the nearest pit. */
const tapReach = 2.5;

/** So many pits more or less may belong. Found on drawn patches. */
const doubtfulPits = 1.5;

/** @returns null where no patch of pits lies round the seeds */
export function pitPatch(planes: ColourPlanes, depths: Depths, seeds: readonly XY[]): PitPatch | null {
  const level = pitLevel(depths, seeds);
  if (level === null) return null;
  const spots = darkSpots(depths, level);
  const gathered = spots.length < fewestPits ? null : gather(planes, spots, seeds);
  if (!gathered || gathered.members.length < fewestPits) return null;
  const { members, rolled, reach } = gathered;
  const gap = cutGap(
    members.flatMap(({ pixels }) => pixels),
    rolled.within,
    depths,
    reach,
  ) ?? { mean: reach / 2, spread: reach ** 3 / 4 };
  const outset = Math.min(reach, gap.mean);
  const field = new Float32Array(rolled.within.length);
  const inside = new Uint8Array(field.length);
  for (let at = 0; at < field.length; at += 1) {
    field[at] = (rolled.within[at] as number) + outset;
    inside[at] = (field[at] as number) > 0 ? 1 : 0;
  }
  return { inside, field, level, reach, areaU: areaUncertainty(field, gap, reach, members.length) };
}

function pitLevel({ width, depth, lows }: Depths, seeds: readonly XY[]): number | null {
  for (const window of windows) {
    const near = lows.filter((at) => {
      const [x, y] = [at % width, Math.floor(at / width)];
      return seeds.some((seed) => Math.abs(x - seed.x) < window && Math.abs(y - seed.y) < window);
    });
    const classes = twoClasses(near.map((at) => depth[at] as number));
    if (classes && classes.apart > leastApart) return classes.level;
  }
  return null;
}

interface Gathered {
  readonly members: readonly Spot[];
  readonly rolled: Rolled;
  readonly reach: number;
}

/** The pits of the patch round the seeds. How far apart they lie is measured on those found, and they are sought again. */
function gather(planes: ColourPlanes, spots: readonly Spot[], seeds: readonly XY[]): Gathered | null {
  const { width, height } = planes;
  const nearest = nearestTo(seeds, spots).slice(0, nearestCount);
  let reach = firstReach * median(nearest.map((spot) => thirdNearest(spot, spots)));
  const least = Math.max(3, 0.6 * reach);
  const usual = median(spots.map(({ pixels }) => pixels.length));
  const isSpot = new Float32Array(width * height);
  for (const { pixels } of spots) for (const at of pixels) isSpot[at] = 1;
  let share: number | null = null;
  let stray = 1;
  for (let turn = 0; ; turn += 1) {
    const half = Math.max(2, Math.round(crowdReach * reach));
    const crowd = boxMean(isSpot, width, height, half);
    const crowdAt = ({ x, y }: XY): number => crowd[y * width + x] as number;
    share ??= median(nearest.map(crowdAt));
    const wanted = Math.min(leastCrowd, Math.max(cleanCrowd, timesStray * stray)) * share;
    const crowded = spots.filter(
      (spot) => crowdAt(spot) - Math.min(spot.pixels.length, usual) / (2 * half + 1) ** 2 > wanted,
    );
    const [seed] = nearestTo(seeds, crowded);
    if (!seed || awayFrom(seeds, seed) > tapReach * reach + Math.sqrt(seed.pixels.length)) return null;
    const isSet = new Uint8Array(width * height);
    for (const { pixels } of crowded) for (const at of pixels) isSet[at] = 1;
    const rolled = rollDisc(isSet, planes, reach, seed.y * width + seed.x);
    const members = crowded.filter(({ x, y }) => (rolled.within[y * width + x] as number) > -1.5);
    if (turn === 0 && !isSoundBetween(planes, rolled, reach, median(members.map(({ depth }) => depth)))) return null;
    const free = distancesInside(rolled, reach);
    const next = Math.max(least, toSpare * quantile(free, reachedShare));
    if (turn === 3 || free.length === 0 || Math.abs(Math.log(next / reach)) < 0.07) return { members, rolled, reach };
    share = free.filter((away) => away === 0).length / free.length;
    stray = strayShare(spots, rolled, reach, width) / share;
    reach = next;
  }
}

/** Of the metal well outside, how much is as dark as a pit. */
function strayShare(spots: readonly Spot[], { toSet }: Rolled, reach: number, width: number): number {
  const isFar = (at: number): boolean => (toSet[at] as number) > farOff * reach;
  let [far, dark] = [0, 0];
  for (let at = 0; at < toSet.length; at += 1) if (isFar(at)) far += 1;
  for (const { x, y, pixels } of spots) if (isFar(y * width + x)) dark += pixels.length;
  return far === 0 ? 1 : dark / far;
}

/** How far from a pit the pixels inside lie, well inside where there is room enough. */
function distancesInside({ toSet, within }: Rolled, reach: number): number[] {
  const collect = (margin: number): number[] => {
    const found: number[] = [];
    for (let at = 0; at < within.length; at += 1) if ((within[at] as number) > margin) found.push(toSet[at] as number);
    return found;
  };
  const deep = collect(reach / 2);
  return deep.length >= 200 ? deep : collect(0);
}

/** The border's own wandering, how surely the gap is known from what could be cut, and which pits belong. */
function areaUncertainty(field: Float32Array, { mean, spread }: CutGap, reach: number, pits: number): number {
  let [area, border, deep] = [0, 0, 0];
  for (const within of field) {
    if (within > 0) area += 1;
    if (Math.abs(within) < 1) border += 0.5;
    if (within > reach + mean) deep += 1;
  }
  const cutLength = Math.max(reach, deep / reach);
  const belongs = (doubtfulPits * area) / pits;
  return Math.sqrt(spread * border + (border * border * spread) / cutLength + belongs * belongs);
}

const awayFrom = (seeds: readonly XY[], { x, y }: XY): number =>
  seeds.reduce((least, seed) => Math.min(least, Math.hypot(seed.x - x, seed.y - y)), Number.POSITIVE_INFINITY);

const nearestTo = (seeds: readonly XY[], spots: readonly Spot[]): Spot[] =>
  spots
    .map((spot) => ({ spot, away: awayFrom(seeds, spot) }))
    .sort((a, b) => a.away - b.away)
    .map(({ spot }) => spot);

/** Of a spot among others, itself the nearest. */
const thirdNearest = (from: XY, spots: readonly XY[]): number =>
  spots.map(({ x, y }) => Math.hypot(x - from.x, y - from.y)).sort((a, b) => a - b)[3] ?? 0;
