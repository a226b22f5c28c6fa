import type { Handlers } from '../context.ts';
import { placeOn, visitLayout } from '../findings/places.ts';
import { rowToReading } from './queries.ts';

export const readingHandlers: Handlers = {
  'reading.record': {
    change: (context, writer, input) => {
      const { visit, layout } = visitLayout(context, input.visitId);
      writer.about({ visitId: visit.id, machineId: visit.machine_id });
      const row = {
        id: context.newId(),
        visit_id: visit.id,
        sheet: input.sheet,
        // Version 0: taken down as typed, before any sheet has computed it.
        sheet_version: 0,
        place: placeOn(input.at, layout),
        inputs: JSON.stringify(input.inputs),
        conditions: JSON.stringify(input.conditions),
        remark: input.remark,
        not_taken_because: input.notTakenBecause,
        instrument_id: null,
        taken_at_ms: context.clock(),
        results: JSON.stringify(input.results),
      };
      writer.insert('reading', row);
      return rowToReading(row);
    },
  },
  'reading.remove': {
    change: (context, writer, { id }) => {
      const { visit } = visitLayout(context, String(writer.row('reading', id).visit_id));
      writer.about({ visitId: visit.id, machineId: visit.machine_id });
      writer.remove('reading', id);
      return null;
    },
  },
};
