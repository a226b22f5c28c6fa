import { ReturnAnswer } from '../../../shared-lib/returning/answer.ts';
import { build, type ReadableDb } from '../database/connection.ts';
import { all, first, type Param } from '../database/query.ts';
import type { Tables } from '../database/tables.ts';

export const rowToAnswer = (row: Tables['return_answer']): ReturnAnswer =>
  ReturnAnswer.parse({
    id: row.id,
    visitId: row.visit_id,
    findingId: row.finding_id,
    answer: row.answer,
    because: row.because,
    fittedPartId: row.fitted_part_id,
    answeredAtMs: row.answered_at_ms,
  });

const answerRows = all((visitId: Param<string>) =>
  build.selectFrom('return_answer').selectAll().where('visit_id', '=', visitId).orderBy('answered_at_ms'),
);

export const answersOf = (db: ReadableDb, visitId: string): ReturnAnswer[] => answerRows(db, visitId).map(rowToAnswer);

export const answerRow = first((visitId: Param<string>, findingId: Param<string>) =>
  build.selectFrom('return_answer').selectAll().where('visit_id', '=', visitId).where('finding_id', '=', findingId),
);

/** The findings of a visit that go on with an earlier one, in the bin or not. */
export const tracking = all((visitId: Param<string>, findingId: Param<string>) =>
  build
    .selectFrom('finding')
    .select(['id', 'binned', 'created_at_ms'])
    .where('visit_id', '=', visitId)
    .where('track_of', '=', findingId)
    .orderBy('binned'),
);
