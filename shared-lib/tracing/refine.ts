import type { XY } from '../geometry/spaces.ts';
import { blur } from './blur.ts';
import { cropGrey, type GreyImage, sampleAt } from './grey.ts';
import { normalAt } from './smooth-line.ts';

const offsetStep = 0.25;
/** How far a point may move across the line, px. */
const mostOffset = 2;
const offsetCount = (2 * mostOffset) / offsetStep + 1;
/** What a change of offset by one pixel from point to point costs, in brightness spreads of the profile. */
const bendCost = 1.5;

/** Points whose surroundings are blurred together: blurring the whole picture costs more than all the rest. */
const pointsTogether = 64;

/**
 * Moves every point across the line to its dark middle, to a quarter pixel and then between the steps, all points at once so
 * that none jumps to a grain beside the line (dynamic programming over the offsets, as in active contours by Amini,
 * Weymouth and Jain, 1990).
 *
 * @param points  about 1 px apart, local to the picture
 */
export function refineLine(image: GreyImage, points: readonly XY[]): XY[] {
  const count = points.length;
  if (count < 3) return [...points];
  const darkness = new Float64Array(count * offsetCount);
  const normals = points.map((_, index) => normalAt(points, index, 3));
  for (let first = 0; first < count; first += pointsTogether) {
    readDarkness(image, points, normals, first, Math.min(count, first + pointsTogether), darkness);
  }
  const chosen = bestOffsets(darkness, count);
  return points.map((point, i) => {
    const normal = normals[i] ?? { x: 0, y: 0 };
    const offset = vertex(darkness, i, chosen[i] as number);
    return { x: point.x + offset * normal.x, y: point.y + offset * normal.y };
  });
}

/** Brightness across the line at some of its points, each profile in units of its own spread, in the lightly blurred picture. */
function readDarkness(
  image: GreyImage,
  points: readonly XY[],
  normals: readonly XY[],
  first: number,
  last: number,
  darkness: Float64Array,
): void {
  const some = points.slice(first, last);
  const xs = some.map(({ x }) => x + image.left);
  const ys = some.map(({ y }) => y + image.top);
  const room = mostOffset + 4;
  const sharp = cropGrey(image, {
    left: Math.min(...xs) - room,
    top: Math.min(...ys) - room,
    right: Math.max(...xs) + room,
    bottom: Math.max(...ys) + room,
  });
  const smooth = { ...sharp, data: blur(sharp.data, sharp.width, sharp.height, 1) };
  const left = image.left - smooth.left;
  const top = image.top - smooth.top;
  for (const [index, point] of some.entries()) {
    const normal = normals[first + index];
    if (!normal) continue;
    const row = (first + index) * offsetCount;
    let sum = 0;
    let squares = 0;
    for (let k = 0; k < offsetCount; k += 1) {
      const offset = k * offsetStep - mostOffset;
      const value = sampleAt(smooth, point.x + left + offset * normal.x, point.y + top + offset * normal.y);
      darkness[row + k] = value;
      sum += value;
      squares += value * value;
    }
    const mean = sum / offsetCount;
    const spread = Math.sqrt(Math.max(0, squares / offsetCount - mean * mean)) + 1;
    for (let k = 0; k < offsetCount; k += 1) darkness[row + k] = ((darkness[row + k] as number) - mean) / spread;
  }
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
