import type { XY } from '../../geometry/spaces.ts';
import { blur } from '../../tracing/blur.ts';
import { type GreyImage, sampleGrey } from '../../tracing/grey.ts';

/** A place where two dark and two light wedges meet. */
export interface Saddle extends XY {
  /**
   * Directions of the two edges that cross, radians: from the first to the second, in the sense in which angles grow, the
   * wedge is dark. Each is also an edge the other way.
   */
  readonly axes: readonly [number, number];
  /** Between the lightest and the darkest on a ring round it. */
  readonly contrast: number;
}

const smoothing = 1.4;
const ringRadius = 4;
const ringSteps = 24;
const leastContrast = 10;
const most = 2500;

const ring = Array.from({ length: ringSteps }, (_, k) => ({
  x: ringRadius * Math.cos((2 * Math.PI * k) / ringSteps),
  y: ringRadius * Math.sin((2 * Math.PI * k) / ringSteps),
}));

/**
 * Saddles of the brightness that look like crossings of two edges, in pixels of this picture.
 *
 * A saddle has a negative determinant of the Hessian; along its two level directions run the edges.
 */
export function findSaddles(image: GreyImage): Saddle[] {
  const { width, height } = image;
  const smooth = { ...image, data: blur(image.data, width, height, smoothing) };
  const strength = saddleStrength(smooth.data, width, height);
  const peaks: { x: number; y: number; s: number }[] = [];
  const border = ringRadius + 2;
  const least = leastStrength(strength);
  for (let y = border; y < height - border; y += 1) {
    for (let x = border; x < width - border; x += 1) {
      const s = strength[y * width + x] as number;
      if (s > least && isPeak(strength, width, y * width + x, s)) peaks.push({ x, y, s });
    }
  }
  peaks.sort((a, b) => b.s - a.s);
  const saddles: Saddle[] = [];
  for (const { x, y } of peaks) {
    const saddle = saddleAt(smooth, x, y);
    if (saddle) saddles.push(saddle);
    if (saddles.length === most) break;
  }
  return saddles;
}

function saddleStrength(data: Float32Array, width: number, height: number): Float32Array {
  const strength = new Float32Array(width * height);
  for (let y = 1; y < height - 1; y += 1) {
    for (let at = y * width + 1; at < y * width + width - 1; at += 1) {
      const centre = 2 * (data[at] as number);
      const xx = (data[at - 1] as number) + (data[at + 1] as number) - centre;
      const yy = (data[at - width] as number) + (data[at + width] as number) - centre;
      const xy =
        ((data[at - width - 1] as number) +
          (data[at + width + 1] as number) -
          (data[at - width + 1] as number) -
          (data[at + width - 1] as number)) /
        4;
      strength[at] = xy * xy - xx * yy;
    }
  }
  return strength;
}

/** Noise makes saddles everywhere: what counts stands well above the usual one of this picture. */
function leastStrength(strength: Float32Array): number {
  const sampled: number[] = [];
  for (let at = 0; at < strength.length; at += 37) {
    const s = strength[at] as number;
    if (s > 0) sampled.push(s);
  }
  sampled.sort((a, b) => a - b);
  return Math.max(0.02, 6 * (sampled[sampled.length >> 1] ?? 0));
}

function isPeak(strength: Float32Array, width: number, at: number, s: number): boolean {
  for (let dy = -2; dy <= 2; dy += 1) {
    for (let dx = -2; dx <= 2; dx += 1) {
      const other = strength[at + dy * width + dx] as number;
      if (other > s || (other === s && (dy < 0 || (dy === 0 && dx < 0)))) return false;
    }
  }
  return true;
}

/** @returns null where the ring round it is not two dark and two light arcs that face each other */
function saddleAt(smooth: GreyImage, x0: number, y0: number): Saddle | null {
  const centre = stationaryPoint(smooth, x0, y0);
  const values = ring.map(({ x, y }) => sampleGrey(smooth, { x: centre.x + x, y: centre.y + y }));
  const top = Math.max(...values);
  const bottom = Math.min(...values);
  const contrast = top - bottom;
  if (contrast < leastContrast) return null;
  const middle = (top + bottom) / 2;
  // A real crossing looks the same turned by half a turn.
  let uneven = 0;
  for (let k = 0; k < ringSteps / 2; k += 1) {
    uneven += Math.abs((values[k] as number) - (values[k + ringSteps / 2] as number));
  }
  if (uneven > 0.3 * contrast * (ringSteps / 2)) return null;
  const crossings: { angle: number; darkens: boolean }[] = [];
  for (let k = 0; k < ringSteps; k += 1) {
    const here = (values[k] as number) - middle;
    const next = (values[(k + 1) % ringSteps] as number) - middle;
    if (here > 0 === next > 0) continue;
    crossings.push({ angle: (2 * Math.PI * (k + here / (here - next))) / ringSteps, darkens: here > 0 });
  }
  if (crossings.length !== 4) return null;
  const darkens = crossings.filter((each) => each.darkens).map(({ angle }) => angle);
  const lightens = crossings.filter((each) => !each.darkens).map(({ angle }) => angle);
  const first = oneAxis(darkens);
  const second = oneAxis(lightens);
  if (first === null || second === null) return null;
  return { ...centre, axes: [first, second < first ? second + Math.PI : second], contrast };
}

/** The axis of two crossings that face each other. */
function oneAxis([a = 0, b = 0]: readonly number[]): number | null {
  const off = b - a - Math.PI;
  return Math.abs(off) > 0.5 ? null : a + off / 2;
}

/** Where the quadratic surface through the neighbours is level; never more than a pixel away. */
function stationaryPoint({ data, width }: GreyImage, x: number, y: number): XY {
  const at = y * width + x;
  const value = (dx: number, dy: number): number => data[at + dy * width + dx] as number;
  const gx = (value(1, 0) - value(-1, 0)) / 2;
  const gy = (value(0, 1) - value(0, -1)) / 2;
  const xx = value(1, 0) + value(-1, 0) - 2 * value(0, 0);
  const yy = value(0, 1) + value(0, -1) - 2 * value(0, 0);
  const xy = (value(1, 1) + value(-1, -1) - value(1, -1) - value(-1, 1)) / 4;
  const determinant = xx * yy - xy * xy;
  const dx = (xy * gy - yy * gx) / determinant;
  const dy = (xy * gx - xx * gy) / determinant;
  return Math.abs(dx) <= 1.5 && Math.abs(dy) <= 1.5 ? { x: x + dx, y: y + dy } : { x, y };
}
