import { useMemo, useState } from 'react';
import type { SeenCard } from '../../shared-lib/contract/card.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Shot } from '../../shared-lib/model/shot.ts';
import { speakLocation } from '../../shared-lib/parts/speak-location.ts';
import { useAnswer, useChange } from '../api/queries.ts';
import { useAppState } from '../app/app-state.ts';
import type { MarkChange } from '../stage/tools/machine.ts';
import { emptyScale, type Reference, readyScale, type ScaleDraft } from './scale-draft.ts';
import { draftAfter, labelsOfDraft, marksOfCard, marksOfDraft } from './scale-on-stage.ts';

/** What the face is called where nobody has named it. */
const cardsFace = 'face that the card lies on';

/** Never sent: the question is asked only once there is a reference. */
const nothingYet: Reference = {
  method: 'known-length',
  ends: [
    { x: 0, y: 0 },
    { x: 0, y: 0 },
  ],
  lengthMm: 0,
};

/** The scale being set on the photo on the stage. Each photo keeps its own draft while the page stands. */
export function useScale(record: VisitRecord, shot: Shot, isOpen: boolean) {
  const { shop } = useAppState();
  const [drafts, setDrafts] = useState<ReadonlyMap<string, ScaleDraft>>(new Map());
  const add = useChange('calibration.add');
  const find = useChange('calibration.findCard');
  /** Outlined for as long as nothing else is set. */
  const [card, setCard] = useState<{ readonly shotId: string; readonly seen: SeenCard } | null>(null);
  const [askedOf, setAskedOf] = useState<string | null>(null);
  const seen = card?.shotId === shot.id ? card.seen : null;
  const draft = drafts.get(shot.id) ?? emptyScale;
  const component = draft.component === undefined ? shot.component : draft.component;
  const plane = draft.plane ?? (component === null ? '' : speakLocation(component, record.layout.layout));
  const ready = readyScale(draft, plane, shop.units);
  const { reference } = ready;
  const answer = useAnswer(
    'calibration.try',
    { shotId: shot.id, reference: reference ?? nothingYet },
    { when: isOpen && reference !== null, keepPrevious: true },
  );
  const fit = reference === null || answer.error !== null ? null : (answer.data ?? null);
  const residualsPx = fit?.residualsPx ?? null;
  const marks = useMemo(
    () => (seen ? marksOfCard(seen, shot.id) : marksOfDraft(draft, shot.id)),
    [seen, draft, shot.id],
  );
  const labels = useMemo(() => (seen ? [] : labelsOfDraft(draft, residualsPx ?? [])), [seen, draft, residualsPx]);
  const setDraft = (next: ScaleDraft | ((now: ScaleDraft) => ScaleDraft)) =>
    setDrafts((all) =>
      new Map(all).set(shot.id, typeof next === 'function' ? next(all.get(shot.id) ?? emptyScale) : next),
    );
  return {
    draft,
    setDraft,
    component,
    plane,
    missing: ready.missing,
    fit,
    /** Why what is set is no reference, or why it was not written. */
    refusal: add.error ?? (reference === null ? null : answer.error),
    marks,
    labels,
    commit: (change: MarkChange, pointPx: number) => {
      add.forgetError();
      setCard(null);
      setDraft((now) => draftAfter(now, change, pointPx));
    },
    startOver: () => {
      add.forgetError();
      setCard(null);
      setDraft({ ...emptyScale, way: draft.way, plane: draft.plane });
    },
    /** The card that was found in this photo and kept as a scale. */
    card: seen,
    isFinding: find.isRunning,
    cardRefusal: askedOf === shot.id ? find.error : null,
    /** Finds the card, draws it, and keeps it as the scale of the face it lies on. */
    takeCard: (barMm: number | null) => {
      add.forgetError();
      setCard(null);
      setAskedOf(shot.id);
      find.run({ shotId: shot.id, barMm }, (found) => {
        const named = plane.trim() === '' ? cardsFace : plane;
        add.run({ shotId: shot.id, reference: { ...found.reference, plane: named }, component }, () => {
          setCard({ shotId: shot.id, seen: found });
          setDraft((now) => ({ ...emptyScale, way: now.way, plane: now.plane }));
        });
      });
    },
    isKeeping: add.isRunning,
    keep: (onKept: () => void) => {
      if (reference === null) return;
      add.run({ shotId: shot.id, reference, component }, () => {
        setDraft(emptyScale);
        onKept();
      });
    },
  };
}

export type Scale = ReturnType<typeof useScale>;
