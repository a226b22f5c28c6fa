const bucketCount = 4096;
const mask = bucketCount - 1;
/** The square root of two to one per cent, in whole numbers. */
const straightStep = 5;
const diagonalStep = 7;
const blocked = 1;
const columnSteps = [-1, 0, 1, -1, 1, -1, 0, 1];
const rowSteps = [-1, -1, -1, 0, 0, 1, 1, 1];
const stepLengths = columnSteps.map((column, k) => (column !== 0 && rowSteps[k] !== 0 ? diagonalStep : straightStep));

/**
 * Cheapest way over a grid from one pixel to another, eight neighbours, a step costing the mean of both pixels times its
 * length. The search is drawn towards the end by the least that the rest of the way can cost, which leaves the answer as
 * cheap and most of the grid unvisited; costs are whole numbers, so buckets serve instead of a heap.
 *
 * @param cost  per pixel, 1 to 255
 * @returns  indices from start to end, or null where there is no way
 * Source: Hart, Nilsson and Raphael, A formal basis for the heuristic determination of minimum cost paths (1968); Dial,
 * Algorithm 360: shortest-path forest with topological ordering (CACM 12, 1969).
 */
export function cheapestPath(
  cost: Uint8Array,
  width: number,
  height: number,
  start: number,
  end: number,
): Int32Array | null {
  // A frame of blocked pixels round the grid spares every step the question whether it leaves it.
  const stride = width + 2;
  const size = stride * (height + 2);
  const framed = (at: number): number => (Math.floor(at / width) + 1) * stride + (at % width) + 1;
  const dear = new Uint8Array(size);
  let least = 255;
  for (let y = 0; y < height; y += 1) dear.set(cost.subarray(y * width, (y + 1) * width), (y + 1) * stride + 1);
  for (let i = 0; i < cost.length; i += 1) if ((cost[i] as number) < least) least = cost[i] as number;

  const first = new Int32Array(bucketCount);
  const next = new Int32Array(size);
  const previous = new Int32Array(size);
  /** Cost from the start plus two; 0 where nobody has been, `blocked` on the frame. */
  const total = new Int32Array(size);
  const cameBy = new Uint8Array(size);
  total.fill(blocked, 0, stride);
  total.fill(blocked, size - stride);
  for (let y = 1; y <= height; y += 1) total[y * stride] = total[y * stride + width + 1] = blocked;

  const offsets = Int32Array.from(columnSteps, (column, k) => (rowSteps[k] as number) * stride + column);
  const lengths = Int32Array.from(stepLengths);
  const columns = Int32Array.from(columnSteps);
  const rows = Int32Array.from(rowSteps);
  const goal = framed(end);
  const goalX = goal % stride;
  const goalY = (goal - goalX) / stride;
  const aside = least * (diagonalStep - straightStep);
  const ahead = least * straightStep;

  const from = framed(start);
  const fromX = from % stride;
  const awayX = Math.abs(goalX - fromX);
  const awayY = Math.abs(goalY - (from - fromX) / stride);
  total[from] = 2;
  let now = ahead * Math.max(awayX, awayY) + aside * Math.min(awayX, awayY);
  first[now & mask] = from;
  for (let waiting = 1; waiting > 0; now += 1) {
    const bucket = now & mask;
    for (let at = first[bucket] as number; at !== 0; at = first[bucket] as number) {
      const after = next[at] as number;
      first[bucket] = after;
      if (after !== 0) previous[after] = 0;
      waiting -= 1;
      if (at === goal) return walkBack(cameBy, offsets, stride, width, from, goal);
      const own = dear[at] as number;
      const soFar = total[at] as number;
      const x = at % stride;
      const offX = x - goalX;
      const offY = (at - x) / stride - goalY;
      for (let k = 0; k < 8; k += 1) {
        const to = at + (offsets[k] as number);
        const known = total[to] as number;
        if (known === blocked) continue;
        const sum = soFar + (((own + (dear[to] as number)) * (lengths[k] as number)) >> 1);
        if (known !== 0 && sum >= known) continue;
        const toX = Math.abs(offX + (columns[k] as number));
        const toY = Math.abs(offY + (rows[k] as number));
        const rest = toX > toY ? ahead * toX + aside * toY : ahead * toY + aside * toX;
        if (known !== 0) {
          const before = previous[to] as number;
          const behind = next[to] as number;
          if (before !== 0) next[before] = behind;
          else first[(known - 2 + rest) & mask] = behind;
          if (behind !== 0) previous[behind] = before;
        } else waiting += 1;
        total[to] = sum;
        cameBy[to] = k;
        const slot = (sum - 2 + rest) & mask;
        const head = first[slot] as number;
        next[to] = head;
        previous[to] = 0;
        if (head !== 0) previous[head] = to;
        first[slot] = to;
      }
    }
  }
  return null;
}

function walkBack(
  cameBy: Uint8Array,
  offsets: Int32Array,
  stride: number,
  width: number,
  from: number,
  goal: number,
): Int32Array {
  const path: number[] = [];
  for (let at = goal; ; at -= offsets[cameBy[at] as number] as number) {
    const x = at % stride;
    path.push(((at - x) / stride - 1) * width + x - 1);
    if (at === from) break;
  }
  return Int32Array.from(path.reverse());
}
