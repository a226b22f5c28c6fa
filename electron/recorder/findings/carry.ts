import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { Finding } from '../../../shared-lib/model/finding.ts';
import type { Context } from '../context.ts';
import type { Tables } from '../database/tables.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { visitById } from '../visits/queries.ts';
import { setPlaces, visitLayout } from './places.ts';
import { findingById, locationRows } from './queries.ts';

/**
 * Takes an earlier finding up in a later visit of the same machine: its number, place, sizes and judgements come along, as a
 * beginning. Photos and readings of then do not: until it is shown again it counts as suspected.
 *
 * @throws AppError 'not-found', 'finding-of-another-visit' when it belongs to another machine or to no earlier visit
 */
export const carryFinding = (
  context: Context,
  writer: RecordWriter,
  { visitId, findingId }: { readonly visitId: string; readonly findingId: string },
): Finding => {
  const { visit, layout } = visitLayout(context, visitId);
  writer.about({ visitId, machineId: visit.machine_id });
  const row = writer.row('finding', findingId) as unknown as Tables['finding'];
  const from = visitById(context.db, row.visit_id);
  if (from?.machine_id !== visit.machine_id || from.id === visitId) throw new AppError('finding-of-another-visit', {});
  const id = context.newId();
  writer.insert('finding', {
    ...row,
    id,
    visit_id: visitId,
    track_of: findingId,
    supersedes: null,
    superseded_because: null,
    moved_before: null,
    moved_reason: null,
    found_on: null,
    created_at_ms: context.clock(),
    binned: 0,
  });
  const places = locationRows(context.db, findingId).map(({ place }) => place);
  setPlaces(context, writer, id, places, layout);
  const carried = findingById(context.db, id);
  if (!carried) throw new Error(`finding ${id} was not written`);
  return carried;
};
