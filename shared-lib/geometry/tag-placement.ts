import type { Stroke } from './outlines/outline.ts';
import {
  boundingBox,
  boxesMeet,
  boxHolds,
  distance,
  grownBox,
  nearestOnChain,
  segmentMeetsBox,
  segments,
} from './plane.ts';
import type { Box, Size, XY } from './spaces.ts';

/** A tag that wants a place on the stage, everything in screen pixels. */
export interface TagWish {
  readonly id: string;
  readonly strokes: readonly Stroke[];
  readonly size: Size;
  /** Where the mechanic put the tag's middle; null: find a place. */
  readonly at: XY | null;
}

export interface TagPlace {
  readonly id: string;
  readonly box: Box;
  /** From the tag's edge to the mark; null where the tag touches its mark. */
  readonly leader: { readonly from: XY; readonly to: XY } | null;
}

const edgeMarginPx = 6;
const tagGapPx = 5;
const leadersPx = [20, 38, 62, 94, 136];
/** Where a tag is looked for first: beside and off the level, as a hand would hang it. */
const directions: readonly XY[] = [
  { x: 1, y: 0.8 },
  { x: 1, y: -0.8 },
  { x: -1, y: 0.8 },
  { x: -1, y: -0.8 },
  { x: 1, y: 0 },
  { x: -1, y: 0 },
  { x: 0, y: -1 },
  { x: 0, y: 1 },
];
const touchingPx = 4;

/**
 * Places tags in the order given: inside the stage, clear of one another, of their own mark and, where it can be, of
 * other marks. A mark that the stage does not show gets no tag, and in a crowd one that finds no room goes without until
 * a closer look makes room: tags over tags could not be read, and would hide the photo.
 */
export function placeTags(wishes: readonly TagWish[], stage: Box, taken: readonly Box[] = []): Map<string, TagPlace> {
  return new Map(placeEachTag(wishes, stage, taken));
}

/** The same, one tag at a time: a crowd of hundreds takes longer than a frame. */
export function* placeEachTag(
  wishes: readonly TagWish[],
  stage: Box,
  taken: readonly Box[] = [],
): Generator<[string, TagPlace]> {
  const crowd = new Crowd();
  for (const box of taken) crowd.add(box);
  const room = grownBox(stage, -edgeMarginPx);
  const marks = new Crowd();
  const visible = wishes.flatMap((wish) => {
    const box = visibleBox(wish.strokes, stage);
    if (!box) return [];
    marks.add(box);
    return [{ wish, box }];
  });
  for (const { wish, box } of visible) {
    const found = wish.at
      ? pushedInside(boxAround(wish.at, wish.size), room)
      : bestPlace(wish, box, room, crowd, marks);
    if (!found) continue;
    crowd.add(grownBox(found, tagGapPx));
    yield [wish.id, { id: wish.id, box: found, leader: leaderBetween(found, wish.strokes) }];
  }
}

const overEdgeCost = 400;
const onOwnMarkCost = 600;
const onOtherMarkCost = 40;

function bestPlace(wish: TagWish, mark: Box, room: Box, crowd: Crowd, marks: Crowd): Box | null {
  let best: Box | null = null;
  let least = Number.POSITIVE_INFINITY;
  let order = 0;
  for (const wanted of candidates(wish, mark, room)) {
    order += 1;
    const box = pushedInside(wanted, room);
    let cost = order + (boxHolds(room, wanted) ? 0 : overEdgeCost);
    if (cost < least && crowd.meetings(box) > 0) continue;
    if (cost < least && meetsStrokes(box, wish.strokes)) cost += onOwnMarkCost;
    // One meeting may be the mark's own box, which its strokes judge better.
    if (cost < least) cost += onOtherMarkCost * Math.max(0, marks.meetings(box) - (boxesMeet(box, mark) ? 1 : 0));
    if (cost >= least) continue;
    least = cost;
    best = box;
    if (cost === order) break;
  }
  return best;
}

