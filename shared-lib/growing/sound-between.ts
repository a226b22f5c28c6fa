import type { ColourPlanes } from './planes.ts';
import type { Rolled } from './rolling-disc.ts';

/** Nearer than this to a pit its rim is seen, px. */
const rimPx = 2;
/** Outside is looked at so far round the outermost pits, in radii of the disc. */
const [nearest, farthest] = [1.5, 3];
/** Metal between pits may differ from that round the patch by this share of a pit's depth. */
const mostShare = 0.5;
const fewestPixels = 50;

/**
 * Whether the metal between pits is about that round the patch, in brightness and colour. Where it is not, the patch has a
 * border of its own, whatever spots there are in it.
 */
export function isSoundBetween(
  { light, red, yellow }: ColourPlanes,
  { toSet, within }: Rolled,
  reach: number,
  depth: number,
): boolean {
  const ins = [0, 0, 0];
  const outs = [0, 0, 0];
  let [inCount, outCount] = [0, 0];
  const add = (sums: number[], at: number): void => {
    for (const [k, plane] of [light, red, yellow].entries()) sums[k] = (sums[k] ?? 0) + (plane[at] as number);
  };
  for (let at = 0; at < toSet.length; at += 1) {
    const away = toSet[at] as number;
    if ((within[at] as number) > 0) {
      if (away < rimPx) continue;
      add(ins, at);
      inCount += 1;
    } else if (away > nearest * reach && away < farthest * reach) {
      add(outs, at);
      outCount += 1;
    }
  }
  // Pits so close that nothing lies between them, or a patch that fills all that is looked at, tell nothing against it.
  if (inCount < fewestPixels || outCount < fewestPixels) return true;
  return Math.hypot(...ins.map((sum, k) => sum / inCount - (outs[k] ?? 0) / outCount)) < mostShare * depth;
}
