import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { Context, Handlers } from '../context.ts';
import type { ReadableDb } from '../database/connection.ts';
import type { Tables } from '../database/tables.ts';
import { placeOn } from '../findings/places.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { visitsOf } from '../visits/queries.ts';
import { fittedPartsOf, newestLayout, rowToFittedPart, rowToLayout } from './queries.ts';

type Row = Tables['fitted_part'];

const placeOnMachine = (db: ReadableDb, machineId: string, path: string): string => {
  const layout = newestLayout(db, machineId);
  if (!layout) throw new AppError('not-found', { record: 'machine', id: machineId });
  return placeOn(path, rowToLayout(layout).layout);
};

/** Fitted and taken out in visits of this very machine, and in that order. */
const check = (db: ReadableDb, row: Row): void => {
  const visits = visitsOf(db, row.machine_id).map(({ id }) => id);
  for (const id of [row.fitted_visit_id, row.removed_visit_id]) {
    if (id !== null && !visits.includes(id)) throw new AppError('not-found', { record: 'visit', id });
  }
  if (row.fitted_hours !== null && row.removed_hours !== null && row.removed_hours < row.fitted_hours) {
    throw new AppError(
      'part-out-before-in',
      { fitted: row.fitted_hours, removed: row.removed_hours },
      { field: 'hours' },
    );
  }
  if (row.fitted_visit_id !== null && row.removed_visit_id !== null) {
    if (visits.indexOf(row.removed_visit_id) < visits.indexOf(row.fitted_visit_id)) {
      throw new AppError('part-out-before-in', {}, { field: 'visitId' });
    }
  }
};

const rowAbout = (writer: RecordWriter, id: string, visitId: string | null = null): Row => {
  const row = writer.row('fitted_part', id) as unknown as Row;
  const about = visitId ?? row.removed_visit_id ?? row.fitted_visit_id;
  writer.about({ machineId: row.machine_id, ...(about === null ? {} : { visitId: about }) });
  return row;
};

const write = ({ db }: Context, writer: RecordWriter, row: Row) => {
  check(db, row);
  const { id, machine_id: _, ...columns } = row;
  writer.update('fitted_part', id, columns);
  return rowToFittedPart(row);
};

export const fittedPartHandlers: Handlers = {
  'part.fit': {
    change: ({ db, newId }, writer, { machineId, path, kind, fittedVisitId, fittedHours }) => {
      writer.about({ machineId, ...(fittedVisitId === null ? {} : { visitId: fittedVisitId }) });
      const row: Row = {
        id: newId(),
        machine_id: machineId,
        path: placeOnMachine(db, machineId, path),
        kind,
        fitted_visit_id: fittedVisitId,
        fitted_hours: fittedHours,
        removed_visit_id: null,
        removed_hours: null,
      };
      check(db, row);
      for (const there of fittedPartsOf(db, machineId)) {
        const isIn = there.removedVisitId === null && there.removedHours === null;
        if (there.path !== row.path || !isIn || (fittedVisitId === null && fittedHours === null)) continue;
        const out = { removed_visit_id: fittedVisitId, removed_hours: fittedHours };
        check(db, { ...(writer.row('fitted_part', there.id) as unknown as Row), ...out });
        writer.update('fitted_part', there.id, out);
      }
      writer.insert('fitted_part', row);
      return rowToFittedPart(row);
    },
  },
  'part.change': {
    change: (context, writer, { id, path, kind, fittedVisitId, fittedHours, removedVisitId, removedHours }) => {
      const row = rowAbout(writer, id, fittedVisitId ?? null);
      return write(context, writer, {
        ...row,
        path: path === undefined ? row.path : placeOnMachine(context.db, row.machine_id, path),
        kind: kind ?? row.kind,
        fitted_visit_id: fittedVisitId === undefined ? row.fitted_visit_id : fittedVisitId,
        fitted_hours: fittedHours === undefined ? row.fitted_hours : fittedHours,
        removed_visit_id: removedVisitId === undefined ? row.removed_visit_id : removedVisitId,
        removed_hours: removedHours === undefined ? row.removed_hours : removedHours,
      });
    },
  },
  'part.strike': {
    change: (_context, writer, { id }) => {
      rowAbout(writer, id);
      writer.remove('fitted_part', id);
      return null;
    },
  },
  'part.remove': {
    change: (context, writer, { id, visitId, hours }) => {
      const row = rowAbout(writer, id, visitId);
      return write(context, writer, { ...row, removed_visit_id: visitId, removed_hours: hours });
    },
  },
};
