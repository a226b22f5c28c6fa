import type { PointPair } from '../calibration/homography.ts';
import type { Feature } from './features.ts';

export interface FeatureMatch extends PointPair {
  /** Bits that differ, of 256. */
  readonly distance: number;
}

/** Codes farther apart than this are not the same corner. */
const mostBits = 70;
/** The best has to be clearly better than the next one elsewhere. */
const clearly = 0.85;

/** Each corner's best partner, where both choose each other and no other is nearly as good. Source of the ratio: Lowe (2004). */
export function matchFeatures(before: readonly Feature[], after: readonly Feature[]): FeatureMatch[] {
  const forth = before.map((one) => nearest(one, after));
  const back = after.map((one) => nearest(one, before));
  return forth.flatMap(({ index, distance, next }, i) => {
    const from = before[i];
    const to = after[index];
    if (!from || !to || distance > mostBits || distance > clearly * next || back[index]?.index !== i) return [];
    return [{ from: { x: from.x, y: from.y }, to: { x: to.x, y: to.y }, distance }];
  });
}

function nearest(one: Feature, others: readonly Feature[]): { index: number; distance: number; next: number } {
  let index = -1;
  let best = 257;
  for (let i = 0; i < others.length; i += 1) {
    const distance = differing(one.code, (others[i] as Feature).code, best);
    if (distance < best) {
      best = distance;
      index = i;
    }
  }
  const chosen = others[index];
  let next = 257;
  for (let i = 0; i < others.length && chosen; i += 1) {
    const other = others[i] as Feature;
    // The same corner is found on several levels of the pyramid; those are no rivals.
    if (Math.abs(other.x - chosen.x) < 6 && Math.abs(other.y - chosen.y) < 6) continue;
    next = Math.min(next, differing(one.code, other.code, next));
  }
  return { index, distance: best, next };
}

function differing(a: Uint32Array, b: Uint32Array, enough: number): number {
  let count = 0;
  for (let k = 0; k < a.length && count < enough; k += 1) {
    let bits = (a[k] as number) ^ (b[k] as number);
    bits -= (bits >>> 1) & 0x55555555;
    bits = (bits & 0x33333333) + ((bits >>> 2) & 0x33333333);
    count += Math.imul((bits + (bits >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
  }
  return count;
}
