import type { XY } from '../geometry/spaces.ts';
import { type GreyImage, sampleAt } from './grey.ts';
import { normalAt } from './smooth-line.ts';

const sampleStep = 0.25;
/** Profiles this many points each way are read together. */
const meanReach = 2;

export interface ProfileReading {
  /** Full width of the dark line at half its depth, px; null where no line stands out. */
  readonly widthPx: number | null;
  /** Depth of the line against the spread of the surface beside it. */
  readonly contrast: number;
}

/**
 * Width of a dark line at each of its points: full width at half depth of the profile across it, averaged a little along
 * the line. A picture's own blur makes lines under about 2.5 px look wider than they are, so there it is an upper bound.
 *
 * @param reachPx  how far the profile reaches each way; lines wider than this are not measured
 */
export function readProfiles(image: GreyImage, points: readonly XY[], reachPx: number): ProfileReading[] {
  const half = Math.round(reachPx / sampleStep);
  const samples = 2 * half + 1;
  const profiles = new Float64Array(points.length * samples);
  for (const [index, point] of points.entries()) {
    const normal = normalAt(points, index, 4);
    for (let s = 0; s < samples; s += 1) {
      const offset = (s - half) * sampleStep;
      profiles[index * samples + s] = sampleAt(image, point.x + offset * normal.x, point.y + offset * normal.y);
    }
  }
  const mean = new Float64Array(samples);
  return points.map((_, index) => {
    const first = Math.max(0, index - meanReach);
    const last = Math.min(points.length - 1, index + meanReach);
    mean.fill(0);
    for (let k = first; k <= last; k += 1) {
      for (let s = 0; s < samples; s += 1) mean[s] = (mean[s] as number) + (profiles[k * samples + s] as number);
    }
    for (let s = 0; s < samples; s += 1) mean[s] = (mean[s] as number) / (last - first + 1);
    return readProfile(mean, half);
  });
}

function readProfile(profile: Float64Array, half: number): ProfileReading {
  let middle = half;
  const near = Math.round(1.5 / sampleStep);
  for (let s = half - near; s <= half + near; s += 1) {
    if ((profile[s] as number) < (profile[middle] as number)) middle = s;
  }
  // The surface: the lighter half of what lies beside the line.
  const sorted = Float64Array.from(profile).sort();
  const surface = sorted[Math.floor(sorted.length * 0.7)] as number;
  const depth = surface - (profile[middle] as number);
  const spread =
    ((sorted[Math.floor(sorted.length * 0.9)] as number) - (sorted[sorted.length >> 1] as number)) / 1.28 + 1;
  const contrast = depth / spread;
  if (depth <= 0) return { widthPx: null, contrast: 0 };
  const level = surface - depth / 2;
  const right = crossing(profile, middle, 1, level);
  const left = crossing(profile, middle, -1, level);
  return { widthPx: right === null || left === null ? null : (right - left) * sampleStep, contrast };
}

function crossing(profile: Float64Array, from: number, step: 1 | -1, level: number): number | null {
  for (let s = from + step; s >= 0 && s < profile.length; s += step) {
    const value = profile[s] as number;
    if (value < level) continue;
    const before = profile[s - step] as number;
    return s - (step * (value - level)) / (value - before || 1);
  }
  return null;
}
