/** A slow function of two coordinates, worked out once on a grid and read back smoothly: for shapes that every step of a ray asks for. */
export class HeightMap {
  readonly #x0: number;
  readonly #y0: number;
  readonly #perMm: number;
  readonly #columns: number;
  readonly #rows: number;
  readonly #cells: Float32Array;

  constructor(x0: number, y0: number, x1: number, y1: number, perMm: number, height: (x: number, y: number) => number) {
    this.#x0 = x0;
    this.#y0 = y0;
    this.#perMm = perMm;
    this.#columns = Math.ceil((x1 - x0) * perMm) + 2;
    this.#rows = Math.ceil((y1 - y0) * perMm) + 2;
    this.#cells = new Float32Array(this.#columns * this.#rows);
    for (let r = 0; r < this.#rows; r++) {
      for (let c = 0; c < this.#columns; c++) this.#cells[r * this.#columns + c] = height(x0 + c / perMm, y0 + r / perMm);
    }
  }

  /** Outside the grid its nearest edge counts. */
  at(x: number, y: number): number {
    const gx = Math.max(0, Math.min(this.#columns - 1.001, (x - this.#x0) * this.#perMm));
    const gy = Math.max(0, Math.min(this.#rows - 1.001, (y - this.#y0) * this.#perMm));
    const c = Math.floor(gx);
    const r = Math.floor(gy);
    const fx = gx - c;
    const fy = gy - r;
    const i = r * this.#columns + c;
    const cells = this.#cells;
    const top = (cells[i] ?? 0) * (1 - fx) + (cells[i + 1] ?? 0) * fx;
    const low = (cells[i + this.#columns] ?? 0) * (1 - fx) + (cells[i + this.#columns + 1] ?? 0) * fx;
    return top * (1 - fy) + low * fy;
  }
}
