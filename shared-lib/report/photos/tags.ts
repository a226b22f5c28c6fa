import type { PrintedPoint, PrintedTag, ReportTag } from '../model.ts';
import type { Frame } from './frame.ts';

/** A stamped tag at full size on a photo: 45 by 30 steps of the drawn language, wider with a question mark or an open end. */
const stepMm = 0.34;
export const tagHeightMm = 30 * stepMm;

/** The tag grows by a figure's width for every further digit, as the template draws it. */
export function tagWidthMm({ state, number }: ReportTag): number {
  const steps = { suspected: 54, 'not-examined': 50, confirmed: 45, 'none-found': 45, observation: 45 }[state];
  return (steps + (String(number).length - 1) * 9.5) * stepMm;
}

/** Nearer than this a tag touches its mark, and needs no leader. */
const touchMm = 0.8;

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

function boxAround(points: readonly PrintedPoint[]): Box {
  return points.reduce(
    (box, [x, y]) => ({
      left: Math.min(box.left, x),
      top: Math.min(box.top, y),
      right: Math.max(box.right, x),
      bottom: Math.max(box.bottom, y),
    }),
    { left: Number.POSITIVE_INFINITY, top: Number.POSITIVE_INFINITY, right: -1e9, bottom: -1e9 },
  );
}

const middleOf = ({ left, top, right, bottom }: Box): PrintedPoint => [(left + right) / 2, (top + bottom) / 2];

function overlap(a: Box, b: Box): number {
  const width = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return width > 0 && height > 0 ? width * height : 0;
}

const nearestOf = (points: readonly PrintedPoint[], [x, y]: PrintedPoint): PrintedPoint =>
  points.reduce((best, point) =>
    Math.hypot(point[0] - x, point[1] - y) < Math.hypot(best[0] - x, best[1] - y) ? point : best,
  );

/** The nearest point of the mark, unless the tag stands on it already. */
function leaderOf(box: Box, strokes: readonly PrintedPoint[]): PrintedPoint | null {
  const [x, y] = middleOf(box);
  const target = nearestOf(strokes, [x, y]);
  const [width, height] = [box.right - box.left, box.bottom - box.top];
  const covered = Math.abs(target[0] - x) < width / 2 + touchMm && Math.abs(target[1] - y) < height / 2 + touchMm;
  return covered ? null : target;
}

/** A mark that wants its tag: where its strokes run, and where the mechanic has put the tag, if anywhere. */
export interface TagWish {
  readonly tag: ReportTag;
  readonly strokes: readonly PrintedPoint[];
  readonly middle: PrintedPoint | null;
}

/** Overlap costs; among equally free places the better liked one wins. */
function freest(boxes: readonly Box[], taken: readonly Box[], marks: readonly Box[]): Box | undefined {
  const cost = (box: Box, place: number) =>
    place * 0.5 +
    3 * taken.reduce((sum, other) => sum + overlap(box, other), 0) +
    marks.reduce((sum, other) => sum + overlap(box, other), 0);
  const costs = boxes.map(cost);
  return boxes[costs.indexOf(Math.min(...costs))];
}

/**
 * Places every tag on its photo: where the mechanic put it, else at the freest of twelve places round its mark. Tags stay
 * inside the frame and keep off other marks and tags where there is room.
 */
export function placeTags(wishes: readonly TagWish[], frame: Frame, scale: number): PrintedTag[] {
  const marks = wishes.map(({ strokes }) => boxAround(strokes));
  const taken: Box[] = [];
  return wishes.map(({ tag, strokes, middle }) => {
    const [width, height] = [tagWidthMm(tag) * scale, tagHeightMm * scale];
    const margin = 1.2 * scale;
    const boxAt = ([x, y]: PrintedPoint): Box => {
      const left = Math.max(margin, Math.min(x - width / 2, frame.widthMm - width - margin));
      const top = Math.max(margin, Math.min(y - height / 2, frame.heightMm - height - margin));
      return { left, top, right: left + width, bottom: top + height };
    };
    const places = candidates(boxAround(strokes), width, height, scale).map(boxAt);
    const best = (middle === null ? freest(places, taken, marks) : undefined) ?? boxAt(middle ?? [0, 0]);
    taken.push(best);
    return { tag, at: middleOf(best), leaderTo: leaderOf(best, strokes) };
  });
}

/** Middles of the places tried, best liked first: above to the right, above to the left, beside, below. */
function candidates(mark: Box, width: number, height: number, scale: number): PrintedPoint[] {
  const gap = 7 * scale;
  const [middleX, middleY] = [(mark.left + mark.right) / 2, (mark.top + mark.bottom) / 2];
  const [above, below] = [mark.top - gap - height / 2, mark.bottom + gap + height / 2];
  const [before, after] = [mark.left - gap - width / 2, mark.right + gap + width / 2];
  const inset = Math.min((mark.right - mark.left) / 4, width);
  return [
    [middleX + inset + width / 2, above],
    [middleX - inset - width / 2, above],
    [after, above],
    [before, above],
    [after, middleY],
    [before, middleY],
    [middleX + inset + width / 2, below],
    [middleX - inset - width / 2, below],
    [after, below],
    [before, below],
    [middleX, above],
    [middleX, below],
  ];
}
