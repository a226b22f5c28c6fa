import { solve } from '../calibration/linear.ts';
import type { Features } from './features.ts';
import { leastSpread } from './features.ts';

/**
 * One number per pixel that tells inside from outside best: above 0 like the inside, below like the outside, the two
 * means one apart from each other.
 *
 * @param share  of the pixels round a pixel that are inside; those all inside or all outside are learnt from
 * @param nearness  the same over wider surroundings: only what lies near the border is learnt from
 * @returns null where one side has no pixels
 * Source: Fisher, The use of multiple measurements in taxonomic problems (1936): linear discriminant.
 */
export function parting({ maps }: Features, share: Float32Array, nearness: Float32Array): Float32Array | null {
  const count = maps.length;
  const sums = [new Float64Array(count), new Float64Array(count)] as const;
  const products = new Float64Array(count * count);
  const numbers = [0, 0];
  const learn = (at: number, side: 0 | 1): void => {
    const sum = sums[side];
    numbers[side] = (numbers[side] as number) + 1;
    for (let k = 0; k < count; k += 1) {
      const value = (maps[k] as Float32Array)[at] as number;
      sum[k] = (sum[k] as number) + value;
      for (let l = k; l < count; l += 1) {
        products[k * count + l] =
          (products[k * count + l] as number) + value * ((maps[l] as Float32Array)[at] as number);
      }
    }
  };
  for (let at = 0; at < share.length; at += 1) {
    const near = nearness[at] as number;
    const own = share[at] as number;
    if (own > 0.999 && near < 0.999) learn(at, 1);
    else if (own < 0.001 && near > 0.001) learn(at, 0);
  }
  const [outs = 0, ins = 0] = numbers;
  if (outs < 10 || ins < 10) return null;
  const outMeans = Array.from(sums[0], (sum) => sum / outs);
  const inMeans = Array.from(sums[1], (sum) => sum / ins);
  const total = outs + ins;
  const scatter = Array.from({ length: count }, (_, k) =>
    Array.from({ length: count }, (_, l) => {
      const product = products[Math.min(k, l) * count + Math.max(k, l)] as number;
      const within =
        product - outs * (outMeans[k] ?? 0) * (outMeans[l] ?? 0) - ins * (inMeans[k] ?? 0) * (inMeans[l] ?? 0);
      return within / total + (k === l ? (leastSpread[k] ?? 1) ** 2 : 0);
    }),
  );
  const apart = inMeans.map((mean, k) => mean - (outMeans[k] ?? 0));
  const weights = solve(scatter, apart);
  if (!weights) return null;
  const dot = (values: readonly number[]) => values.reduce((sum, value, k) => sum + value * (weights[k] ?? 0), 0);
  const [high, low] = [dot(inMeans), dot(outMeans)];
  const middle = (high + low) / 2;
  const scale = 1 / Math.max(1e-9, high - low);
  const values = new Float32Array(share.length);
  for (let k = 0; k < count; k += 1) {
    const map = maps[k] as Float32Array;
    const weight = scale * (weights[k] ?? 0);
    for (let at = 0; at < values.length; at += 1) values[at] = (values[at] as number) + weight * (map[at] as number);
  }
  for (let at = 0; at < values.length; at += 1) values[at] = (values[at] as number) - scale * middle;
  return values;
}
