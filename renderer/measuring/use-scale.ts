import { useMemo, useState } from 'react';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Shot } from '../../shared-lib/model/shot.ts';
import { speakLocation } from '../../shared-lib/parts/speak-location.ts';
import { useAnswer, useChange } from '../api/queries.ts';
import { useAppState } from '../app/app-state.ts';
import type { MarkChange } from '../stage/tools/machine.ts';
import { emptyScale, type Reference, readyScale, type ScaleDraft } from './scale-draft.ts';
import { draftAfter, labelsOfDraft, marksOfDraft } from './scale-on-stage.ts';

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
  const marks = useMemo(() => marksOfDraft(draft, shot.id), [draft, shot.id]);
  const labels = useMemo(() => labelsOfDraft(draft, residualsPx ?? []), [draft, residualsPx]);
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
      setDraft((now) => draftAfter(now, change, pointPx));
    },
    startOver: () => {
      add.forgetError();
      setDraft({ ...emptyScale, way: draft.way, plane: draft.plane });
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
