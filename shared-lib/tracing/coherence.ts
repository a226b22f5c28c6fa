import { directionAt, type Ridges } from './ridge.ts';

export interface CoherenceSettings {
  /** How far along the line every pixel asks its neighbours, px each way. */
  readonly reachPx: number;
  /** Below this a pixel is not asked about: it is no line. */
  readonly from: number;
}

const stepPx = 1.5;

/**
 * Strength averaged along the line: a crack goes on in its own direction, grain and rust do not. A neighbour counts as far
 * as it runs the same way (the cosine of twice the angle between them).
 */
export function coherentStrength(
  ridges: Ridges,
  width: number,
  height: number,
  { reachPx, from }: CoherenceSettings,
): Float32Array {
  const { strength, halfDifference, mixed } = ridges;
  const steps = Math.round(reachPx / stepPx);
  const coherent = new Float32Array(strength.length);
  const cosines = new Float32Array(strength.length);
  const sines = new Float32Array(strength.length);
  for (let i = 0; i < strength.length; i += 1) {
    const own = strength[i] as number;
    if (own === 0) continue;
    const half = halfDifference[i] as number;
    const turned = mixed[i] as number;
    const size = Math.sqrt(half * half + turned * turned) || 1;
    cosines[i] = (own * half) / size;
    sines[i] = (own * turned) / size;
  }
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const at = y * width + x;
      const own = strength[at] as number;
      if (own < from) {
        coherent[at] = own * 0.5;
        continue;
      }
      const along = directionAt(ridges, at);
      const dx = Math.cos(along) * stepPx;
      const dy = Math.sin(along) * stepPx;
      const cosine = (cosines[at] as number) / own;
      const sine = (sines[at] as number) / own;
      let sum = own;
      let count = 1;
      for (let i = -steps; i <= steps; i += 1) {
        if (i === 0) continue;
        const px = Math.round(x + i * dx);
        const py = Math.round(y + i * dy);
        if (px < 0 || py < 0 || px >= width || py >= height) continue;
        const to = py * width + px;
        count += 1;
        sum += Math.max(0, cosine * (cosines[to] as number) + sine * (sines[to] as number));
      }
      coherent[at] = sum / count;
    }
  }
  return coherent;
}
