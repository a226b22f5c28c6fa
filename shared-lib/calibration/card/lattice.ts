import { AppError } from '../../contract/errors.ts';
import { distance } from '../../geometry/plane.ts';
import type { XY } from '../../geometry/spaces.ts';
import { directHomography, type Homography, project } from '../homography.ts';
import type { Links } from './links.ts';
import type { Saddle } from './saddles.ts';

/**
 * Crossings with whole-number places in a net of squares. From (u, v) the square towards (u + 1, v + 1) is dark where
 * u + v is even.
 */
export interface Lattice {
  readonly nodes: readonly LatticeNode[];
  /** From places in the net to the picture. */
  readonly toPicture: Homography;
}

export interface LatticeNode {
  readonly place: XY;
  readonly at: XY;
}

const fewest = 9;

/** Every connected net of links that is one plane seen in perspective, largest first. */
export function findLattices(saddles: readonly Saddle[], links: readonly Links[]): Lattice[] {
  const taken = new Set<number>();
  const lattices: Lattice[] = [];
  for (let i = 0; i < saddles.length; i += 1) {
    if (taken.has(i) || (links[i] ?? []).filter((link) => link !== null).length < 3) continue;
    const net = spread(i, saddles, links, taken);
    const lattice = net.length < fewest ? null : onePlane(net);
    if (lattice) lattices.push(lattice);
  }
  return lattices.sort((a, b) => b.nodes.length - a.nodes.length);
}

interface Reached extends LatticeNode {
  readonly saddle: number;
  /** Directions in the picture in which u and v grow here. */
  readonly u: number;
  readonly v: number;
}

function spread(start: number, saddles: readonly Saddle[], links: readonly Links[], taken: Set<number>): LatticeNode[] {
  const first = saddles[start];
  if (!first) return [];
  taken.add(start);
  const places = new Set<string>();
  const found: Reached[] = [{ saddle: start, place: { x: 0, y: 0 }, at: first, u: first.axes[0], v: first.axes[1] }];
  places.add('0,0');
  for (let next = 0; next < found.length; next += 1) {
    const here = found[next] as Reached;
    for (const link of links[here.saddle] ?? []) {
      const to = link && saddles[link.to];
      if (!link || !to || taken.has(link.to)) continue;
      const step = stepOf(link.angle, here);
      if (!step) continue;
      const place = { x: here.place.x + step.x, y: here.place.y + step.y };
      const key = `${place.x},${place.y}`;
      const [u, v] = axesLike(to, here);
      if (places.has(key) || u === null || v === null) continue;
      places.add(key);
      taken.add(link.to);
      found.push({ saddle: link.to, place, at: to, u, v });
    }
  }
  return found;
}

function stepOf(angle: number, { u, v }: Reached): XY | null {
  if (Math.cos(angle - u) > 0.9) return { x: 1, y: 0 };
  if (Math.cos(angle - u) < -0.9) return { x: -1, y: 0 };
  if (Math.cos(angle - v) > 0.9) return { x: 0, y: 1 };
  return Math.cos(angle - v) < -0.9 ? { x: 0, y: -1 } : null;
}

/** The neighbour's axes in the order in which u and v run here: swapped, as colours are, and turned the same way. */
function axesLike({ axes }: Saddle, here: Reached): [number | null, number | null] {
  const isEven = (here.place.x + here.place.y) % 2 === 0;
  const [u, v] = isEven ? [axes[1], axes[0]] : axes;
  return [turned(u, here.u), turned(v, here.v)];
}

function turned(axis: number, like: number): number | null {
  const cosine = Math.cos(axis - like);
  if (Math.abs(cosine) < 0.88) return null;
  return cosine > 0 ? axis : axis + Math.PI;
}

/** Drops what does not lie where the others say. */
function onePlane(net: readonly LatticeNode[]): Lattice | null {
  let nodes = net;
  for (let round = 0; round < 4; round += 1) {
    const toPicture = fitNet(nodes);
    if (!toPicture) return null;
    const kept = nodes.filter(({ place, at }) => {
      const there = project(toPicture, place);
      return there !== null && distance(there, at) < Math.max(1.5, 0.2 * squareAt(toPicture, place));
    });
    if (kept.length === nodes.length) return { nodes, toPicture };
    if (kept.length < fewest) return null;
    nodes = kept;
  }
  return null;
}

function fitNet(nodes: readonly LatticeNode[]): Homography | null {
  const xs = new Set(nodes.map(({ place }) => place.x));
  const ys = new Set(nodes.map(({ place }) => place.y));
  if (xs.size < 3 || ys.size < 3) return null;
  try {
    return directHomography(nodes.map(({ place, at }) => ({ from: place, to: at })));
  } catch (error) {
    // A net along one diagonal is none.
    if (error instanceof AppError) return null;
    throw error;
  }
}

/** The shorter side of a square there, px. */
export function squareAt(toPicture: Homography, place: XY): number {
  const here = project(toPicture, place);
  const right = project(toPicture, { x: place.x + 1, y: place.y });
  const below = project(toPicture, { x: place.x, y: place.y + 1 });
  return here && right && below ? Math.min(distance(here, right), distance(here, below)) : 0;
}
