import { AppError } from '../../../shared-lib/contract/errors.ts';
import { formatPath } from '../../../shared-lib/parts/format-location.ts';
import { parseLocation } from '../../../shared-lib/parts/parse-location.ts';
import { noHandOver, type WorkItem } from '../../../shared-lib/work/records.ts';
import { nextPosition } from '../choices/queries.ts';
import type { Context, Handlers } from '../context.ts';
import type { Tables } from '../database/tables.ts';
import { placeOn, visitLayout } from '../findings/places.ts';
import { findingById } from '../findings/queries.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { metersOf } from '../machines/queries.ts';
import { trueHours } from '../machines/true-hours.ts';
import { rowToVisit } from '../visits/queries.ts';
import { standingOfVisit } from '../visits/stood-visit.ts';
import { handOverOf, partRows, proofRows, removedParts, rowToWork, standingParts, workRows } from './queries.ts';
import { workOfVisit } from './visit-work.ts';

const itemAbout = (context: Context, writer: RecordWriter, id: string) => {
  const item = writer.row('work_item', id) as unknown as Tables['work_item'];
  const { visit, layout } = visitLayout(context, item.visit_id);
  writer.about({ visitId: visit.id, machineId: visit.machine_id });
  return { item, visit, layout };
};

const itemNow = ({ db }: Context, writer: RecordWriter, id: string): WorkItem =>
  rowToWork(db, writer.row('work_item', id) as unknown as Tables['work_item']);

/** A ranked finding of this very visit. @throws AppError 'not-found', 'finding-of-another-visit', 'finding-not-ranked' */
const refuseStrange = ({ db }: Context, visitId: string, findingId: string): void => {
  const finding = findingById(db, findingId);
  if (!finding) throw new AppError('not-found', { record: 'finding', id: findingId }, { field: 'findingId' });
  if (finding.visitId !== visitId) throw new AppError('finding-of-another-visit', {}, { field: 'findingId' });
  if (!standingOfVisit(db, visitId).lines.some((line) => line.findingId === findingId))
    throw new AppError('finding-not-ranked', {}, { field: 'findingId' });
};

/** Puts a part on the machine's list; what stood in its place came out now. */
const putIn = (
  context: Context,
  writer: RecordWriter,
  {
    visit,
    path,
    kind,
  }: { readonly visit: Tables['visit']; readonly path: string; readonly kind: 'new' | 'used' | 'donor' },
): string => {
  const { meter } = rowToVisit(visit);
  const hours = trueHours(meter, metersOf(context.db, visit.machine_id));
  for (const { id } of standingParts(context.db, visit.machine_id, path))
    writer.update('fitted_part', id, { removed_visit_id: visit.id, removed_hours: hours });
  const id = context.newId();
  writer.insert('fitted_part', {
    id,
    machine_id: visit.machine_id,
    path,
    kind,
    fitted_visit_id: visit.id,
    fitted_hours: hours,
    removed_visit_id: null,
    removed_hours: null,
  });
  return id;
};

/** Takes a part off the work, and off the machine's list where the work had put it there: what came out for it stands again. */
const dropPart = ({ db }: Context, writer: RecordWriter, row: Tables['work_part']): void => {
  writer.remove('work_part', row.id);
  const id = row.fitted_part_id;
  if (id === null || !writer.has('fitted_part', id)) return;
  const fitted = writer.row('fitted_part', id) as unknown as Tables['fitted_part'];
  writer.remove('fitted_part', id);
  if (fitted.fitted_visit_id === null) return;
  for (const before of removedParts(db, fitted.machine_id, fitted.path, fitted.fitted_visit_id))
    writer.update('fitted_part', before.id, { removed_visit_id: null, removed_hours: null });
};

