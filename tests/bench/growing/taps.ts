import type { XY } from '../../../shared-lib/geometry/spaces.ts';
import { blur } from '../../../shared-lib/tracing/blur.ts';
import type { DrawnPatch } from '../../reference/shared-lib/growing/drawn-patch.ts';

/** Spots where a hand may tap a patch: beside its middle, half way out on two sides, and by the middle where it is lightest and darkest. */
export function tapsIn({ middle, truth, rgb, size }: DrawnPatch): readonly XY[] {
  const towards = (index: number, share: number): XY => {
    const end = truth[index] ?? middle;
    return { x: middle.x + share * (end.x - middle.x), y: middle.y + share * (end.y - middle.y) };
  };
  const light = blur(rgb[1], size.width, size.height, 1.2);
  const near: { at: XY; light: number }[] = [];
  for (let dy = -14; dy <= 14; dy += 1) {
    for (let dx = -14; dx <= 14; dx += 1) {
      const at = { x: Math.round(middle.x) + dx, y: Math.round(middle.y) + dy };
      near.push({ at, light: light[at.y * size.width + at.x] ?? 0 });
    }
  }
  near.sort((a, b) => b.light - a.light);
  const spots = [near[0], near.at(-1)].flatMap((spot) => (spot ? [spot.at] : []));
  return [{ x: middle.x + 8, y: middle.y - 6 }, towards(30, 0.5), towards(150, 0.6), ...spots];
}
