import type { Features } from './features.ts';
import { leastSpread } from './features.ts';

const levelCount = 1024;
const levelsPerUnit = 40;

export interface Flood {
  /** Per pixel: how unlike the seeds the way to it has to go, as a level; 0 at the seeds. */
  readonly reachedAt: Uint16Array;
  /** The level inside which the region lies. */
  readonly level: number;
  /** How much stronger the border at that level is than borders are on the whole. */
  readonly distinctness: number;
}

/**
 * Grows a region from seed pixels: pixels join in the order of how unlike the seeds they are, and the growing stops where
 * the edge met along the whole border is strongest.
 *
 * @param seeds  pixels, by index
 * @param fewest, most  pixels that a region may have
 * Source: Hojjatoleslami and Kittler, Region growing: a new approach (IEEE Transactions on Image Processing 7, 1998), whose
 * average contrast is the measure; the order by the worst step of the best way is that of a watershed.
 */
export function floodFrom(features: Features, seeds: readonly number[], fewest: number, most: number): Flood | null {
  const { width, height, maps } = features;
  const size = width * height;
  const { unlike, spreads } = unlikeness(features, seeds);
  const reachedAt = new Uint16Array(size).fill(levelCount);
  const next = new Int32Array(size).fill(-1);
  const first = new Int32Array(levelCount + 1).fill(-1);
  const put = (at: number, level: number): void => {
    reachedAt[at] = level;
    next[at] = first[level] as number;
    first[level] = at;
  };
  for (const seed of seeds) if (reachedAt[seed] === levelCount) put(seed, 0);
  const areas = new Float64Array(levelCount + 1);
  for (let level = 0; level < levelCount; level += 1) {
    for (let at = first[level] as number; at !== -1; at = first[level] as number) {
      first[level] = next[at] as number;
      areas[level] = (areas[level] as number) + 1;
      const x = at % width;
      const join = (to: number): void => {
        if (reachedAt[to] === levelCount) put(to, Math.max(level, unlike[to] as number));
      };
      if (x > 0) join(at - 1);
      if (x < width - 1) join(at + 1);
      if (at >= width) join(at - width);
      if (at < size - width) join(at + width);
    }
  }
  return strongestBorder(reachedAt, maps, spreads, { width, height }, areas, fewest, most);
}

/** How many spreads every pixel is from the seeds' mean, as a level. */
function unlikeness({ maps }: Features, seeds: readonly number[]): { unlike: Uint16Array; spreads: number[] } {
  const size = maps[0]?.length ?? 0;
  const squares = new Float32Array(size);
  const spreads: number[] = [];
  for (const [index, map] of maps.entries()) {
    let sum = 0;
    let sumOfSquares = 0;
    for (const seed of seeds) {
      const value = map[seed] as number;
      sum += value;
      sumOfSquares += value * value;
    }
    const mean = sum / seeds.length;
    const spread = Math.sqrt(Math.max(0, sumOfSquares / seeds.length - mean * mean)) + (leastSpread[index] ?? 1);
    spreads.push(spread);
    for (let i = 0; i < size; i += 1) {
      const off = ((map[i] as number) - mean) / spread;
      squares[i] = (squares[i] as number) + off * off;
    }
  }
  const unlike = new Uint16Array(size);
  for (let i = 0; i < size; i += 1) {
    // Finer near the seeds than far away, so that both faint and strong borders have levels to choose from.
    unlike[i] = Math.min(
      levelCount - 1,
      Math.floor(levelsPerUnit * 2.5 * Math.log(1 + Math.sqrt(squares[i] as number))),
    );
  }
  return { unlike, spreads };
}

/** A border nearly as strong as the strongest one, but met earlier, is the region's own. */
const nearlyAsStrong = 0.8;

function strongestBorder(
  reachedAt: Uint16Array,
  maps: readonly Float32Array[],
  spreads: readonly number[],
  { width, height }: { readonly width: number; readonly height: number },
  areas: Float64Array,
  fewest: number,
  most: number,
): Flood | null {
  // Every pair of neighbours is on the border of all regions that hold one of them and not the other.
  const edges = new Float64Array(levelCount + 1);
  const pairs = new Float64Array(levelCount + 1);
  const meet = (a: number, b: number): void => {
    const low = Math.min(reachedAt[a] as number, reachedAt[b] as number);
    const high = Math.max(reachedAt[a] as number, reachedAt[b] as number);
    if (low === high) return;
    let square = 0;
    for (let k = 0; k < maps.length; k += 1) {
      const map = maps[k] as Float32Array;
      const step = ((map[a] as number) - (map[b] as number)) / (spreads[k] as number);
      square += step * step;
    }
    const edge = Math.sqrt(square);
    edges[low] = (edges[low] as number) + edge;
    edges[high] = (edges[high] as number) - edge;
    pairs[low] = (pairs[low] as number) + 1;
    pairs[high] = (pairs[high] as number) - 1;
  };
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const at = y * width + x;
      if (x < width - 1) meet(at, at + 1);
      if (y < height - 1) meet(at, at + width);
    }
  }
  const strengths = new Float64Array(levelCount);
  let [edge, border, area, strongest, sum, count] = [0, 0, 0, 0, 0, 0];
  for (let level = 0; level < levelCount; level += 1) {
    edge += edges[level] as number;
    border += pairs[level] as number;
    area += areas[level] as number;
    if (area < fewest || area > most || border < 1) continue;
    strengths[level] = edge / border;
    strongest = Math.max(strongest, strengths[level] as number);
    sum += strengths[level] as number;
    count += 1;
  }
  if (count === 0) return null;
  let level = strengths.findIndex((strength) => strength >= nearlyAsStrong * strongest);
  // On to the top of that rise.
  while (level + 1 < levelCount && (strengths[level + 1] as number) > (strengths[level] as number)) level += 1;
  return { reachedAt, level, distinctness: (strengths[level] as number) / (sum / count) };
}
