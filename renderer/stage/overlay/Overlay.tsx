import { useSyncExternalStore } from 'react';
import { outlines } from '../../../shared-lib/geometry/outlines/index.ts';
import { placeTags, type TagPlace } from '../../../shared-lib/geometry/tag-placement.ts';
import { drawTagPlate, type Tag } from '../../../shared-lib/geometry/tag-plate.ts';
import { toScreen, type View } from '../../../shared-lib/geometry/viewport.ts';
import type { ImagePoint, Mark } from '../../../shared-lib/model/mark.ts';
import type { Look } from '../look.ts';
import { shapes } from '../shapes/index.ts';
import { onScreen } from '../shapes/shape-props.ts';
import { TagOnPhoto } from '../shapes/tag/TagOnPhoto.tsx';
import type { StageController, StageSnapshot } from '../stage-controller.ts';
import type { Draft } from '../tools/machine.ts';
import { CrossHair } from './CrossHair.tsx';
import { Handles } from './Handles.tsx';
import { Loupe } from './Loupe.tsx';
import { tagPlaceNow } from './tag-place-now.ts';

interface OverlayProps {
  readonly controller: StageController;
  readonly marks: readonly Mark[];
  readonly tags: ReadonlyMap<string, Tag>;
  readonly picked: string | null;
}

/** More marks than this at once are not drawn ahead of the still picture: it will have them in a moment. */
const aheadAtMost = 24;

/** What is in hand: the picked mark, the draft, what was just committed, cross-hair and loupe. */
export function Overlay({ controller, marks, tags, picked }: OverlayProps) {
  const snapshot = useSyncExternalStore(controller.subscribe, controller.getSnapshot);
  const { look, view, draft, pending, picture, crossHair, loupeAt, activeVertex, size } = snapshot;
  if (!look) return null;
  const inHand = draft ?? pending;
  const pickedMark = marks.find((mark) => mark.id === picked);
  const reshaped = inHand && inHand.markId !== null && inHand.markId === picked ? inHand : null;
  const ahead = marks.filter((mark) => mark.id !== picked && mark.id !== inHand?.markId && isAhead(mark, snapshot));
  const tagOf = (mark: Mark) => (mark.findingId === null ? null : (tags.get(mark.findingId) ?? null));
  const shown: InHand[] = [
    ...(ahead.length <= aheadAtMost ? ahead : []).map((mark) => ({
      key: mark.id,
      ...mark,
      tag: tagOf(mark),
      isPicked: false,
    })),
    ...[draft, pending].flatMap((fresh) =>
      fresh && (fresh.markId === null || fresh.markId !== picked) ? [freshMark(fresh, marks, tagOf)] : [],
    ),
    ...(pickedMark
      ? [
          {
            key: pickedMark.id,
            ...pickedMark,
            points: reshaped?.points ?? pickedMark.points,
            tagAt: reshaped?.tagAt ?? pickedMark.tagAt,
            tag: tagOf(pickedMark),
            isPicked: true,
          },
        ]
      : []),
  ];
  return (
    <>
      {shown.map((mark) => (
        <MarkInHand key={mark.key} mark={mark} view={view} look={look} place={placeOf(mark, snapshot, reshaped)} />
      ))}
      {pickedMark && (
        <Handles
          shape={pickedMark.shape}
          points={reshaped?.points ?? pickedMark.points}
          activeVertex={activeVertex}
          view={view}
          look={look}
        />
      )}
      {crossHair && <CrossHair at={toScreen(view, crossHair)} look={look} />}
      {loupeAt && <Loupe at={loupeAt} pieces={controller.pieces} draft={inHand} view={view} size={size} look={look} />}
    </>
  );

  function placeOf(mark: InHand, { picture: still, isMoving }: StageSnapshot, changed: Draft | null): TagPlace | null {
    if (!mark.tag) return null;
    const known = still && tagPlaceNow(still, mark.id, view);
    const moved = mark.tagAt && toScreen(view, mark.tagAt);
    if (known && !moved && (isMoving || changed === null)) return known;
    const at =
      moved ?? (known && { x: (known.box.left + known.box.right) / 2, y: (known.box.top + known.box.bottom) / 2 });
    const wish = {
      id: mark.id,
      strokes: outlines[mark.shape](onScreen(mark.points, view)),
      size: drawTagPlate(mark.tag),
      at,
    };
    const others = [...(picture?.places.values() ?? [])].flatMap(({ id, box }) => (id === mark.id ? [] : [box]));
    const stage = { left: 0, top: 0, right: size.width, bottom: size.height };
    return placeTags([wish], stage, others).get(mark.id) ?? null;
  }
}

interface InHand {
  readonly key: string;
  readonly id: string;
  readonly shape: Mark['shape'];
  readonly points: readonly ImagePoint[];
  readonly tagAt: ImagePoint | null;
  readonly tag: Tag | null;
  readonly isPicked: boolean;
}

function isAhead(mark: Mark, { picture }: StageSnapshot): boolean {
  return picture !== null && (!picture.drawn.has(mark) || picture.scene.picked === mark.id);
}

function freshMark(draft: Draft, marks: readonly Mark[], tagOf: (mark: Mark) => Tag | null): InHand {
  const mark = marks.find((candidate) => candidate.id === draft.markId);
  const id = draft.markId ?? 'draft';
  return {
    key: `fresh ${id}`,
    id,
    shape: draft.shape,
    points: draft.points,
    tagAt: draft.tagAt,
    tag: mark ? tagOf(mark) : null,
    isPicked: true,
  };
}

interface MarkInHandProps {
  readonly mark: InHand;
  readonly view: View;
  readonly look: Look;
  readonly place: TagPlace | null;
}

function MarkInHand({ mark, view, look, place }: MarkInHandProps) {
  const Shape = shapes[mark.shape];
  return (
    <>
      <Shape
        points={mark.points}
        view={view}
        style={{ look, state: mark.tag?.state ?? null, isPicked: mark.isPicked }}
      />
      {mark.tag && place && <TagOnPhoto tag={mark.tag} place={place} look={look} isPicked={mark.isPicked} />}
    </>
  );
}
