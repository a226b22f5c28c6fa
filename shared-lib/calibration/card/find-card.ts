import { distance } from '../../geometry/plane.ts';
import type { XY } from '../../geometry/spaces.ts';
import { type GreyImage, shrinkGrey } from '../../tracing/grey.ts';
import { fitHomography, type Homography, type PointPair, project } from '../homography.ts';
import { fitPlane, intoPhoto } from '../plane-fit.ts';
import { looksCrossed, refineCrossing, type Sides } from './crossing.ts';
import { type CardFace, columns, faceCorners, rows } from './face.ts';
import { findLattices, type Lattice, squareAt } from './lattice.ts';
import { linkSaddles } from './links.ts';
import { onFace, type Placement, placeOnFace } from './read-face.ts';
import { findSaddles } from './saddles.ts';

export interface CardPoint {
  /** In the photo. */
  readonly px: XY;
  /** On the card. */
  readonly mm: XY;
}

export interface FoundCard {
  readonly face: CardFace['name'];
  /** Where squares meet, row by row; those that something covers are left out. */
  readonly points: readonly CardPoint[];
  /** The field's four corners in the photo, from the upper left one on, as the card reads. */
  readonly outline: readonly [XY, XY, XY, XY];
}

/** Longer side of the pictures that are searched, coarse before fine: blur is no blur in a small enough one. */
const firstSide = 1100;
/** In a finer picture than this a card would be seen that is too small to measure by. */
const finestSide = 3300;
const fewestPoints = 16;
/** The shorter side of a square that a crossing is still looked up at in a smaller copy. */
const smallestLookUpPx = 45;

/**
 * Finds a calibration card in a photo.
 *
 * @param image  a whole photo; `left` and `top` are taken as 0
 * @returns null where there is none
 */
export function findCard(image: GreyImage): FoundCard | null {
  const side = Math.max(image.width, image.height);
  const first = Math.max(1, 2 ** Math.round(Math.log2(side / firstSide)));
  const factors = [first, 2 * first];
  for (let factor = first / 2; factor >= 1; factor /= 2) factors.push(factor);
  for (const factor of factors) {
    if (side / factor < 160 || (factor < first && side / factor > finestSide)) continue;
    const found = findAt(image, factor);
    if (found) return found;
  }
  return null;
}

function findAt(image: GreyImage, factor: number): FoundCard | null {
  const small = shrinkGrey(image, factor);
  const saddles = findSaddles(small);
  const lattices = findLattices(saddles, linkSaddles(small, saddles));
  for (const lattice of lattices) {
    const placement = placeOnFace(small, lattice);
    const found = placement && collect(image, factor, lattice, placement);
    if (found) return found;
  }
  return null;
}

/** Every crossing of the face, looked up anew where the net says that it must be. */
function collect(image: GreyImage, factor: number, lattice: Lattice, placement: Placement): FoundCard | null {
  const known = lattice.nodes
    .map(({ place, at }) => ({ from: onFace(placement, place), to: inLarger(at, factor) }))
    .filter(({ from }) => isCorner(from));
  if (known.length < 6) return null;
  let best: Crossings | null = null;
  for (const shrunk of lookUpFactors(squareAt(lattice.toPicture, middleOf(lattice)) * factor)) {
    const crossings = lookUpAll(shrinkGrey(image, shrunk), shrunk, known);
    if (crossings && (best === null || crossings.usualOffPx < best.usualOffPx)) best = crossings;
  }
  if (!best) return null;
  const { pairs } = best;
  const toPhoto = fitHomography(pairs);
  const outline = [
    { x: 0, y: 0 },
    { x: columns, y: 0 },
    { x: columns, y: rows },
    { x: 0, y: rows },
  ].map((corner) => project(toPhoto, corner));
  const [a, b, c, d] = outline;
  if (!a || !b || !c || !d) return null;
  const { squareMm, name } = placement.face;
  const points = pairs.map(({ from, to }) => ({ px: to, mm: { x: from.x * squareMm, y: from.y * squareMm } }));
  return { face: name, points, outline: [a, b, c, d] };
}