export const workHandlers: Handlers = {
  'work.get': { read: ({ db }, { visitId }) => workOfVisit(db, visitId) },
  'work.add': {
    change: (context, writer, { visitId, findingId, words, outcome, because }) => {
      const { visit } = visitLayout(context, visitId);
      writer.about({ visitId, machineId: visit.machine_id });
      const rows = workRows(context.db, visitId);
      if (findingId !== undefined) {
        refuseStrange(context, visitId, findingId);
        if (rows.some((row) => row.finding_id === findingId)) throw new AppError('work-exists', {});
      }
      const id = context.newId();
      writer.insert('work_item', {
        id,
        visit_id: visitId,
        position: nextPosition(rows),
        finding_id: findingId ?? null,
        words,
        outcome,
        because,
        written_at_ms: context.clock(),
      });
      return itemNow(context, writer, id);
    },
  },
  'work.change': {
    change: (context, writer, { id, ...fields }) => {
      itemAbout(context, writer, id);
      writer.update('work_item', id, fields);
      return itemNow(context, writer, id);
    },
  },
  'work.remove': {
    change: (context, writer, { id }) => {
      itemAbout(context, writer, id);
      for (const row of proofRows(context.db, id)) writer.remove('work_proof', row.id);
      for (const row of partRows(context.db, id)) dropPart(context, writer, row);
      writer.remove('work_item', id);
      return null;
    },
  },
  'work.addPart': {
    change: (context, writer, { id, words, amount, fit: fitted }) => {
      const { visit, layout } = itemAbout(context, writer, id);
      const path = fitted === undefined ? null : formatPath(parseLocation(placeOn(fitted.path, layout)).path);
      const fittedPartId =
        fitted === undefined || path === null ? null : putIn(context, writer, { visit, path, kind: fitted.kind });
      writer.insert('work_part', {
        id: context.newId(),
        work_item_id: id,
        position: nextPosition(partRows(context.db, id)),
        words,
        amount,
        fitted_part_id: fittedPartId,
      });
      return itemNow(context, writer, id);
    },
  },
  'work.removePart': {
    change: (context, writer, { id, partId }) => {
      itemAbout(context, writer, id);
      const row = partRows(context.db, id).find((each) => each.id === partId);
      if (!row) throw new AppError('not-found', { record: 'part', id: partId });
      dropPart(context, writer, row);
      return itemNow(context, writer, id);
    },
  },
  'work.prove': {
    change: (context, writer, { id, readingId, shotId }) => {
      const { visit } = itemAbout(context, writer, id);
      const shown = readingId === undefined ? writer.row('shot', shotId ?? '') : writer.row('reading', readingId);
      if (shown.visit_id !== visit.id) throw new AppError('finding-of-another-visit', {});
      const there = proofRows(context.db, id).some(
        (row) => row.reading_id === (readingId ?? null) && row.shot_id === (shotId ?? null),
      );
      if (!there)
        writer.insert('work_proof', {
          id: context.newId(),
          work_item_id: id,
          reading_id: readingId ?? null,
          shot_id: shotId ?? null,
        });
      return itemNow(context, writer, id);
    },
  },
  'work.unprove': {
    change: (context, writer, { id, proofId }) => {
      itemAbout(context, writer, id);
      if (writer.row('work_proof', proofId).work_item_id !== id)
        throw new AppError('not-found', { record: 'proof', id: proofId });
      writer.remove('work_proof', proofId);
      return itemNow(context, writer, id);
    },
  },
  'handOver.write': {
    change: (context, writer, { visitId, ...fields }) => {
      const { visit } = visitLayout(context, visitId);
      writer.about({ visitId, machineId: visit.machine_id });
      const now = { ...noHandOver, ...handOverOf(context.db, visitId), ...withoutGaps(fields) };
      const { comeBack, oldParts, handedTo, ...same } = now;
      const columns = { ...same, come_back: comeBack, old_parts: oldParts, handed_to: handedTo };
      if (writer.has('hand_over', visitId)) writer.update('hand_over', visitId, columns);
      else writer.insert('hand_over', { id: visitId, ...columns });
      return now;
    },
  },
};

/** What was not sent stays as it is. */
function withoutGaps<T extends object>(fields: T): Partial<{ [K in keyof T]: NonNullable<T[K]> }> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as Partial<{
    [K in keyof T]: NonNullable<T[K]>;
  }>;
}
