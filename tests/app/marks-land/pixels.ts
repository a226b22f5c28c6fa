import { PNG } from 'pngjs';
import type { Spot } from './picture.ts';

type Colour = 'red' | 'yellow' | 'magenta' | 'white' | 'halo';

/** Far enough from each other and from grey that no blending at an edge turns one into another. */
const is: Readonly<Record<Colour, (red: number, green: number, blue: number) => boolean>> = {
  red: (red, green, blue) => red > 180 && green < 90 && blue < 90,
  yellow: (red, green, blue) => red > 180 && green > 180 && blue < 100,
  magenta: (red, green, blue) => red > 180 && green < 90 && blue > 180,
  white: (red, green, blue) => red > 235 && green > 235 && blue > 235,
  halo: (red, green, blue) => blue > 140 && red < 90 && green < 110,
};

/** A picture of a screen or a page that can be asked where a colour is. */
export class Pixels {
  readonly #png: PNG;
  readonly #origin: Spot;

  /** `origin` is where its upper left corner lies in what it is cut from; all spots are told from there. */
  constructor(bytes: Buffer, origin: Spot = { x: 0, y: 0 }) {
    this.#png = PNG.sync.read(bytes);
    this.#origin = origin;
  }

  /** Pixels of a colour, of the whole picture or of a circle. */
  of(colour: Colour, within?: { middle: Spot; radius: number }): Spot[] {
    const { width, height, data } = this.#png;
    const found: Spot[] = [];
    for (let y = 0; y < height; y += 1) {
      for (let x = 0; x < width; x += 1) {
        const spot = { x: x + this.#origin.x, y: y + this.#origin.y };
        if (within && distance(spot, within.middle) > within.radius) continue;
        const at = (y * width + x) * 4;
        if (is[colour](data[at] ?? 0, data[at + 1] ?? 0, data[at + 2] ?? 0)) found.push(spot);
      }
    }
    return found;
  }
}

export function distance(a: Spot, b: Spot): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/** The mean of all. */
export function middleOf(spots: readonly Spot[]): Spot {
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  return { x: mean(spots.map(({ x }) => x)), y: mean(spots.map(({ y }) => y)) };
}

/** The middle of the box round all of them: what covers a part of a ring does not move it. */
export function boxMiddleOf(spots: readonly Spot[]): Spot {
  const half = (values: readonly number[]) => (Math.min(...values) + Math.max(...values)) / 2;
  return { x: half(spots.map(({ x }) => x)), y: half(spots.map(({ y }) => y)) };
}

/** Spots that lie together, each group by its middle, from left to right. */
export function groupsOf(spots: readonly Spot[], apartPx: number): Spot[] {
  const groups: Spot[][] = [];
  for (const spot of spots) {
    const near = groups.find((group) => group.some((other) => distance(spot, other) < apartPx));
    if (near) near.push(spot);
    else groups.push([spot]);
  }
  return groups.map(middleOf).sort((a, b) => a.x - b.x);
}
