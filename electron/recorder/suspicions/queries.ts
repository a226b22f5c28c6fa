import { Evidence, Suspicion, SuspicionTurn } from '../../../shared-lib/choices/records.ts';
import { build, type ReadableDb } from '../database/connection.ts';
import { all, type Param } from '../database/query.ts';
import type { Tables } from '../database/tables.ts';

const rowToEvidence = (row: Tables['suspicion_evidence']): Evidence =>
  Evidence.parse({
    id: row.id,
    findingId: row.finding_id,
    readingId: row.reading_id,
    bears: row.bears,
    because: row.because,
    atMs: row.at_ms,
  });

const rowToTurn = (row: Tables['suspicion_turn']): SuspicionTurn =>
  SuspicionTurn.parse({
    id: row.id,
    turn: row.turn,
    findingId: row.finding_id,
    because: row.because,
    atMs: row.at_ms,
  });

export const suspicionRows = all((visitId: Param<string>) =>
  build
    .selectFrom('suspicion')
    .selectAll()
    .where('visit_id', '=', visitId)
    .orderBy('created_at_ms')
    .orderBy('rowid' as 'id'),
);

export const evidenceRows = all((suspicionId: Param<string>) =>
  build.selectFrom('suspicion_evidence').selectAll().where('suspicion_id', '=', suspicionId).orderBy('position'),
);

/** What a reading bears on: it goes with the reading. */
export const evidenceOfReading = all((readingId: Param<string>) =>
  build.selectFrom('suspicion_evidence').select('id').where('reading_id', '=', readingId),
);

export const turnRows = all((suspicionId: Param<string>) =>
  build.selectFrom('suspicion_turn').selectAll().where('suspicion_id', '=', suspicionId).orderBy('position'),
);

export const rowToSuspicion = (db: ReadableDb, row: Tables['suspicion']): Suspicion =>
  Suspicion.parse({
    id: row.id,
    what: row.what,
    at: row.place,
    defect: row.defect,
    closedBecause: row.closed_because,
    createdAtMs: row.created_at_ms,
    evidence: evidenceRows(db, row.id).map(rowToEvidence),
    turns: turnRows(db, row.id).map(rowToTurn),
  });
