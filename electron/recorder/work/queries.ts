import { HandOver, WorkItem, WorkPart, WorkProof } from '../../../shared-lib/work/records.ts';
import { build, type ReadableDb } from '../database/connection.ts';
import { all, first, type Param } from '../database/query.ts';
import type { Tables } from '../database/tables.ts';

export const workRows = all((visitId: Param<string>) =>
  build.selectFrom('work_item').selectAll().where('visit_id', '=', visitId).orderBy('position'),
);

export const partRows = all((itemId: Param<string>) =>
  build.selectFrom('work_part').selectAll().where('work_item_id', '=', itemId).orderBy('position'),
);

export const proofRows = all((itemId: Param<string>) =>
  build.selectFrom('work_proof').selectAll().where('work_item_id', '=', itemId).orderBy('id'),
);

export const rowToWork = (db: ReadableDb, row: Tables['work_item']): WorkItem =>
  WorkItem.parse({
    id: row.id,
    visitId: row.visit_id,
    findingId: row.finding_id,
    words: row.words,
    outcome: row.outcome,
    because: row.because,
    writtenAtMs: row.written_at_ms,
    parts: partRows(db, row.id).map(({ id, words, amount, fitted_part_id }) =>
      WorkPart.parse({ id, words, amount, fittedPartId: fitted_part_id }),
    ),
    proofs: proofRows(db, row.id).map(({ id, reading_id, shot_id }) =>
      WorkProof.parse({ id, readingId: reading_id, shotId: shot_id }),
    ),
  });

export const workItemsOf = (db: ReadableDb, visitId: string): WorkItem[] =>
  workRows(db, visitId).map((row) => rowToWork(db, row));

export const rowToHandOver = (row: Tables['hand_over']): HandOver =>
  HandOver.parse({
    proved: row.proved,
    limits: row.limits,
    watch: row.watch,
    comeBack: row.come_back,
    oldParts: row.old_parts,
    handedTo: row.handed_to,
  });

const handOverRow = first((visitId: Param<string>) =>
  build.selectFrom('hand_over').selectAll().where('id', '=', visitId),
);

export const handOverOf = (db: ReadableDb, visitId: string): HandOver | null => {
  const row = handOverRow(db, visitId);
  return row ? rowToHandOver(row) : null;
};

/** What stands at a place of the machine and has not come out. */
export const standingParts = all((machineId: Param<string>, path: Param<string>) =>
  build
    .selectFrom('fitted_part')
    .select(['id'])
    .where('machine_id', '=', machineId)
    .where('path', '=', path)
    .where('removed_visit_id', 'is', null)
    .where('removed_hours', 'is', null),
);

/** What came out of a place in a visit. */
export const removedParts = all((machineId: Param<string>, path: Param<string>, visitId: Param<string>) =>
  build
    .selectFrom('fitted_part')
    .select(['id'])
    .where('machine_id', '=', machineId)
    .where('path', '=', path)
    .where('removed_visit_id', '=', visitId),
);

export const proofsOfReading = all((readingId: Param<string>) =>
  build.selectFrom('work_proof').select(['id']).where('reading_id', '=', readingId),
);
