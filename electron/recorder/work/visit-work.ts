import type { VisitWork } from '../../../shared-lib/contract/work.ts';
import { saysWork, workOf } from '../../../shared-lib/work/work-of.ts';
import { choiceRows, decisionRows, rowToChoice, rowToDecision } from '../choices/queries.ts';
import type { ReadableDb } from '../database/connection.ts';
import { type StoodVisit, stoodVisit } from '../visits/stood-visit.ts';
import { handOverOf, workItemsOf } from './queries.ts';

/** What was written down of the work. */
export type WrittenWork = Pick<VisitWork, 'items' | 'handOver'>;

export const writtenWork = (db: ReadableDb, visitId: string): WrittenWork => ({
  items: workItemsOf(db, visitId),
  handOver: handOverOf(db, visitId),
});

/** The work that was done, against the choice that was taken. */
export const visitWork = (db: ReadableDb, { row, input, standing }: StoodVisit, written: WrittenWork): VisitWork =>
  workOf({
    input,
    standing,
    ...written,
    choices: choiceRows(db, row.id).map((choice) => rowToChoice(db, choice)),
    decisions: decisionRows(db, row.id).map(rowToDecision),
  });

/** Null where nothing is written down of it: then nothing has to be computed. */
export const workIfAny = (db: ReadableDb, visit: StoodVisit): VisitWork | null => {
  const written = writtenWork(db, visit.row.id);
  return saysWork(written) ? visitWork(db, visit, written) : null;
};

/** @throws AppError 'not-found' */
export const workOfVisit = (db: ReadableDb, visitId: string): VisitWork =>
  visitWork(db, stoodVisit(db, visitId), writtenWork(db, visitId));
