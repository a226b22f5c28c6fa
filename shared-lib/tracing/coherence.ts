import type { Ridges } from './ridge.ts';

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
  const reach = Math.ceil(steps * stepPx);
  const coherent = new Float32Array(strength.length);
  // Cosine and sine of twice the direction, each times the strength, side by side.
  const turns = new Float32Array(2 * strength.length);
  for (let i = 0; i < strength.length; i += 1) {
    const own = strength[i] as number;
    if (own === 0) continue;
    const half = halfDifference[i] as number;
    const turned = mixed[i] as number;
    const share = own / (Math.sqrt(half * half + turned * turned) || 1);
    turns[2 * i] = share * half;
    turns[2 * i + 1] = share * turned;
  }
  for (let y = 0; y < height; y += 1) {
    const isRowInside = y >= reach && y < height - reach;
    for (let x = 0; x < width; x += 1) {
      const at = y * width + x;
      const own = strength[at] as number;
      if (own < from) {
        coherent[at] = own * 0.5;
        continue;
      }
      const cosine = (turns[2 * at] as number) / own;
      const sine = (turns[2 * at + 1] as number) / own;
      // Across the line is half the angle; along it a right angle more.
      const acrossX = Math.sqrt(Math.max(0, (1 + cosine) / 2));
      const acrossY = acrossX > 1e-3 ? sine / (2 * acrossX) : 1;
      const dx = -acrossY * stepPx;
      const dy = acrossX * stepPx;
      const isInside = isRowInside && x >= reach && x < width - reach;
      let sum = own;
      let count = 1;
      for (let i = 1; i <= steps; i += 1) {
        const offX = Math.floor(i * dx + 0.5);
        const offY = Math.floor(i * dy + 0.5);
        const off = offY * width + offX;
        if (isInside || (x + offX >= 0 && x + offX < width && y + offY < height)) {
          const ahead = 2 * (at + off);
          const alike = cosine * (turns[ahead] as number) + sine * (turns[ahead + 1] as number);
          count += 1;
          if (alike > 0) sum += alike;
        }
        if (isInside || (x - offX >= 0 && x - offX < width && y - offY >= 0)) {
          const behind = 2 * (at - off);
          const alike = cosine * (turns[behind] as number) + sine * (turns[behind + 1] as number);
          count += 1;
          if (alike > 0) sum += alike;
        }
      }
      coherent[at] = sum / count;
    }
  }
  return coherent;
}