function* candidates({ size, strokes }: TagWish, mark: Box, room: Box): Generator<Box> {
  const centre = { x: (mark.left + mark.right) / 2, y: (mark.top + mark.bottom) / 2 };
  const reach = { x: (mark.right - mark.left + size.width) / 2, y: (mark.bottom - mark.top + size.height) / 2 };
  for (const leader of leadersPx) {
    for (const { x, y } of directions) {
      const slant = x !== 0 && y !== 0 ? 0.7 : 1;
      yield boxAround(
        { x: centre.x + x * (reach.x + leader * slant), y: centre.y + y * (reach.y + leader * slant) },
        size,
      );
    }
  }
  // A mark as large as the stage leaves no room around it: hang the tag off a point of its line.
  const leavesRoom =
    mark.right - mark.left < (room.right - room.left) / 2 && mark.bottom - mark.top < (room.bottom - room.top) / 2;
  if (leavesRoom) return;
  for (const stroke of strokes) {
    const every = Math.max(1, Math.ceil(stroke.points.length / 8));
    for (let index = 0; index < stroke.points.length; index += every) {
      const point = stroke.points[index];
      if (!point) continue;
      for (const { x, y } of directions) {
        yield boxAround({ x: point.x + x * (size.width / 2 + 16), y: point.y + y * (size.height / 2 + 16) }, size);
      }
    }
  }
}

function boxAround(centre: XY, { width, height }: Size): Box {
  return {
    left: centre.x - width / 2,
    top: centre.y - height / 2,
    right: centre.x + width / 2,
    bottom: centre.y + height / 2,
  };
}

function pushedInside(box: Box, room: Box): Box {
  const dx = Math.max(room.left - box.left, Math.min(0, room.right - box.right));
  const dy = Math.max(room.top - box.top, Math.min(0, room.bottom - box.bottom));
  return { left: box.left + dx, top: box.top + dy, right: box.right + dx, bottom: box.bottom + dy };
}

function visibleBox(strokes: readonly Stroke[], stage: Box): Box | null {
  const whole = boundingBox(strokes.flatMap((stroke) => stroke.points));
  if (!whole || !boxesMeet(whole, stage)) return null;
  if (!boxHolds(stage, whole) && !meetsStrokes(stage, strokes)) return null;
  return {
    left: Math.max(whole.left, stage.left),
    top: Math.max(whole.top, stage.top),
    right: Math.min(whole.right, stage.right),
    bottom: Math.min(whole.bottom, stage.bottom),
  };
}

function meetsStrokes(box: Box, strokes: readonly Stroke[]): boolean {
  for (const stroke of strokes) {
    for (const [a, b] of segments(stroke.points, stroke.closed)) if (segmentMeetsBox(a, b, box)) return true;
  }
  return false;
}

function leaderBetween(box: Box, strokes: readonly Stroke[]): TagPlace['leader'] {
  const centre = { x: (box.left + box.right) / 2, y: (box.top + box.bottom) / 2 };
  let to: XY | null = null;
  for (const stroke of strokes) {
    const candidate = nearestOnChain(centre, stroke.points, stroke.closed);
    if (!to || distance(candidate, centre) < distance(to, centre)) to = candidate;
  }
  if (!to) return null;
  const share = Math.max(
    Math.abs(to.x - centre.x) / ((box.right - box.left) / 2),
    Math.abs(to.y - centre.y) / ((box.bottom - box.top) / 2),
  );
  if (share <= 1) return null;
  const from = { x: centre.x + (to.x - centre.x) / share, y: centre.y + (to.y - centre.y) / share };
  return distance(from, to) < touchingPx ? null : { from, to };
}

/** Boxes found by neighbourhood, so that hundreds of tags do not each ask every other. */
class Crowd {
  private readonly cells = new Map<number, Box[]>();

  add(box: Box): void {
    for (const cell of cellsOf(box)) {
      const boxes = this.cells.get(cell);
      if (boxes) boxes.push(box);
      else this.cells.set(cell, [box]);
    }
  }

  /** How many boxes this one meets; a large one may count once for each cell it shares. */
  meetings(box: Box): number {
    let met = 0;
    for (const cell of cellsOf(box)) {
      for (const other of this.cells.get(cell) ?? []) if (boxesMeet(box, other)) met += 1;
    }
    return met;
  }
}

const cellPx = 96;
const cellsPerRow = 4096;

function cellsOf(box: Box): number[] {
  const cells: number[] = [];
  const lastColumn = Math.floor(box.right / cellPx);
  const lastRow = Math.floor(box.bottom / cellPx);
  for (let row = Math.floor(box.top / cellPx); row <= lastRow; row++) {
    for (let column = Math.floor(box.left / cellPx); column <= lastColumn; column++)
      cells.push(row * cellsPerRow + column);
  }
  return cells;
}
