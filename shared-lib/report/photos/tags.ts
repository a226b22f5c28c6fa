import type { FindingState } from '../../model/finding.ts';
import type { PrintedPoint, PrintedTag, ReportTag } from '../model.ts';
import type { Frame } from './frame.ts';

/** A stamped tag at full size on a photo: 45 by 30 steps of the drawn language, wider with a question mark or an open end. */
const stepMm = 0.34;
export const tagHeightMm = 30 * stepMm;

export function tagWidthMm(state: FindingState | 'observation'): number {
  return { suspected: 54, 'not-examined': 50, confirmed: 45, 'none-found': 45, observation: 45 }[state] * stepMm;
}

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

function overlap(a: Box, b: Box): number {
  const width = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  const height = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
  return width > 0 && height > 0 ? width * height : 0;
}

const nearestOf = (points: readonly PrintedPoint[], [x, y]: PrintedPoint): PrintedPoint =>
  points.reduce((best, point) =>
    Math.hypot(point[0] - x, point[1] - y) < Math.hypot(best[0] - x, best[1] - y) ? point : best,
  );

/** The place on a tag's edge that a leader to `target` leaves from. */
function edgeTowards(box: Box, [x, y]: PrintedPoint): PrintedPoint {
  const [middleX, middleY] = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
  const [dx, dy] = [x - middleX, y - middleY];
  const reach = Math.max(Math.abs(dx) / (box.right - box.left), Math.abs(dy) / (box.bottom - box.top)) * 2;
  return reach === 0 ? [middleX, middleY] : [middleX + dx / reach, middleY + dy / reach];
}

function leaderOf(box: Box, strokes: readonly PrintedPoint[]): PrintedTag['leader'] {
  const target = nearestOf(strokes, [(box.left + box.right) / 2, (box.top + box.bottom) / 2]);
  const from = edgeTowards(box, target);
  return Math.hypot(target[0] - from[0], target[1] - from[1]) < 1.2 ? null : [from, target];
}

/** A mark that wants its tag: where its strokes run, and where the mechanic has put the tag, if anywhere. */
export interface TagWish {
  readonly tag: ReportTag;
  readonly strokes: readonly PrintedPoint[];
  readonly middle: PrintedPoint | null;
}

/**
 * Places every tag on its photo: where the mechanic put it, else at the freest of twelve places round its mark. Tags stay
 * inside the frame and keep off other marks and tags where there is room.
 */
export function placeTags(wishes: readonly TagWish[], frame: Frame, scale: number): PrintedTag[] {
  const marks = wishes.map(({ strokes }) => boxAround(strokes));
  const taken: Box[] = [];
  return wishes.map(({ tag, strokes, middle }, index) => {
    const mark = marks[index] ?? boxAround(strokes);
    const [width, height] = [tagWidthMm(tag.state) * scale, tagHeightMm * scale];
    const margin = 1.2 * scale;
    const boxAt = ([x, y]: PrintedPoint): Box => {
      const left = Math.max(margin, Math.min(x - width / 2, frame.widthMm - width - margin));
      const top = Math.max(margin, Math.min(y - height / 2, frame.heightMm - height - margin));
      return { left, top, right: left + width, bottom: top + height };
    };
    const best = middle ? boxAt(middle) : freest(candidates(mark, width, height, scale).map(boxAt));
    taken.push(best);
    return { tag, at: [best.left, best.top], leader: leaderOf(best, strokes) };

    function freest(boxes: readonly Box[]): Box {
      const cost = (box: Box, place: number) =>
        place * 0.5 +
        3 * taken.reduce((sum, other) => sum + overlap(box, other), 0) +
        marks.reduce((sum, other) => sum + overlap(box, other), 0);
      return boxes.reduce(
        (found, box, place) => (cost(box, place) < found.cost ? { box, cost: cost(box, place) } : found),
        { box: boxAt([0, 0]), cost: Number.POSITIVE_INFINITY },
      ).box;
    }
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
