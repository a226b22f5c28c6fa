import { useRef, useSyncExternalStore } from 'react';
import type { Box } from '../../../shared-lib/geometry/spaces.ts';
import type { TagPlace } from '../../../shared-lib/geometry/tag-placement.ts';
import type { Tag } from '../../../shared-lib/geometry/tag-plate.ts';
import { toScreen, type View } from '../../../shared-lib/geometry/viewport.ts';
import type { Mark } from '../../../shared-lib/model/mark.ts';
import type { Look } from '../look.ts';
import { shapes } from '../shapes/index.ts';
import { TagOnPhoto } from '../shapes/tag/TagOnPhoto.tsx';
import type { StageController } from '../stage-controller.ts';
import type { StageSnapshot } from '../stage-scene.ts';
import { CrossHair } from './CrossHair.tsx';
import { Handles } from './Handles.tsx';
import { type InHand, isQuiet, marksInHand, tagPlaceInHand } from './in-hand.ts';
import { Labels } from './Labels.tsx';
import { Loupe } from './Loupe.tsx';
import { tagPlaceNow } from './tag-place-now.ts';

interface OverlayProps {
  readonly controller: StageController;
  readonly marks: readonly Mark[];
  readonly tags: ReadonlyMap<string, Tag>;
  readonly picked: string | null;
}

/** What is in hand, with its handles; cross-hair and loupe over it. */
export function Overlay({ controller, marks, tags, picked }: OverlayProps) {
  // While nothing is in hand the photo may move without any of this being thought about again.
  const quiet = useRef(controller.snapshot);
  const snapshot = useSyncExternalStore(controller.subscribe, () => {
    const now = controller.snapshot;
    if (picked !== null || !isQuiet(quiet.current, now, marks)) quiet.current = now;
    return quiet.current;
  });
  const { look, view, draft, pending, crossHair, loupeAt, activeVertex, size, labels } = snapshot;
  if (!look) return null;
  const tagOf = (mark: Mark) => (mark.findingId === null ? null : (tags.get(mark.findingId) ?? null));
  const shown = marksInHand(snapshot, marks, tagOf, picked);
  const places = new Map(shown.map((mark) => [mark.key, tagPlaceInHand(mark, snapshot, look)]));
  const avoid = [
    ...[...places.values()].flatMap((place) => place?.box ?? []),
    ...(labels.length === 0 ? [] : tagBoxesOnStage(snapshot)),
  ];
  const held = picked === null ? undefined : shown.find(({ id }) => id === picked);
  return (
    <>
      {shown.map((mark) => (
        <MarkInHand key={mark.key} mark={mark} view={view} look={look} place={places.get(mark.key) ?? null} />
      ))}
      {held && (
        <Handles
          shape={held.shape}
          points={held.handles}
          isTrace={held.handles !== held.points}
          activeVertex={activeVertex}
          view={view}
          look={look}
        />
      )}
      <Labels labels={labels} view={view} size={size} look={look} avoid={avoid} />
      {crossHair && <CrossHair at={toScreen(view, crossHair)} look={look} />}
      {loupeAt && (
        <Loupe at={loupeAt} pieces={controller.pieces} draft={draft ?? pending} view={view} size={size} look={look} />
      )}
    </>
  );
}

/** Where the tags of the still picture hang now. */
function tagBoxesOnStage({ picture, view }: StageSnapshot): Box[] {
  return picture ? [...picture.places.keys()].flatMap((id) => tagPlaceNow(picture, id, view)?.box ?? []) : [];
}

interface MarkInHandProps {
  readonly mark: InHand;
  readonly view: View;
  readonly look: Look;
  readonly place: TagPlace | null;
}

function MarkInHand({ mark, view, look, place }: MarkInHandProps) {
  const Shape = shapes[mark.shape];
  const style = { look, state: mark.tag?.state ?? null, isPicked: mark.isPicked };
  return (
    <>
      <Shape points={mark.points} view={view} style={style} unsure={mark.unsure} />
      {mark.tag && place && <TagOnPhoto tag={mark.tag} place={place} look={look} isPicked={mark.isPicked} />}
    </>
  );
}
