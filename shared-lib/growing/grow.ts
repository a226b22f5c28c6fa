import type { Size, XY } from '../geometry/spaces.ts';
import { coveredShare } from './coverage.ts';
import { growBorder } from './grow-border.ts';
import { growPits } from './grow-pits.ts';
import { doubted, type Grown } from './grown.ts';
import type { Look } from './planes.ts';

/** Goes into the origin of every grown mark. */
export const growerVersion = '2';

export interface GrowRequest {
  /** A spot inside the patch, or a line drawn over it: ImagePoints. */
  readonly points: readonly XY[];
}

/** A patch holds another where it covers this share of it ... */
const holdsShare = 0.85;
/** ... and is the wider one where it is so many times as large. */
const wider = 1.25;
const farWider = 2;

/**
 * Finds the outline of a scuffed, scaled or pitted patch from a spot inside it. Where pits lie round the spot it is their
 * envelope, unless they lie in a wider patch with a border of its own.
 *
 * @returns null where nothing can be grown: too few pixels
 */
export function growArea(look: Look, photo: Size, { points }: GrowRequest): Grown | null {
  const pitted = growPits(look, photo, points);
  const bordered = growBorder(look, photo, points);
  if (!pitted || !bordered || bordered.doubts.includes('no-patch')) return pitted ?? bordered;
  // Grain that passes for pits runs over the whole photo.
  if (pitted.unsure && !bordered.unsure && pitted.areaPx2 > farWider * bordered.areaPx2) return bordered;
  if (bordered.areaPx2 > wider * pitted.areaPx2 && holds(bordered, pitted)) return doubted(bordered, 'other-extent');
  // A border found by its look lies inside that of the pits, or about there; else the spots are hardly pits.
  const isOther = bordered.doubts.includes('other-extent') || !holds(pitted, bordered);
  return isOther ? doubted(pitted, 'other-extent') : pitted;
}

const holds = ({ outline: outer }: Grown, { outline: inner }: Grown): boolean =>
  (coveredShare([outer], inner) ?? 0) > holdsShare;
