import type { Box, Size, XY } from '../geometry/spaces.ts';
import { evenlySpaced } from '../tracing/smooth-line.ts';
import type { ColourPlanes } from './planes.ts';

/** Half edges of the surroundings that a patch is sought in, px of the photo. */
const reaches = [120, 300, 800, 2000, 5000] as const;
/** A shorter line is a spot, px of the photo. */
const leastRun = 16;
/** A seed is this wide, in pixels looked at. */
const seedRadius = 2;

/** A line run over a patch says about how large it is: its surroundings are sought no wider than that. */
function reachesFor(points: readonly XY[]): readonly number[] {
  const across = Math.hypot(...spreadOf(points));
  if (across < leastRun) return reaches;
  return [0.3, 0.7, 1.4].map((share) => Math.max(40, share * across));
}

/** Surroundings of a spot or line from near to wide, as far as the photo goes. */
export function* boxesRound(points: readonly XY[], photo: Size): Generator<Box> {
  let before = '';
  for (const reach of reachesFor(points)) {
    const box = boxRound(points, reach, photo);
    const key = Object.values(box).join();
    if (key === before) return;
    before = key;
    yield box;
  }
}

export function boxRound(points: readonly XY[], reach: number, photo: Size): Box {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return {
    left: Math.max(0, Math.round(Math.min(...xs) - reach)),
    top: Math.max(0, Math.round(Math.min(...ys) - reach)),
    right: Math.min(photo.width - 1, Math.round(Math.max(...xs) + reach)),
    bottom: Math.min(photo.height - 1, Math.round(Math.max(...ys) + reach)),
  };
}

export const factorFor = ({ left, top, right, bottom }: Box, pixels: number): number =>
  Math.max(1, Math.ceil(Math.sqrt(((right - left + 1) * (bottom - top + 1)) / pixels)));

export function spreadOf(ring: readonly XY[]): [number, number] {
  const xs = ring.map(({ x }) => x);
  const ys = ring.map(({ y }) => y);
  return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
}

export const local = ({ left, top, factor }: ColourPlanes, { x, y }: XY): XY => ({
  x: (x - left + 0.5) / factor - 0.5,
  y: (y - top + 0.5) / factor - 0.5,
});

export const toPhoto = ({ left, top, factor }: ColourPlanes, { x, y }: XY): XY => ({
  x: (x + 0.5) * factor - 0.5 + left,
  y: (y + 0.5) * factor - 0.5 + top,
});

/** Where a spot or line lies in the part looked at, by spots a seed's width apart. */
export const spotsIn = (planes: ColourPlanes, points: readonly XY[]): XY[] =>
  evenlySpaced(
    points.map((point) => local(planes, point)),
    seedRadius,
  );

/** Pixels under a spot or line, by index. */
export function seedsIn(planes: ColourPlanes, points: readonly XY[]): number[] {
  const { width, height } = planes;
  const seeds = new Set<number>();
  for (const spot of spotsIn(planes, points)) {
    for (let dy = -seedRadius; dy <= seedRadius; dy += 1) {
      for (let dx = -seedRadius; dx <= seedRadius; dx += 1) {
        const x = Math.round(spot.x) + dx;
        const y = Math.round(spot.y) + dy;
        if (dx * dx + dy * dy > seedRadius * seedRadius + 1) continue;
        if (x >= 0 && y >= 0 && x < width && y < height) seeds.add(y * width + x);
      }
    }
  }
  return [...seeds];
}
