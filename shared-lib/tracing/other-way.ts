import { cheapestPath } from './cheapest-path.ts';

/** A stretch of the other way that keeps off this one. */
export interface Detour {
  /** What it costs against the stretch of this way that it goes round. */
  readonly costRatio: number;
  /** How far it lies from this way in the mean, px. */
  readonly awayPx: number;
  /** Its length against the whole of this way. */
  readonly share: number;
}

/** The question is coarse, so the grid may be: edge of its cells, px. */
const cellPx = 2;
/** Farther than this from a way is off it, cells. */
const apart = 2;

/** Where the best other way between the same ends leaves this one: this one is made dear, and the way is sought again. */
export function findDetours(cost: Uint8Array, width: number, height: number, path: readonly number[]): Detour[] {
  if (path.length < 40) return [];
  const columns = Math.ceil(width / cellPx);
  const rows = Math.ceil(height / cellPx);
  const cells = cheapestOfCells(cost, width, height, columns, rows);
  const own = Int32Array.from(path, (index) => {
    const x = index % width;
    return (((index - x) / width / cellPx) | 0) * columns + ((x / cellPx) | 0);
  });
  const start = own[0];
  const end = own.at(-1);
  if (start === undefined || end === undefined) return [];
  // What the way has cost up to each of its pixels, in the cells' terms.
  const soFar = new Float64Array(path.length);
  for (let i = 1; i < path.length; i += 1) {
    const step = Math.abs((path[i] as number) - (path[i - 1] as number));
    const length = step === 1 || step === width ? 1 : Math.SQRT2;
    soFar[i] = (soFar[i - 1] as number) + (length * (cells[own[i] as number] as number)) / cellPx;
  }
  const dear = Uint8Array.from(cells);
  const isNear = new Uint8Array(cells.length);
  for (const cell of own) {
    const x = cell % columns;
    const y = (cell - x) / columns;
    for (let cy = Math.max(0, y - apart); cy <= Math.min(rows - 1, y + apart); cy += 1) {
      for (let cx = Math.max(0, x - apart); cx <= Math.min(columns - 1, x + apart); cx += 1) {
        const at = cy * columns + cx;
        if (isNear[at]) continue;
        isNear[at] = 1;
        dear[at] = Math.min(255, (cells[at] as number) * 2 + 2);
      }
    }
  }
  const other = cheapestPath(dear, columns, rows, start, end);
  if (!other) return [];
  const detours: Detour[] = [];
  for (let i = 0; i < other.length; i += 1) {
    if (isNear[other[i] as number]) continue;
    const first = i;
    while (i < other.length && !isNear[other[i] as number]) i += 1;
    detours.push(compare(cells, columns, own, soFar, other.subarray(Math.max(0, first - 1), i + 1)));
  }
  return detours;
}

/** A stretch of the other way beside the stretch of this one between the same two places. */
function compare(
  cells: Uint8Array,
  columns: number,
  own: Int32Array,
  soFar: Float64Array,
  stretch: Int32Array,
): Detour {
  const left = nearest(own, columns, stretch[0] as number).index;
  const back = nearest(own, columns, stretch.at(-1) as number).index;
  const ownCost = Math.abs((soFar[back] as number) - (soFar[left] as number));
  let cost = 0;
  let length = 0;
  let away = 0;
  for (let i = 1; i < stretch.length; i += 1) {
    const cell = stretch[i] as number;
    const step = Math.abs(cell - (stretch[i - 1] as number));
    const stepLength = step === 1 || step === columns ? 1 : Math.SQRT2;
    cost += stepLength * (cells[cell] as number);
    length += stepLength;
    away += stepLength * nearest(own, columns, cell).away;
  }
  return {
    costRatio: ownCost > 0 ? cost / ownCost : Number.POSITIVE_INFINITY,
    awayPx: (cellPx * away) / length,
    share: (cellPx * length) / own.length,
  };
}

/** Which of the way's pixels lies nearest to a cell, and how far in cells. */
function nearest(own: Int32Array, columns: number, cell: number): { index: number; away: number } {
  const x = cell % columns;
  const y = (cell - x) / columns;
  let index = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < own.length; i += 1) {
    const one = own[i] as number;
    const ownX = one % columns;
    const offX = ownX - x;
    const offY = (one - ownX) / columns - y;
    const square = offX * offX + offY * offY;
    if (square < least) {
      least = square;
      index = i;
    }
  }
  return { index, away: Math.sqrt(least) };
}

/** The cheapest pixel of every cell, so that a thin line stays whole. */
function cheapestOfCells(cost: Uint8Array, width: number, height: number, columns: number, rows: number): Uint8Array {
  const cells = new Uint8Array(columns * rows).fill(255);
  for (let y = 0; y < height; y += 1) {
    const row = Math.floor(y / cellPx) * columns;
    for (let x = 0; x < width; x += 1) {
      const cell = row + ((x / cellPx) | 0);
      const value = cost[y * width + x] as number;
      if (value < (cells[cell] as number)) cells[cell] = value;
    }
  }
  return cells;
}
