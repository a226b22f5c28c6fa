import type { XY } from '../geometry/spaces.ts';
import { type GreyImage, sampleGrey } from './grey.ts';
import { normalAt } from './smooth-line.ts';

const offsetStep = 0.25;
/** How far a point may move across the line, px. */
const mostOffset = 2;
const offsetCount = (2 * mostOffset) / offsetStep + 1;
/** What a change of offset by one pixel from point to point costs, in brightness spreads of the profile. */
const bendCost = 1.5;

/**
 * Moves every point across the line to its dark middle, to a quarter pixel and then between the steps, all points at once so
 * that none jumps to a grain beside the line (dynamic programming over the offsets, as in active contours by Amini,
 * Weymouth and Jain, 1990).
 *
 * @param smooth  the picture, lightly blurred
 * @param points  about 1 px apart, local to the picture
 */
export function refineLine(smooth: GreyImage, points: readonly XY[]): XY[] {
  const count = points.length;
  if (count < 3) return [...points];
  const darkness = new Float64Array(count * offsetCount);
  const normals = points.map((_, index) => normalAt(points, index, 3));
  for (let i = 0; i < count; i += 1) {
    const point = points[i];
    const normal = normals[i];
    if (!point || !normal) continue;
    let sum = 0;
    let squares = 0;
    for (let k = 0; k < offsetCount; k += 1) {
      const offset = k * offsetStep - mostOffset;
      const value = sampleGrey(smooth, { x: point.x + offset * normal.x, y: point.y + offset * normal.y });
      darkness[i * offsetCount + k] = value;
      sum += value;
      squares += value * value;
    }
    const mean = sum / offsetCount;
    const spread = Math.sqrt(Math.max(0, squares / offsetCount - mean * mean)) + 1;
    for (let k = 0; k < offsetCount; k += 1) {
      const at = i * offsetCount + k;
      darkness[at] = ((darkness[at] as number) - mean) / spread;
    }
  }
  const chosen = bestOffsets(darkness, count);
  return points.map((point, i) => {
    const normal = normals[i] ?? { x: 0, y: 0 };
    const offset = vertex(darkness, i, chosen[i] as number);
    return { x: point.x + offset * normal.x, y: point.y + offset * normal.y };
  });
}

function bestOffsets(darkness: Float64Array, count: number): Int32Array {
  const total = new Float64Array(darkness);
  const from = new Int32Array(darkness.length);
  for (let i = 1; i < count; i += 1) {
    for (let k = 0; k < offsetCount; k += 1) {
      let best = Number.POSITIVE_INFINITY;
      for (let j = Math.max(0, k - 3); j <= Math.min(offsetCount - 1, k + 3); j += 1) {
        const bend = bendCost * offsetStep * Math.abs(k - j);
        const sum = (total[(i - 1) * offsetCount + j] as number) + bend;
        if (sum < best) {
          best = sum;
          from[i * offsetCount + k] = j;
        }
      }
      total[i * offsetCount + k] = (darkness[i * offsetCount + k] as number) + best;
    }
  }
  const chosen = new Int32Array(count);
  let last = 0;
  for (let k = 1; k < offsetCount; k += 1) {
    const at = (count - 1) * offsetCount;
    if ((total[at + k] as number) < (total[at + last] as number)) last = k;
  }
  for (let i = count - 1; i >= 0; i -= 1) {
    chosen[i] = last;
    last = from[i * offsetCount + last] as number;
  }
  return chosen;
}

/** The offset of the lowest point of the parabola through a step and its neighbours. */
function vertex(darkness: Float64Array, i: number, k: number): number {
  const offset = k * offsetStep - mostOffset;
  if (k === 0 || k === offsetCount - 1) return offset;
  const before = darkness[i * offsetCount + k - 1] as number;
  const here = darkness[i * offsetCount + k] as number;
  const after = darkness[i * offsetCount + k + 1] as number;
  const bend = before - 2 * here + after;
  if (bend <= 0) return offset;
  return offset + offsetStep * Math.min(0.5, Math.max(-0.5, (before - after) / (2 * bend)));
}
