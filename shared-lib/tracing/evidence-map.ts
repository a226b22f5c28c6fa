import { coherentStrength } from './coherence.ts';
import type { GreyImage } from './grey.ts';
import { findRidges } from './ridge.ts';
import type { TraceSettings } from './settings.ts';
import { findStraightness } from './straightness.ts';

/** What the picture says of every pixel, before anybody asks for a way. */
export interface EvidenceMap {
  readonly width: number;
  readonly height: number;
  /** How sure a thin dark line runs here: 0 none, `fullStrength` and above as sure as it gets. */
  readonly strength: Float32Array;
  /** How straight that line is, 0 to 1. */
  readonly straightness: Float32Array;
}

export function mapEvidence(image: GreyImage, settings: TraceSettings): EvidenceMap {
  const { width, height } = image;
  const ridges = findRidges(image, settings);
  return {
    width,
    height,
    strength: coherentStrength(ridges, width, height, { reachPx: settings.reachPx, from: 0.5 }),
    straightness: findStraightness(ridges, width, height, {
      rodPx: settings.rodPx,
      strongFrom: settings.rodStrongFrom,
    }),
  };
}

/** Cost of every pixel for `cheapestPath`, 1 to 255: low on a wandering dark line, high on bare surface. */
export function costOf({ strength, straightness }: EvidenceMap, settings: TraceSettings): Uint8Array {
  const { fullStrength, lineCost, straightFrom, straightFull, straightPenalty } = settings;
  const cost = new Uint8Array(strength.length);
  for (let i = 0; i < cost.length; i += 1) {
    const straight = Math.min(
      1,
      Math.max(0, ((straightness[i] as number) - straightFrom) / (straightFull - straightFrom)),
    );
    const kept = Math.min(1, ((strength[i] as number) * (1 - straightPenalty * straight)) / fullStrength);
    cost[i] = Math.max(1, Math.round((255 * lineCost) / (lineCost + kept)));
  }
  return cost;
}
