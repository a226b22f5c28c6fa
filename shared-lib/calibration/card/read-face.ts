import type { XY } from '../../geometry/spaces.ts';
import { type GreyImage, sampleGrey } from '../../tracing/grey.ts';
import { project } from '../homography.ts';
import { type CardFace, cardFaces, columns, hasDot, isDark, rows } from './face.ts';
import type { Lattice } from './lattice.ts';

/** How a net lies on a face: face = turn(net) + shift, in squares. */
export interface Placement {
  readonly face: CardFace;
  readonly turns: 0 | 1 | 2 | 3;
  readonly shift: XY;
}

interface SeenSquare {
  readonly place: XY;
  readonly isDark: boolean;
  readonly hasDot: boolean;
}

const fewestSquares = 24;
const leastAgreement = 0.92;
const dotFrom = 0.22;
/** A square so near to the bound says nothing. */
const doubt = 0.05;

export function onFace({ turns, shift }: Placement, { x, y }: XY): XY {
  const turned =
    turns === 0 ? { x, y } : turns === 1 ? { x: -y, y: x } : turns === 2 ? { x: -x, y: -y } : { x: y, y: -x };
  return { x: turned.x + shift.x, y: turned.y + shift.y };
}

/** Which face a net of squares is, and how it lies, from its dots; null where it is none. */
export function placeOnFace(image: GreyImage, lattice: Lattice): Placement | null {
  const seen = readSquares(image, lattice);
  if (seen.length < fewestSquares) return null;
  let best: { placement: Placement; share: number } | null = null;
  for (const face of cardFaces) {
    for (const turns of [0, 1, 2, 3] as const) {
      for (const shift of shiftsOf(seen, turns)) {
        const placement = { face, turns, shift };
        const share = agreement(seen, placement);
        if (share > (best?.share ?? leastAgreement)) best = { placement, share };
      }
    }
  }
  return best?.placement ?? null;
}

function shiftsOf(seen: readonly SeenSquare[], turns: Placement['turns']): XY[] {
  const turned = seen.map(({ place }) => onFace({ turns, shift: { x: 0, y: 0 } } as Placement, place));
  const xs = turned.map(({ x }) => x - 0.5);
  const ys = turned.map(({ y }) => y - 0.5);
  const shifts: XY[] = [];
  for (let x = -Math.max(...xs); x <= columns - 1 - Math.min(...xs); x += 1) {
    for (let y = -Math.max(...ys); y <= rows - 1 - Math.min(...ys); y += 1) shifts.push({ x, y });
  }
  return shifts;
}

function agreement(seen: readonly SeenSquare[], placement: Placement): number {
  let onField = 0;
  let agree = 0;
  for (const square of seen) {
    const there = onFace(placement, square.place);
    const [column, row] = [there.x - 0.5, there.y - 0.5];
    const dot = hasDot(placement.face, column, row);
    if (dot === null) continue;
    if (isDark(column, row) !== square.isDark) return 0;
    onField += 1;
    if (dot === square.hasDot) agree += 1;
  }
  return onField < fewestSquares ? 0 : agree / onField;
}

/** Every square with a known crossing at one of its corners, and whether it bears a dot. */
function readSquares(image: GreyImage, { nodes, toPicture }: Lattice): SeenSquare[] {
  const places = new Map<string, XY>();
  for (const { place } of nodes) {
    for (const [dx, dy] of [
      [0.5, 0.5],
      [-0.5, 0.5],
      [0.5, -0.5],
      [-0.5, -0.5],
    ] as const) {
      const middle = { x: place.x + dx, y: place.y + dy };
      places.set(`${middle.x},${middle.y}`, middle);
    }
  }
  const level = (place: XY, radius: number, steps: number): number | null => {
    let sum = 0;
    for (let k = 0; k < steps; k += 1) {
      const angle = (2 * Math.PI * k) / steps;
      const at = project(toPicture, {
        x: place.x + radius * Math.cos(angle),
        y: place.y + radius * Math.sin(angle),
      });
      if (!at || at.x < 0 || at.y < 0 || at.x > image.width - 1 || at.y > image.height - 1) return null;
      sum += sampleGrey(image, at);
    }
    return sum / steps;
  };
  const grounds = new Map<string, number>();
  for (const [key, place] of places) {
    const ground = level(place, 0.37, 12);
    if (ground !== null) grounds.set(key, ground);
  }
  const seen: SeenSquare[] = [];
  for (const [key, place] of places) {
    const ground = grounds.get(key);
    const middle = level(place, 0.06, 5);
    if (ground === undefined || middle === null) continue;
    const beside = [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ].flatMap(([dx = 0, dy = 0]) => grounds.get(`${place.x + dx},${place.y + dy}`) ?? []);
    if (beside.length === 0) continue;
    const other = beside.reduce((sum, value) => sum + value, 0) / beside.length;
    const dark = (Math.floor(place.x) + Math.floor(place.y)) % 2 === 0;
    const isSeen = dark ? other - ground > 5 : ground - other > 5;
    const share = (middle - ground) / (other - ground);
    if (isSeen && Math.abs(share - dotFrom) > doubt) seen.push({ place, isDark: dark, hasDot: share > dotFrom });
  }
  return seen;
}
