import { outlines, unsureOf } from '../../../shared-lib/geometry/outlines/index.ts';
import type { Stretches } from '../../../shared-lib/geometry/outlines/outline.ts';
import { placeTags, type TagPlace } from '../../../shared-lib/geometry/tag-placement.ts';
import type { Tag } from '../../../shared-lib/geometry/tag-plate.ts';
import { toScreen } from '../../../shared-lib/geometry/viewport.ts';
import type { ImagePoint, Mark } from '../../../shared-lib/model/mark.ts';
import type { Look } from '../look.ts';
import { onScreen } from '../shapes/shape-props.ts';
import { tagSize } from '../shapes/tag/draw-tag.ts';
import type { StageSnapshot } from '../stage-scene.ts';
import type { Draft } from '../tools/machine.ts';
import { handlesOf } from '../tools/pick/way.ts';
import { tagPlaceNow } from './tag-place-now.ts';

/** A mark as the overlay draws it: where the hand has it now. */
export interface InHand {
  readonly key: string;
  readonly id: string;
  readonly shape: Mark['shape'];
  readonly points: readonly ImagePoint[];
  /** Rings that a hand can take: the points themselves, or the way points of a trace. */
  readonly handles: readonly ImagePoint[];
  readonly unsure: Stretches;
  readonly tagAt: ImagePoint | null;
  readonly tag: Tag | null;
  readonly isPicked: boolean;
  /** It is being changed at this moment, so its tag's old place may not fit. */
  readonly isChanging: boolean;
}

/** More marks than this at once are not drawn ahead of the still picture: it will have them in a moment. */
const aheadAtMost = 24;

/** The picked mark, the draft, what was just committed, and marks that the still picture does not show yet. */
export function marksInHand(
  { draft, pending, picture }: StageSnapshot,
  marks: readonly Mark[],
  tagOf: (mark: Mark) => Tag | null,
  picked: string | null,
): InHand[] {
  // A second gesture on a mark builds on the first, so it alone is shown.
  const isFollowedUp = draft !== null && draft.markId !== null && draft.markId === pending?.markId;
  const changing = [draft, isFollowedUp ? null : pending].filter((fresh) => fresh !== null);
  const changedIds = new Set(changing.map(({ markId }) => markId));
  const still = (mark: Mark, isPicked: boolean): InHand => ({
    key: mark.id,
    ...mark,
    handles: handlesOf(mark),
    unsure: unsureOf(mark),
    tag: tagOf(mark),
    isPicked,
    isChanging: false,
  });
  const ahead = marks.filter(
    (mark) =>
      picture !== null &&
      mark.id !== picked &&
      !changedIds.has(mark.id) &&
      (!picture.drawn.has(mark) || picture.scene.picked === mark.id),
  );
  const pickedMark = marks.find((mark) => mark.id === picked && !changedIds.has(mark.id));
  return [
    ...(ahead.length > aheadAtMost ? [] : ahead.map((mark) => still(mark, false))),
    ...(pickedMark ? [still(pickedMark, true)] : []),
    ...changing.map((fresh, index) => changed(fresh, index, marks, tagOf)),
  ];
}

/**
 * The overlay is empty and stays so. What it last drew counts as well as what it would draw now: a mark that it drew ahead of
 * the still picture has to be taken off once the picture has it.
 */
export function isQuiet(before: StageSnapshot, now: StageSnapshot, marks: readonly Mark[]): boolean {
  return before.look === now.look && isEmpty(before, marks) && isEmpty(now, marks);
}

function isEmpty(
  { draft, pending, crossHair, loupeAt, labels, picture }: StageSnapshot,
  marks: readonly Mark[],
): boolean {
  return (
    draft === null &&
    pending === null &&
    crossHair === null &&
    loupeAt === null &&
    labels.length === 0 &&
    picture !== null &&
    picture.scene.picked === null &&
    marks.every((mark) => picture.drawn.has(mark))
  );
}

function changed(draft: Draft, index: number, marks: readonly Mark[], tagOf: (mark: Mark) => Tag | null): InHand {
  const mark = marks.find(({ id }) => id === draft.markId);
  return {
    key: draft.markId ?? `new ${index}`,
    id: draft.markId ?? '',
    shape: draft.shape,
    points: draft.points,
    handles: draft.handles ?? draft.points,
    unsure: [],
    tagAt: draft.tagAt ?? mark?.tagAt ?? null,
    tag: mark ? tagOf(mark) : null,
    isPicked: true,
    isChanging: true,
  };
}

/** Where a mark's tag hangs: as in the still picture while nothing of it changes, else placed for it alone. */
export function tagPlaceInHand(mark: InHand, { picture, view, size }: StageSnapshot, look: Look): TagPlace | null {
  if (!mark.tag) return null;
  const known = picture && tagPlaceNow(picture, mark.id, view);
  if (known && !mark.isChanging) return known;
  const middle = known && { x: (known.box.left + known.box.right) / 2, y: (known.box.top + known.box.bottom) / 2 };
  const wish = {
    id: mark.id,
    strokes: outlines[mark.shape](onScreen(mark.points, view)),
    size: tagSize(mark.tag, look),
    at: mark.tagAt ? toScreen(view, mark.tagAt) : middle,
  };
  const others = [...(picture?.places.values() ?? [])].flatMap(({ id, box }) => (id === mark.id ? [] : [box]));
  const stage = { left: 0, top: 0, right: size.width, bottom: size.height };
  return placeTags([wish], stage, others).get(mark.id) ?? null;
}
