import type { XY } from '../geometry/spaces.ts';
import { drawTagPlate, type Tag } from '../geometry/tag-plate.ts';

/** A tag that wants to hang beside a drawing, and the points it belongs to. */
export interface TagToHang {
  readonly findingId: string;
  readonly tag: Tag;
  readonly points: readonly XY[];
}

export interface HungTag {
  readonly findingId: string;
  readonly tag: Tag;
  /** Its top left corner. */
  readonly at: XY;
  readonly width: number;
  readonly height: number;
  readonly leaders: readonly { readonly from: XY; readonly to: XY }[];
}

export interface HungTags {
  readonly tags: readonly HungTag[];
  /** How much the margin takes, beyond the drawing's own edge. */
  readonly margin: number;
}

/** Of the plate's own size. */
export const tagScale = 0.8;
const gap = 6;
const drop = 14;

/** Spreads lengths along a line so that none meets the next, each as near as can be to where it wants its middle. */
function spread(
  wishes: readonly { readonly middle: number; readonly length: number }[],
  from: number,
  to: number,
): number[] {
  const starts: number[] = [];
  let free = from;
  for (const { middle, length } of wishes) {
    const start = Math.max(free, middle - length / 2);
    starts.push(start);
    free = start + length + gap;
  }
  let limit = to;
  for (let index = starts.length - 1; index >= 0; index -= 1) {
    const length = wishes[index]?.length ?? 0;
    const start = Math.min(starts[index] ?? from, limit - length);
    starts[index] = start;
    limit = start - gap;
  }
  return starts;
}

/** Rows of tags, the fewest that hold them all; neighbours fall into different rows, so that each has room. */
function rowsOf<T extends { readonly length: number }>(wishes: readonly T[], room: number): T[][] {
  for (let count = 1; count <= Math.max(1, wishes.length); count += 1) {
    const rows = Array.from({ length: count }, (_, row) => wishes.filter((_wish, index) => index % count === row));
    const fits = rows.every((row) => row.reduce((sum, { length }) => sum + length + gap, -gap) <= room);
    if (fits) return rows;
  }
  return wishes.map((wish) => [wish]);
}

/**
 * Hangs tags in the margin of a drawing, each on leaders to its places: no tag over another, none over the drawing.
 *
 * @param side  above the drawing, in rows; or at its right, in columns
 * @returns  places as seen from the drawing's own top left corner: above it, y is negative
 */
export function hangTags(
  wanted: readonly TagToHang[],
  side: 'top' | 'right',
  size: { readonly width: number; readonly height: number },
): HungTags {
  if (wanted.length === 0) return { tags: [], margin: 0 };
  const onTop = side === 'top';
  const wishes = wanted
    .map(({ findingId, tag, points }) => {
      const plate = drawTagPlate(tag);
      const width = plate.width * tagScale;
      const height = plate.height * tagScale;
      const mean = points.reduce((sum, { x, y }) => sum + (onTop ? x : y), 0) / Math.max(1, points.length);
      return { findingId, tag, points, width, height, length: onTop ? width : height, middle: mean };
    })
    .sort((a, b) => a.middle - b.middle || a.tag.number - b.tag.number || a.findingId.localeCompare(b.findingId));
  const room = onTop ? size.width : size.height;
  const rows = rowsOf(wishes, room);
  const depth = Math.max(...wishes.map(({ width, height }) => (onTop ? height : width)));
  const tags = rows.flatMap((row, level) => {
    const starts = spread(row, 0, Math.max(room, ...row.map(({ length }) => length)));
    return row.map(({ findingId, tag, points, width, height }, index): HungTag => {
      const along = starts[index] ?? 0;
      const away = drop + level * (depth + gap);
      const at = onTop ? { x: along, y: -away - height } : { x: size.width + away, y: along };
      const from = onTop ? { x: at.x + width / 2, y: at.y + height } : { x: at.x, y: at.y + height / 2 };
      return { findingId, tag, at, width, height, leaders: points.map((to) => ({ from, to })) };
    });
  });
  return { tags, margin: drop + rows.length * (depth + gap) };
}
