/**
 * Cheapest way over a grid from one pixel to another, eight neighbours, a step costing the mean of both pixels times its
 * length (Dijkstra with buckets: costs are whole numbers, so no heap is needed).
 *
 * @param cost  per pixel, 1 to 255
 * @returns  indices from start to end, or null where there is no way
 * Source: Dial, Algorithm 360: shortest-path forest with topological ordering (CACM 12, 1969).
 */
export function cheapestPath(
  cost: Uint8Array,
  width: number,
  height: number,
  start: number,
  end: number,
): Int32Array | null {
  const bucketCount = 4096;
  const mask = bucketCount - 1;
  const first = new Int32Array(bucketCount).fill(-1);
  const next = new Int32Array(cost.length);
  const previous = new Int32Array(cost.length);
  const total = new Int32Array(cost.length).fill(0x7fffffff);
  const from = new Int32Array(cost.length).fill(-1);
  const steps = [-width - 1, -width, -width + 1, -1, 1, width - 1, width, width + 1];
  total[start] = 0;
  first[0] = start;
  next[start] = previous[start] = -1;
  let waiting = 1;
  for (let now = 0; waiting > 0; now += 1) {
    const bucket = now & mask;
    for (let at = first[bucket] as number; at !== -1; at = first[bucket] as number) {
      const after = next[at] as number;
      first[bucket] = after;
      if (after !== -1) previous[after] = -1;
      waiting -= 1;
      if (at === end) return walkBack(from, start, end);
      const x = at % width;
      const own = cost[at] as number;
      for (let k = 0; k < 8; k += 1) {
        if ((x === 0 && (k === 0 || k === 3 || k === 5)) || (x === width - 1 && (k === 2 || k === 4 || k === 7)))
          continue;
        const to = at + (steps[k] as number);
        if (to < 0 || to >= width * height) continue;
        const isStraight = k === 1 || k === 3 || k === 4 || k === 6;
        // 5 and 7: the square root of two to one per cent, in whole numbers.
        const sum = now + (((own + (cost[to] as number)) * (isStraight ? 5 : 7)) >> 1);
        const known = total[to] as number;
        if (sum >= known) continue;
        if (known !== 0x7fffffff) {
          const before = previous[to] as number;
          const behind = next[to] as number;
          if (before === -1) first[known & mask] = behind;
          else next[before] = behind;
          if (behind !== -1) previous[behind] = before;
        } else waiting += 1;
        total[to] = sum;
        from[to] = at;
        const head = first[sum & mask] as number;
        next[to] = head;
        previous[to] = -1;
        if (head !== -1) previous[head] = to;
        first[sum & mask] = to;
      }
    }
  }
  return null;
}

function walkBack(from: Int32Array, start: number, end: number): Int32Array {
  let count = 1;
  for (let at = end; at !== start; at = from[at] as number) count += 1;
  const path = new Int32Array(count);
  for (let at = end, i = count - 1; i >= 0; i -= 1) {
    path[i] = at;
    at = from[at] as number;
  }
  return path;
}
