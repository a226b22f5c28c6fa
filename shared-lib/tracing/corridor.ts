import { distanceToChain } from '../geometry/plane.ts';
import type { XY } from '../geometry/spaces.ts';
import type { EvidenceMap } from './evidence-map.ts';

/** A scribble is off by about this much, px. */
const scribblePx = 10;

/** Makes everything dear that lies away from a scribble; changes `cost` in place. `scribble` is local to the map. */
export function corridor(cost: Uint8Array, { width, height }: EvidenceMap, scribble: readonly XY[]): void {
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const away = distanceToChain({ x, y }, scribble, false) / scribblePx;
      if (away <= 1) continue;
      const at = y * width + x;
      cost[at] = Math.min(255, Math.round((cost[at] as number) * Math.min(64, away * away) + 4 * away));
    }
  }
}
