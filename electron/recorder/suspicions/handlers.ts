import type { SuspicionTurn } from '../../../shared-lib/choices/records.ts';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { defectOf } from '../../../shared-lib/defects/index.ts';
import { nextPosition } from '../choices/queries.ts';
import type { Context, Handlers } from '../context.ts';
import type { Tables } from '../database/tables.ts';
import { placeOn, visitLayout } from '../findings/places.ts';
import { findingById } from '../findings/queries.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { standingOfVisit } from '../visits/stood-visit.ts';
import { evidenceRows, rowToSuspicion, turnRows } from './queries.ts';

const aboutVisit = (context: Context, writer: RecordWriter, visitId: string) => {
  const { visit, layout } = visitLayout(context, visitId);
  writer.about({ visitId, machineId: visit.machine_id });
  return layout;
};

const suspicionAbout = (context: Context, writer: RecordWriter, id: string) => {
  const visitId = String(writer.row('suspicion', id).visit_id);
  return { visitId, layout: aboutVisit(context, writer, visitId) };
};

const suspicionNow = ({ db }: Context, writer: RecordWriter, id: string) =>
  rowToSuspicion(db, writer.row('suspicion', id) as unknown as Tables['suspicion']);

const takeTurn = (
  context: Context,
  writer: RecordWriter,
  id: string,
  turn: Pick<SuspicionTurn, 'turn' | 'findingId' | 'because'>,
): void =>
  writer.insert('suspicion_turn', {
    id: context.newId(),
    suspicion_id: id,
    position: nextPosition(turnRows(context.db, id)),
    turn: turn.turn,
    finding_id: turn.findingId,
    because: turn.because,
    at_ms: context.clock(),
  });

/** An unknown kind of defect is no kind: nothing can be said of which test shows it. */
const defectOrNull = (defect: string | null): string | null => defectOf(defect)?.id ?? null;

export const suspicionHandlers: Handlers = {
  'suspicion.add': {
    change: (context, writer, { visitId, what, at, defect }) => {
      const layout = aboutVisit(context, writer, visitId);
      const id = context.newId();
      writer.insert('suspicion', {
        id,
        visit_id: visitId,
        what,
        place: at === null ? null : placeOn(at, layout),
        closed_because: null,
        created_at_ms: context.clock(),
        defect: defectOrNull(defect),
      });
      return suspicionNow(context, writer, id);
    },
  },
  'suspicion.change': {
    change: (context, writer, { id, what, at, defect }) => {
      const { layout } = suspicionAbout(context, writer, id);
      writer.update('suspicion', id, {
        what,
        place: at && placeOn(at, layout),
        defect: defect && defectOrNull(defect),
      });
      return suspicionNow(context, writer, id);
    },
  },
  'suspicion.close': {
    change: (context, writer, { id, because, again }) => {
      suspicionAbout(context, writer, id);
      writer.update('suspicion', id, { closed_because: because });
      takeTurn(context, writer, id, {
        turn: because === null ? 'taken-up' : 'given-up',
        findingId: null,
        because: because ?? again,
      });
      return suspicionNow(context, writer, id);
    },
  },
  'suspicion.find': {
    change: (context, writer, { id, findingId }) => {
      const { visitId } = suspicionAbout(context, writer, id);
      const finding = findingById(context.db, findingId);
      if (!finding) throw new AppError('not-found', { record: 'finding', id: findingId }, { field: 'findingId' });
      if (finding.visitId !== visitId) throw new AppError('finding-of-another-visit', {}, { field: 'findingId' });
      // As it counts in the standing: one that no photo or reading shows is only suspected, whatever was written.
      const line = standingOfVisit(context.db, visitId).lines.find((each) => each.findingId === findingId);
      if (line?.state !== 'confirmed')
        throw new AppError('finding-not-confirmed', { number: finding.number }, { field: 'findingId' });
      writer.update('suspicion', id, { closed_because: null });
      takeTurn(context, writer, id, { turn: 'found', findingId, because: '' });
      return suspicionNow(context, writer, id);
    },
  },
  'suspicion.bear': {
    change: (context, writer, { id, findingId, readingId, bears, because }) => {
      const { visitId } = suspicionAbout(context, writer, id);
      const shown = findingId === undefined ? writer.row('reading', readingId ?? '') : writer.row('finding', findingId);
      if (shown.visit_id !== visitId) throw new AppError('finding-of-another-visit', {});
      const rows = evidenceRows(context.db, id);
      const last = rows.findLast((row) =>
        findingId === undefined ? row.reading_id === readingId : row.finding_id === findingId,
      );
      if (last?.bears === bears) writer.update('suspicion_evidence', last.id, { because });
      else
        writer.insert('suspicion_evidence', {
          id: context.newId(),
          suspicion_id: id,
          position: nextPosition(rows),
          finding_id: findingId ?? null,
          reading_id: readingId ?? null,
          bears,
          because,
          at_ms: context.clock(),
        });
      return suspicionNow(context, writer, id);
    },
  },
};
