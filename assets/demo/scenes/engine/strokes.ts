/** Drawn lines (engraving, print, cracks) as a map of distances, so that a surface can ask how far it is from the nearest line. */
import { random } from './noise.ts';

export type Point = readonly [number, number];
export interface Stroke {
  readonly points: readonly Point[];
  /** Half width, mm, at the start and at the end. */
  readonly half: number;
  readonly halfEnd?: number;
}

const glyphs: Record<string, string> = {
  '0': '1,0 0,1 0,5 1,6 3,6 4,5 4,1 3,0 1,0',
  '1': '0.6,4.6 2.2,6 2.2,0',
  '2': '0,4.8 0.6,5.7 1.6,6 2.8,6 3.8,5.2 3.8,4 0,0 4,0',
  '3': '0.2,6 3.8,6 1.8,3.6 2.8,3.5 4,2.5 4,1 3,0 1,0 0,0.9',
  '4': '3,0 3,6 0,1.8 4,1.8',
  '5': '3.7,6 0.4,6 0.2,3.3 1.2,3.8 2.8,3.8 4,2.8 4,1.2 2.9,0 1,0 0,0.8',
  '6': '3.6,5.3 2.8,6 1.4,6 0.2,4.6 0,1.4 1,0 3,0 4,1.1 4,2.5 3,3.6 1.2,3.6 0,2.5',
  '7': '0,6 4,6 1.4,0',
  '8': '1,3.2 0.2,4 0.2,5.2 1.1,6 2.9,6 3.8,5.2 3.8,4 3,3.2 1,3.2 0,2.2 0,0.9 1,0 3,0 4,0.9 4,2.2 3,3.2',
  '9': '0.4,0.7 1.2,0 2.6,0 3.8,1.4 4,4.6 3,6 1,6 0,4.9 0,3.5 1,2.4 2.8,2.4 4,3.5',
  A: '0,0 2,6 4,0|0.75,2.1 3.25,2.1',
  B: '0,0 0,6 2.8,6 3.7,5.2 3.7,4 2.8,3.2 0,3.2|2.8,3.2 4,2.2 4,1 3,0 0,0',
  C: '4,5 3,6 1,6 0,4.8 0,1.2 1,0 3,0 4,1',
  D: '0,0 0,6 2.5,6 4,4.6 4,1.4 2.5,0 0,0',
  E: '4,6 0,6 0,0 4,0|0,3.2 3,3.2',
  F: '4,6 0,6 0,0|0,3.2 3,3.2',
  G: '4,5 3,6 1,6 0,4.8 0,1.2 1,0 3,0 4,1 4,2.7 2.4,2.7',
  H: '0,0 0,6|4,0 4,6|0,3.1 4,3.1',
  I: '2,0 2,6',
  J: '3.4,6 3.4,1.2 2.6,0 1,0 0.2,1',
  K: '0,0 0,6|4,6 0,2.4|1.4,3.6 4,0',
  L: '0,6 0,0 3.8,0',
  M: '0,0 0,6 2,2.4 4,6 4,0',
  N: '0,0 0,6 4,0 4,6',
  O: '1,0 0,1.2 0,4.8 1,6 3,6 4,4.8 4,1.2 3,0 1,0',
  P: '0,0 0,6 3,6 4,5.2 4,3.8 3,2.9 0,2.9',
  Q: '1,0 0,1.2 0,4.8 1,6 3,6 4,4.8 4,1.2 3,0 1,0|2.4,1.6 4.2,-0.4',
  R: '0,0 0,6 3,6 4,5.2 4,3.8 3,2.9 0,2.9|2,2.9 4,0',
  S: '3.8,5.2 3,6 1,6 0.1,5.1 0.1,4 1,3.2 3,2.9 4,2 4,0.9 3,0 1,0 0,0.8',
  T: '0,6 4,6|2,6 2,0',
  U: '0,6 0,1.2 1,0 3,0 4,1.2 4,6',
  V: '0,6 2,0 4,6',
  W: '0,6 0.9,0 2,4 3.1,0 4,6',
  X: '0,0 4,6|0,6 4,0',
  Y: '0,6 2,3.1 4,6|2,3.1 2,0',
  Z: '0,6 4,6 0,0 4,0',
  '-': '0.7,3 3.3,3',
  '.': '1.9,0 2.1,0.2',
  ',': '2.1,0.3 1.6,-0.9',
  '/': '0,-0.4 4,6.4',
  ':': '2,1.2 2.1,1.3|2,4 2.1,4.1',
  '°': '1.2,4.4 0.8,5.2 1.2,6 2,6 2.4,5.2 2,4.4 1.2,4.4',
  '+': '2,1 2,5|0,3 4,3',
};

/** One line of text as strokes: left end of the base line, cap height, all mm. Small letters are the same forms at 0.72 of the height. */
export function lettering(text: string, x: number, y: number, capMm: number, halfMm: number, spacing = 1.35): Stroke[] {
  const strokes: Stroke[] = [];
  let pen = x;
  for (const letter of text) {
    const capital = letter.toUpperCase();
    const scale = (capMm / 6) * (letter !== capital ? 0.74 : 1);
    const glyph = glyphs[capital];
    if (glyph) {
      for (const run of glyph.split('|')) {
        const points = run.split(' ').map((pair): Point => {
          const [gx = '0', gy = '0'] = pair.split(',');
          return [pen + Number(gx) * scale, y + Number(gy) * scale];
        });
        strokes.push({ points, half: halfMm });
      }
    }
    const narrow = '.,:°1I'.includes(capital) ? 0.72 : 1;
    pen += 4 * scale * spacing * narrow;
  }
  return strokes;
}

