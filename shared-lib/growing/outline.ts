import { contours } from 'd3-contour';
import { polygonArea } from '../geometry/plane.ts';
import type { XY } from '../geometry/spaces.ts';
import type { Settled } from './settle.ts';

/** Away from the border the field is held to this, so that nothing but the border itself is crossed. */
const held = 1;

/**
 * The region's border between the pixels, where the field is 0 (marching squares).
 *
 * @returns a closed chain without a repeated end, in pixels of the field with centres at whole numbers; null for no region
 */
export function outlineOf(
  { inside, field }: Pick<Settled, 'inside' | 'field'>,
  width: number,
  height: number,
): XY[] | null {
  // A frame of outside, so that a region that reaches the edge of the picture is closed there.
  const stride = width + 2;
  const framed = new Float64Array(stride * (height + 2)).fill(-held);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const at = y * width + x;
      const value = Math.min(held, Math.max(-held, field[at] as number));
      framed[(y + 1) * stride + x + 1] = inside[at] ? Math.max(1e-6, value) : Math.min(-1e-6, value);
    }
  }
  const { coordinates } = contours()
    .size([stride, height + 2])
    .smooth(true)
    .contour(Array.from(framed), 0);
  let largest: XY[] | null = null;
  let most = 0;
  for (const [ring = []] of coordinates) {
    // The library puts a pixel's middle at a half; the frame moves everything by one.
    const chain = ring.slice(0, -1).map(([x = 0, y = 0]) => ({ x: x - 1.5, y: y - 1.5 }));
    const area = polygonArea(chain);
    if (area > most) [largest, most] = [chain, area];
  }
  return largest;
}

/** A closed chain, each point moved to the triangular mean of its neighbours. */
export function smoothRing(ring: readonly XY[], reach: number): XY[] {
  const count = ring.length;
  return ring.map((_, index) => {
    let [x, y, weights] = [0, 0, 0];
    for (let k = -reach; k <= reach; k += 1) {
      const point = ring[(((index + k) % count) + count) % count];
      if (!point) continue;
      const weight = reach + 1 - Math.abs(k);
      x += weight * point.x;
      y += weight * point.y;
      weights += weight;
    }
    return { x: x / weights, y: y / weights };
  });
}
