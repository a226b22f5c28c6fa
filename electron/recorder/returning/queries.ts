import { ReturnAnswer } from '../../../shared-lib/returning/answer.ts';
import { build, type ReadableDb } from '../database/connection.ts';
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

export const answersOf = (db: ReadableDb, visitId: string): ReturnAnswer[] =>
  db
    .all(build.selectFrom('return_answer').selectAll().where('visit_id', '=', visitId).orderBy('answered_at_ms'))
    .map(rowToAnswer);

export const answerRow = (db: ReadableDb, visitId: string, findingId: string) =>
  db.first(
    build.selectFrom('return_answer').selectAll().where('visit_id', '=', visitId).where('finding_id', '=', findingId),
  );

/** The findings of a visit that go on with an earlier one, in the bin or not. */
export const tracking = (db: ReadableDb, visitId: string, findingId: string) =>
  db.all(
    build
      .selectFrom('finding')
      .select(['id', 'binned', 'created_at_ms'])
      .where('visit_id', '=', visitId)
      .where('track_of', '=', findingId)
      .orderBy('binned'),
  );
