import { blur, boxMean } from './blur.ts';
import type { GreyImage } from './grey.ts';

/** How much every pixel looks like the middle of a thin dark line, and which way that line would run. */
export interface Ridges {
  /** Strength of the dark line in units of the picture's own noise; 0 where there is none. */
  readonly strength: Float32Array;
  /** Half the difference of the second derivatives along x and y, and the mixed one, where the line is strongest. */
  readonly halfDifference: Float32Array;
  readonly mixed: Float32Array;
}

/** Direction along the line, radians, 0 to pi, y down. The larger eigenvector points across, so a right angle is added. */
export function directionAt({ halfDifference, mixed }: Ridges, at: number): number {
  return Math.atan2(mixed[at] as number, halfDifference[at] as number) / 2 + Math.PI / 2;
}

/** Whether no pixel beside it, across the line, is stronger. For pixels off the picture's edge. */
export function isCrest(ridges: Ridges, width: number, at: number): boolean {
  const { strength, halfDifference, mixed } = ridges;
  const half = halfDifference[at] as number;
  const turned = Math.abs(mixed[at] as number);
  // Across is phi with 2 phi = atan2(mixed, half): x, y, or the diagonal that lies nearer.
  const diagonal = (mixed[at] as number) > 0 ? width + 1 : width - 1;
  const step = turned > Math.abs(half) ? diagonal : half > 0 ? 1 : width;
  const own = strength[at] as number;
  return own >= (strength[at - step] as number) && own > (strength[at + step] as number);
}

export interface RidgeSettings {
  /** Half-widths of lines looked for, px. */
  readonly sigmas: readonly number[];
  /** How much a spot (dark both ways) loses against a line; 1 removes round spots altogether. */
  readonly spotPenalty: number;
  /** Half the edge of the window over which contrast is evened out, px. */
  readonly contrastRadius: number;
  /** Share of the whole picture's noise that every window is granted at least, so that calm regions do not shout. */
  readonly noiseFloor: number;
}

/**
 * Multi-scale second-derivative ridge measure: the larger eigenvalue of the Hessian of a Gaussian-blurred picture, scale
 * normalised by sigma^1.5, less a share of the other one. Its noise is evened out window by window, so that a faint crack
 * on a calm surface counts like a strong one on a rough surface.
 * Source: Lindeberg, Edge detection and ridge detection with automatic scale selection (IJCV 1998), gamma = 3/4.
 */
export function findRidges({ data, width, height }: GreyImage, settings: RidgeSettings): Ridges {
  const strength = new Float32Array(width * height);
  const halfDifference = new Float32Array(width * height);
  const mixed = new Float32Array(width * height);
  for (const sigma of settings.sigmas) {
    const smooth = blur(data, width, height, sigma);
    const scale = sigma ** 1.5;
    for (let y = 0; y < height; y += 1) {
      const above = Math.max(0, y - 1) * width;
      const row = y * width;
      const below = Math.min(height - 1, y + 1) * width;
      for (let x = 0; x < width; x += 1) {
        const w = x === 0 ? 0 : x - 1;
        const e = x === width - 1 ? x : x + 1;
        const twice = 2 * (smooth[row + x] as number);
        const xx = (smooth[row + w] as number) + (smooth[row + e] as number) - twice;
        const yy = (smooth[above + x] as number) + (smooth[below + x] as number) - twice;
        const xy =
          ((smooth[above + w] as number) +
            (smooth[below + e] as number) -
            (smooth[above + e] as number) -
            (smooth[below + w] as number)) /
          4;
        const half = (xx - yy) / 2;
        const root = Math.sqrt(half * half + xy * xy);
        const middle = (xx + yy) / 2;
        const across = middle + root;
        if (across <= 0) continue;
        const along = middle - root;
        const value = scale * (across - settings.spotPenalty * Math.abs(along));
        const at = row + x;
        if (value > (strength[at] as number)) {
          strength[at] = value;
          halfDifference[at] = half;
          mixed[at] = xy;
        }
      }
    }
  }
  return { strength: evenOut(strength, width, height, settings), halfDifference, mixed };
}

/** Divides by the root mean square of the neighbourhood. */
function evenOut(
  strength: Float32Array,
  width: number,
  height: number,
  { contrastRadius, noiseFloor }: RidgeSettings,
): Float32Array {
  const squares = new Float32Array(strength.length);
  let total = 0;
  for (let i = 0; i < strength.length; i += 1) {
    const value = strength[i] as number;
    // Cut, so that one black hole does not silence everything round it.
    squares[i] = value * value;
    total += value * value;
  }
  const whole = total / Math.max(1, strength.length);
  for (let i = 0; i < squares.length; i += 1) squares[i] = Math.min(squares[i] as number, 9 * whole);
  const local = boxMean(squares, width, height, contrastRadius);
  const even = new Float32Array(strength.length);
  for (let i = 0; i < strength.length; i += 1) {
    even[i] = (strength[i] as number) / Math.sqrt((local[i] as number) + noiseFloor * noiseFloor * whole + 1e-12);
  }
  return even;
}
