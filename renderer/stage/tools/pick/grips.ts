import { hitMarks } from '../../../../shared-lib/geometry/hit-test.ts';
import { boundingBox, isInsideBox } from '../../../../shared-lib/geometry/plane.ts';
import type { Size } from '../../../../shared-lib/geometry/spaces.ts';
import {
  edgesOf,
  middleOf,
  movedBy,
  nearestVertex,
  withVertex,
  withVertexAt,
} from '../../../../shared-lib/geometry/vertices.ts';
import { withWayPoint } from '../../../../shared-lib/measuring/traced-mark.ts';
import type { ImagePoint, Mark } from '../../../../shared-lib/model/mark.ts';
import { distancePx, type PointerKind, reachPx, recorded, type ToolView } from '../machine.ts';
import { handlesOf, isLed } from './way.ts';

/** What of a mark a hand has hold of. */
export type Grip =
  | { readonly kind: 'vertex'; readonly index: number }
  /** The middle of an edge: pulling it makes a new point there. */
  | { readonly kind: 'middle'; readonly edgeIndex: number }
  | { readonly kind: 'body' }
  /** The line of a trace: pulling it leads the trace through where it is let go. */
  | { readonly kind: 'way' }
  | { readonly kind: 'tag'; readonly centre: ImagePoint };

/** Edges shorter than this on screen have no middle to pull: it would lie under the points. */
export const middleFromPx = 44;

/** The grip of the picked mark that the hand is on. */
export function gripAt(mark: Mark, at: ImagePoint, by: PointerKind, view: ToolView): Grip | null {
  const handles = handlesOf(mark);
  const near = nearestVertex(handles, at);
  const vertex = near && handles[near.index];
  if (near && vertex && distancePx(vertex, at, view) <= reachPx[by]) return { kind: 'vertex', index: near.index };
  if (isLed(mark)) return hitMarks([mark], at, view.view, reachPx[by])?.on === 'outline' ? { kind: 'way' } : null;
  const edge = edgesOf(mark.shape, mark.points).find(
    (candidate) =>
      distancePx(candidate.from, candidate.to, view) >= middleFromPx &&
      distancePx(middleOf(candidate), at, view) <= reachPx[by],
  );
  if (edge) return { kind: 'middle', edgeIndex: edge.index };
  const hit = hitMarks([mark], at, view.view, reachPx[by]);
  return hit?.on === 'outline' ? { kind: 'body' } : null;
}

export function tagAt(at: ImagePoint, { tagBoxes }: ToolView): { markId: string; centre: ImagePoint } | null {
  const found = tagBoxes.findLast(({ box }) => isInsideBox(at, box));
  if (!found) return null;
  const { left, top, right, bottom } = found.box;
  return { markId: found.markId, centre: { x: (left + right) / 2, y: (top + bottom) / 2 } };
}

/** The mark's points once the hand has gone from `from` to `to`; null when it moves the tag only. */
export function pulled(mark: Mark, grip: Grip, from: ImagePoint, to: ImagePoint, photo: Size): ImagePoint[] | null {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  switch (grip.kind) {
    case 'vertex': {
      const vertex = mark.points[grip.index];
      if (!vertex) return [...mark.points];
      return recorded(withVertexAt(mark.points, grip.index, { x: vertex.x + dx, y: vertex.y + dy }), photo);
    }
    case 'middle':
      return recorded(withVertex(mark.points, grip.edgeIndex, to), photo);
    case 'body': {
      const shift = shiftOnPhoto(mark.points, dx, dy, photo);
      return recorded(movedBy(mark.points, shift.dx, shift.dy), photo);
    }
    case 'tag':
    case 'way':
      return null;
  }
}

/** The way points of a trace once the hand has gone from `from` to `to`; null for what does not lead it. */
export function led(mark: Mark, grip: Grip, from: ImagePoint, to: ImagePoint, photo: Size): ImagePoint[] | null {
  const way = handlesOf(mark);
  if (!isLed(mark)) return null;
  if (grip.kind === 'way') return recorded(withWayPoint(mark.points, way, to, from), photo);
  const vertex = grip.kind === 'vertex' ? way[grip.index] : undefined;
  if (grip.kind !== 'vertex' || !vertex) return null;
  const moved = { x: vertex.x + to.x - from.x, y: vertex.y + to.y - from.y };
  return recorded(withVertexAt(way, grip.index, moved), photo);
}

/** A mark moved as a whole keeps its form, so it stops where its first point would leave the photo. */
function shiftOnPhoto(points: readonly ImagePoint[], dx: number, dy: number, photo: Size) {
  const box = boundingBox(points);
  if (!box) return { dx, dy };
  return {
    dx: Math.min(Math.max(dx, -0.5 - box.left), photo.width - 0.5 - box.right),
    dy: Math.min(Math.max(dy, -0.5 - box.top), photo.height - 0.5 - box.bottom),
  };
}
