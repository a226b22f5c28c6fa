import { chainLength } from '../geometry/plane.ts';
import type { Box, Size, XY } from '../geometry/spaces.ts';
import { boxMean } from '../tracing/blur.ts';
import { depthsOf } from './dark-spots.ts';
import { type Grown, grownFrom } from './grown.ts';
import { outlineOf, smoothRing } from './outline.ts';
import { type PitPatch, pitPatch } from './pit-patch.ts';
import type { ColourPlanes, Look } from './planes.ts';
import { stretchCount } from './stretches.ts';
import { boxesRound, factorFor, spotsIn, toPhoto } from './surroundings.ts';

/** Pixels that surroundings are looked at with: pits have to stay to be seen. */
const pixels = 200_000;
/** Where pits lie this share as close outside a border as inside, it is faint; outside shallower ones count too. */
const faintShare = 0.4;
const shallow = 0.75;

/**
 * Finds the outline of a pitted patch: the envelope of the pits round a spot, where the metal between them is that of its
 * surroundings.
 *
 * @returns null where the spot lies in no such patch
 */
export function growPits(look: Look, photo: Size, points: readonly XY[]): Grown | null {
  for (const box of boxesRound(points, photo)) {
    const planes = look(box, factorFor(box, pixels));
    if (planes.width < 24 || planes.height < 24) return null;
    const depths = depthsOf(planes);
    const patch = pitPatch(planes, depths, spotsIn(planes, points));
    if (!patch || isCut(patch, planes, box, photo)) continue;
    const ring = outlineOf(patch, planes.width, planes.height);
    if (!ring || ring.length < 12) continue;
    const outline = smoothRing(ring, 2).map((point) => toPhoto(planes, point));
    const borderPx = (planes.factor * patch.areaU * Math.sqrt(stretchCount)) / chainLength(ring, true);
    const grown = grownFrom(
      outline,
      faintAlong(ring, patch, depths.lows, depths.depth, planes),
      photo,
      borderPx,
      false,
    );
    if (!grown.doubts.includes('no-patch')) return grown;
  }
  return null;
}

/** Whether it goes on beyond the surroundings looked at. */
function isCut({ inside }: PitPatch, { width, height }: Size, box: Box, photo: Size): boolean {
  const hasInside = (start: number, step: number, count: number): boolean => {
    for (let i = 0; i < count; i += 1) if (inside[start + i * step]) return true;
    return false;
  };
  return (
    (box.top > 0 && hasInside(0, 1, width)) ||
    (box.left > 0 && hasInside(0, width, height)) ||
    (box.bottom < photo.height - 1 && hasInside((height - 1) * width, 1, width)) ||
    (box.right < photo.width - 1 && hasInside(width - 1, width, height))
  );
}

/** Where pits go on outside. */
function faintAlong(
  ring: readonly XY[],
  { inside, level, reach }: PitPatch,
  lows: readonly number[],
  depth: Float32Array,
  { width, height }: ColourPlanes,
): boolean[] {
  const [ins, outs] = [new Float32Array(inside.length), new Float32Array(inside.length)];
  for (const at of lows) if ((depth[at] as number) > shallow * level) (inside[at] ? ins : outs)[at] = 1;
  const half = Math.max(4, Math.round(2 * reach));
  const mean = (data: Float32Array): Float32Array => boxMean(data, width, height, half);
  const [insNear, outsNear, room] = [mean(ins), mean(outs), mean(Float32Array.from(inside))];
  return ring.map(({ x, y }) => {
    const column = Math.min(width - 1, Math.max(0, Math.round(x)));
    const row = Math.min(height - 1, Math.max(0, Math.round(y)));
    const at = row * width + column;
    const own = room[at] as number;
    return (outsNear[at] as number) * own > faintShare * (insNear[at] as number) * (1 - own);
  });
}
