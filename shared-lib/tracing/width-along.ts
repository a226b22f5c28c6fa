import type { XY } from '../geometry/spaces.ts';
import { type GreyImage, sampleGrey } from './grey.ts';
import { normalAt } from './smooth-line.ts';

const sampleStep = 0.25;

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
  return points.map((_, index) => {
    const profile = new Float64Array(2 * half + 1);
    let count = 0;
    for (let k = Math.max(0, index - 2); k <= Math.min(points.length - 1, index + 2); k += 1) {
      const point = points[k];
      if (!point) continue;
      const normal = normalAt(points, k, 4);
      for (let s = -half; s <= half; s += 1) {
        const offset = s * sampleStep;
        profile[s + half] =
          (profile[s + half] as number) +
          sampleGrey(image, { x: point.x + offset * normal.x, y: point.y + offset * normal.y });
      }
      count += 1;
    }
    for (let s = 0; s < profile.length; s += 1) profile[s] = (profile[s] as number) / count;
    return readProfile(profile, half);
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
