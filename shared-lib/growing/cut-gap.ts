import type { Size } from '../geometry/spaces.ts';

/** How far an outline that a disc leaves stays inside a border that is known. */
export interface CutGap {
  /** Px. */
  readonly mean: number;
  /** Variance of the mean over a stretch, times the stretch's length: px cubed. */
  readonly spread: number;
}

const directions = 8;
/** Off the picture's own rows and columns. */
const firstTurn = 0.3;
/** Cuts lie this share of the disc's radius apart, and no nearer than so many px. */
const stepShare = 1 / 3;
const leastStep = 2;
/** So far behind a cut pixels are asked for, in radii. */
const lookBack = 1.5;
/** Fewer cuts tell nothing. */
const fewestCuts = 8;

/**
 * The outermost pits of a patch lie inside its border, and so does whatever is drawn round them. How far is measured on the
 * patch itself: it is cut along straight lines, the disc rolled along what is left on one side, and what stays free between
 * disc and cut is the gap.
 *
 * @param pixels  that are set, by index
 * @param within  per pixel: how far inside the patch
 * @returns null where the patch is too small to cut
 * Source of the idea that a hull of random points is too small, and by how much: Ripley and Rasson, Finding the edge of a
 * Poisson forest (1977). Their correction takes points strewn independently; pits keep apart, so the gap is measured here.
 */
export function cutGap(
  pixels: readonly number[],
  within: Float32Array,
  { width, height }: Size,
  radius: number,
): CutGap | null {
  const half = Math.ceil(radius);
  const cap = Float64Array.from({ length: 2 * half + 1 }, (_, k) =>
    Math.sqrt(Math.max(0, radius * radius - (k - half) ** 2)),
  );
  const isDeep = (x: number, y: number): boolean => {
    const [column, row] = [Math.round(x), Math.round(y)];
    if (column < 0 || row < 0 || column >= width || row >= height) return false;
    return (within[row * width + column] as number) >= radius;
  };
  const lines: { readonly sum: number; readonly length: number }[] = [];
  for (let turn = 0; turn < directions; turn += 1) {
    const angle = (2 * Math.PI * (turn + firstTurn)) / directions;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    // Along and across the cuts, sorted by how far across.
    const turned = pixels
      .map((at) => {
        const [x, y] = [at % width, Math.floor(at / width)];
        return { along: cos * x + sin * y, across: cos * y - sin * x };
      })
      .sort((a, b) => a.across - b.across);
    const last = turned.at(-1);
    if (!last) return null;
    const from = turned.reduce((least, { along }) => Math.min(least, along), Number.POSITIVE_INFINITY);
    const to = turned.reduce((most, { along }) => Math.max(most, along), Number.NEGATIVE_INFINITY);
    const size = Math.ceil(to - from) + 1;
    const middles = new Float64Array(size);
    let start = 0;
    const step = Math.max(leastStep, stepShare * radius);
    for (let cut = (turned[0]?.across ?? 0) + radius; cut < last.across; cut += step) {
      // Where the disc's middle comes to rest above every place along the cut.
      middles.fill(cut - lookBack * radius);
      while ((turned[start]?.across ?? cut) < cut - (lookBack + 1) * radius) start += 1;
      for (let i = start; i < turned.length; i += 1) {
        const { along, across } = turned[i] as { along: number; across: number };
        if (across > cut) break;
        const first = Math.round(along - from) - half;
        for (let k = Math.max(0, -first); k < cap.length && first + k < size; k += 1) {
          const rest = across + (cap[k] as number);
          if (rest > (middles[first + k] as number)) middles[first + k] = rest;
        }
      }
      let [sum, length] = [0, 0];
      for (let place = half; place < size - half; place += 1) {
        const along = place + from;
        if (!isDeep(cos * along - sin * cut, sin * along + cos * cut)) continue;
        let edge = Number.POSITIVE_INFINITY;
        for (let k = 0; k < cap.length; k += 1)
          edge = Math.min(edge, (middles[place + k - half] as number) - (cap[k] as number));
        sum += cut - edge;
        length += 1;
      }
      if (length > 0) lines.push({ sum, length });
    }
  }
  if (lines.length < fewestCuts) return null;
  const mean = lines.reduce((sum, line) => sum + line.sum, 0) / lines.reduce((sum, { length }) => sum + length, 0);
  const spread =
    lines.reduce((sum, line) => sum + line.length * (line.sum / line.length - mean) ** 2, 0) / lines.length;
  return { mean, spread };
}