export function letteringWidth(text: string, capMm: number, spacing = 1.35): number {
  let width = 0;
  for (const letter of text) {
    const capital = letter.toUpperCase();
    width += 4 * (capMm / 6) * (letter !== capital ? 0.74 : 1) * spacing * ('.,:°1I'.includes(capital) ? 0.72 : 1);
  }
  return width;
}

/** Distance to the nearest stroke's edge on a grid, interpolated; negative inside the stroke. */
export class StrokeMap {
  readonly #x0: number;
  readonly #y0: number;
  readonly #perMm: number;
  readonly #columns: number;
  readonly #rows: number;
  readonly #reach: number;
  readonly #cells: Float32Array;

  constructor(x0: number, y0: number, x1: number, y1: number, perMm: number, reachMm: number, strokes: readonly Stroke[]) {
    this.#x0 = x0;
    this.#y0 = y0;
    this.#perMm = perMm;
    this.#columns = Math.ceil((x1 - x0) * perMm) + 2;
    this.#rows = Math.ceil((y1 - y0) * perMm) + 2;
    this.#reach = reachMm;
    this.#cells = new Float32Array(this.#columns * this.#rows).fill(reachMm);
    for (const stroke of strokes) this.#draw(stroke);
  }

  #draw(stroke: Stroke): void {
    const last = stroke.points.length - 1;
    for (let i = 0; i < last; i++) {
      const [ax, ay] = stroke.points[i] ?? [0, 0];
      const [bx, by] = stroke.points[i + 1] ?? [0, 0];
      const end = stroke.halfEnd ?? stroke.half;
      const ha = stroke.half + ((end - stroke.half) * i) / last;
      const hb = stroke.half + ((end - stroke.half) * (i + 1)) / last;
      const reach = this.#reach + Math.max(ha, hb);
      const c0 = Math.max(0, Math.floor((Math.min(ax, bx) - reach - this.#x0) * this.#perMm));
      const c1 = Math.min(this.#columns - 1, Math.ceil((Math.max(ax, bx) + reach - this.#x0) * this.#perMm));
      const r0 = Math.max(0, Math.floor((Math.min(ay, by) - reach - this.#y0) * this.#perMm));
      const r1 = Math.min(this.#rows - 1, Math.ceil((Math.max(ay, by) + reach - this.#y0) * this.#perMm));
      const vx = bx - ax;
      const vy = by - ay;
      const vv = vx * vx + vy * vy || 1;
      for (let r = r0; r <= r1; r++) {
        const y = this.#y0 + r / this.#perMm;
        for (let c = c0; c <= c1; c++) {
          const x = this.#x0 + c / this.#perMm;
          const t = Math.max(0, Math.min(1, ((x - ax) * vx + (y - ay) * vy) / vv));
          const dx = x - ax - vx * t;
          const dy = y - ay - vy * t;
          const d = Math.sqrt(dx * dx + dy * dy) - (ha + (hb - ha) * t);
          const at = r * this.#columns + c;
          if (d < (this.#cells[at] ?? 0)) this.#cells[at] = d;
        }
      }
    }
  }

  at(x: number, y: number): number {
    const gx = (x - this.#x0) * this.#perMm;
    const gy = (y - this.#y0) * this.#perMm;
    const c = Math.floor(gx);
    const r = Math.floor(gy);
    if (c < 0 || r < 0 || c >= this.#columns - 1 || r >= this.#rows - 1) return this.#reach;
    const fx = gx - c;
    const fy = gy - r;
    const i = r * this.#columns + c;
    const cells = this.#cells;
    const top = (cells[i] ?? 0) * (1 - fx) + (cells[i + 1] ?? 0) * fx;
    const low = (cells[i + this.#columns] ?? 0) * (1 - fx) + (cells[i + this.#columns + 1] ?? 0) * fx;
    return top * (1 - fy) + low * fy;
  }
}

/** A crack's line between two points: halved again and again, each middle thrown sideways. */
export function crackLine(from: Point, to: Point, throwShare: number, depth: number, seed: number): Point[] {
  const next = random(seed);
  let points: Point[] = [from, to];
  let share = throwShare;
  for (let level = 0; level < depth; level++) {
    const finer: Point[] = [];
    for (let i = 0; i < points.length - 1; i++) {
      const [ax, ay] = points[i] ?? from;
      const [bx, by] = points[i + 1] ?? to;
      const sideways = (next() - 0.5) * 2 * share;
      finer.push([ax, ay], [(ax + bx) / 2 - (by - ay) * sideways, (ay + by) / 2 + (bx - ax) * sideways]);
    }
    finer.push(points[points.length - 1] ?? to);
    points = finer;
    share *= 0.86;
  }
  return points;
}

export function lengthOf(points: readonly (readonly number[])[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1] ?? [];
    const b = points[i] ?? [];
    let square = 0;
    for (let k = 0; k < b.length; k++) square += ((b[k] ?? 0) - (a[k] ?? 0)) ** 2;
    sum += Math.sqrt(square);
  }
  return sum;
}