const inLarger = ({ x, y }: XY, factor: number): XY => ({ x: (x + 0.5) * factor - 0.5, y: (y + 0.5) * factor - 0.5 });
const inSmaller = ({ x, y }: XY, factor: number): XY => ({ x: (x + 0.5) / factor - 0.5, y: (y + 0.5) / factor - 0.5 });

function middleOf({ nodes }: Lattice): XY {
  const [x, y] = (['x', 'y'] as const).map((axis) => nodes.reduce((sum, { place }) => sum + place[axis], 0));
  return { x: (x ?? 0) / nodes.length, y: (y ?? 0) / nodes.length };
}

/**
 * Sharp squares are read best in the photo itself; large ones that are blurred or noisy in a smaller copy, where a crossing
 * is seen whole. Which they are their crossings tell.
 */
function lookUpFactors(squarePx: number): number[] {
  return [1, 2, 4].filter((factor) => factor === 1 || squarePx / factor >= smallestLookUpPx);
}

interface Crossings {
  /** From the face, in squares, to the photo. */
  readonly pairs: readonly PointPair[];
  /** Median distance from where the others say that a crossing lies. */
  readonly usualOffPx: number;
}

function lookUpAll(image: GreyImage, factor: number, known: readonly PointPair[]): Crossings | null {
  let pairs = known.map(({ from, to }) => ({ from, to: inSmaller(to, factor) }));
  let usualOffPx = Number.POSITIVE_INFINITY;
  // Twice, so that what was far from the first net is looked up from near.
  for (let round = 0; round < 2; round += 1) {
    const toPhoto = fitHomography(pairs);
    const seen = faceCorners.flatMap((corner) => {
      const at = lookUp(image, toPhoto, corner);
      return at ? [{ from: corner, to: at }] : [];
    });
    const kept = withoutStrays(seen, image);
    if (kept.pairs.length < fewestPoints) return null;
    pairs = [...kept.pairs];
    usualOffPx = factor * kept.usualOffPx;
  }
  return { pairs: pairs.map(({ from, to }) => ({ from, to: inLarger(to, factor) })), usualOffPx };
}

function isCorner({ x, y }: XY): boolean {
  return x >= 1 && y >= 1 && x <= columns - 1 && y <= rows - 1;
}

function lookUp(image: GreyImage, toPhoto: Homography, corner: XY): XY | null {
  const start = project(toPhoto, corner);
  const sides = start && sidesAt(toPhoto, corner);
  const at = sides && refineCrossing(image, start, sides);
  if (!at || !looksCrossed(image, at, sides, (corner.x + corner.y) % 2 === 0)) return null;
  return at;
}

function sidesAt(toPhoto: Homography, { x, y }: XY): Sides | null {
  const [right, left] = [project(toPhoto, { x: x + 0.5, y }), project(toPhoto, { x: x - 0.5, y })];
  const [below, above] = [project(toPhoto, { x, y: y + 0.5 }), project(toPhoto, { x, y: y - 0.5 })];
  if (!right || !left || !below || !above) return null;
  return { u: { x: right.x - left.x, y: right.y - left.y }, v: { x: below.x - above.x, y: below.y - above.y } };
}

/** Drops crossings that a shadow or a finger has moved: they do not lie where the rest say, a bent lens allowed for. */
function withoutStrays(pairs: readonly PointPair[], image: GreyImage): Crossings {
  let kept = pairs;
  let usualOffPx = Number.POSITIVE_INFINITY;
  for (let round = 0; round < 4 && kept.length >= fewestPoints; round += 1) {
    const fit = fitPlane(
      kept.map(({ from, to }) => ({ from: to, to: from })),
      { photo: image, bend: 0, bendU: 0.05, pointPx: 0.1 },
    );
    if (!fit) return { pairs: [], usualOffPx };
    const offs = kept.map(({ from, to }) => distance(intoPhoto(fit, from) ?? { x: -1e6, y: -1e6 }, to));
    usualOffPx = [...offs].sort((a, b) => a - b)[offs.length >> 1] ?? 0;
    const most = Math.max(4 * usualOffPx, 0.08);
    const next = kept.filter((_, i) => (offs[i] ?? 0) < most);
    if (next.length === kept.length) break;
    kept = next;
  }
  return { pairs: kept, usualOffPx };
}
