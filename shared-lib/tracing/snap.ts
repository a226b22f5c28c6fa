import type { XY } from '../geometry/spaces.ts';
import type { EvidenceMap } from './evidence-map.ts';

/** A hand on a photo is off by about this much, px; farther than twice of it nothing is snapped to. */
const handPx = 4;
const reachPx = 2 * handPx;
/** Strength below which there is nothing worth snapping to. */
const least = 0.8;

/** The pixel of the likeliest line near a click; the click's own pixel where there is none. @returns an index */
export function snapToLine({ width, height, strength, straightness }: EvidenceMap, at: XY): number {
  const x = Math.min(width - 1, Math.max(0, Math.round(at.x)));
  const y = Math.min(height - 1, Math.max(0, Math.round(at.y)));
  let best = y * width + x;
  let bestScore = least;
  for (let py = Math.max(0, y - reachPx); py <= Math.min(height - 1, y + reachPx); py += 1) {
    for (let px = Math.max(0, x - reachPx); px <= Math.min(width - 1, x + reachPx); px += 1) {
      const square = (px - at.x) ** 2 + (py - at.y) ** 2;
      if (square > reachPx * reachPx) continue;
      const index = py * width + px;
      const straight = (straightness[index] as number) > 0.75 ? 0.5 : 1;
      const score = Math.min(2, strength[index] as number) * straight * Math.exp(-square / (2 * handPx * handPx));
      if (score > bestScore) {
        bestScore = score;
        best = index;
      }
    }
  }
  return best;
}
