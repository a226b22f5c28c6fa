import { AppError } from '../../../shared-lib/contract/errors.ts';
import { nextPosition } from '../choices/queries.ts';
import type { Context, Handlers } from '../context.ts';
import { placeOn, visitLayout } from '../findings/places.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { arrivalRows, earlierWorkRows, fluidRows, intakeOf } from './queries.ts';

const aboutVisit = (context: Context, writer: RecordWriter, visitId: string) => {
  const { visit, layout } = visitLayout(context, visitId);
  writer.about({ visitId, machineId: visit.machine_id });
  return layout;
};

/** The visit that an earlier piece of work belongs to. @throws AppError 'not-found' */
const workAbout = (context: Context, writer: RecordWriter, id: string) => {
  const visitId = String(writer.row('earlier_work', id).visit_id);
  return { visitId, layout: aboutVisit(context, writer, visitId) };
};

export const intakeHandlers: Handlers = {
  'earlierWork.add': {
    change: (context, writer, { visitId, what, place, did, byWhom, whenDone }) => {
      const layout = aboutVisit(context, writer, visitId);
      writer.insert('earlier_work', {
        id: context.newId(),
        visit_id: visitId,
        position: nextPosition(earlierWorkRows(context.db, visitId)),
        what,
        place: place === null ? null : placeOn(place, layout),
        did,
        by_whom: byWhom,
        when_done: whenDone,
      });
      return intakeOf(context.db, visitId);
    },
  },
  'earlierWork.change': {
    change: (context, writer, { id, what, place, did, byWhom, whenDone }) => {
      const { visitId, layout } = workAbout(context, writer, id);
      writer.update('earlier_work', id, {
        what,
        place: place && placeOn(place, layout),
        did,
        by_whom: byWhom,
        when_done: whenDone,
      });
      return intakeOf(context.db, visitId);
    },
  },
  'earlierWork.remove': {
    change: (context, writer, { id }) => {
      const { visitId } = workAbout(context, writer, id);
      writer.remove('earlier_work', id);
      return intakeOf(context.db, visitId);
    },
  },
  'fluid.note': {
    change: (context, writer, { visitId, fluid, level, look, added }) => {
      aboutVisit(context, writer, visitId);
      const there = fluidRows(context.db, visitId).find((row) => row.fluid === fluid);
      if (there) writer.update('fluid_received', there.id, { level, look, added });
      else
        writer.insert('fluid_received', {
          id: context.newId(),
          visit_id: visitId,
          fluid,
          level: level ?? 'not-looked',
          look: look ?? '',
          added: added ?? '',
        });
      return intakeOf(context.db, visitId);
    },
  },
  'fluid.remove': {
    change: (context, writer, { visitId, fluid }) => {
      aboutVisit(context, writer, visitId);
      const there = fluidRows(context.db, visitId).find((row) => row.fluid === fluid);
      if (!there) throw new AppError('not-found', { record: 'fluid', id: fluid });
      writer.remove('fluid_received', there.id);
      return intakeOf(context.db, visitId);
    },
  },
  'arrival.show': {
    change: (context, writer, { visitId, view, shotId }) => {
      aboutVisit(context, writer, visitId);
      if (shotId !== null && writer.row('shot', shotId).visit_id !== visitId)
        throw new AppError('finding-of-another-visit', {}, { field: 'shotId' });
      const there = arrivalRows(context.db, visitId).find((row) => row.view === view);
      if (there && shotId === null) writer.remove('arrival_photo', there.id);
      else if (there && shotId !== null) writer.update('arrival_photo', there.id, { shot_id: shotId });
      else if (shotId !== null)
        writer.insert('arrival_photo', { id: context.newId(), visit_id: visitId, view, shot_id: shotId });
      return intakeOf(context.db, visitId);
    },
  },
};
