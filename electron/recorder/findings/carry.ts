import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { OpenBefore } from '../../../shared-lib/contract/findings.ts';
import type { Finding } from '../../../shared-lib/model/finding.ts';
import type { Context } from '../context.ts';
import type { ReadableDb } from '../database/connection.ts';
import type { Tables } from '../database/tables.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { visitById, visitsOf } from '../visits/queries.ts';
import { visitRecord } from '../visits/visit-record.ts';
import { setPlaces, visitLayout } from './places.ts';
import { findingById, findingsOf, locationRows } from './queries.ts';

/** The visit of the same machine just before this one. */
const visitBefore = (db: ReadableDb, visitId: string) => {
  const visit = visitById(db, visitId);
  if (!visit) throw new AppError('not-found', { record: 'visit', id: visitId });
  const all = visitsOf(db, visit.machine_id);
  return all[all.findIndex(({ id }) => id === visitId) - 1];
};

export const openBefore = (db: ReadableDb, visitId: string): OpenBefore | null => {
  const before = visitBefore(db, visitId);
  if (!before) return null;
  const record = visitRecord(db, before.id);
  const takenUp = new Set(
    (findingsOf(db, [visitId]).get(visitId) ?? []).flatMap(({ trackOf, binned }) =>
      trackOf === null || binned ? [] : [trackOf],
    ),
  );
  const photoOf = (findingId: string) => {
    const marked = record.marks.filter((mark) => mark.findingId === findingId).map(({ shotId }) => shotId);
    const shown = record.proofs.filter((proof) => proof.findingId === findingId).map(({ shotId }) => shotId);
    const shot = record.shots.find(
      ({ id, binned }) => !binned && (marked[0] ?? shown.find((each) => each !== null)) === id,
    );
    return shot ? { shotId: shot.id, digest: shot.digest, sequence: shot.sequence } : null;
  };
  const lines = record.standing.lines.filter(({ findingId }) => !takenUp.has(findingId));
  return {
    visitId: before.id,
    date: before.date,
    trueHours: record.trueHours,
    lines: lines.map(({ findingId, number, tier, state, title }) => ({
      tag: { findingId, number, tier, state },
      title,
      words: record.findings.find(({ id }) => id === findingId)?.words ?? '',
      photo: photoOf(findingId),
    })),
  };
};

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
