import type { ReturnView } from '../../../shared-lib/contract/returning.ts';
import { returnView } from '../../../shared-lib/returning/return-view.ts';
import type { VisitNow, VisitThen } from '../../../shared-lib/returning/visit-then.ts';
import { choiceRows, decisionRows, rowToChoice, rowToDecision } from '../choices/queries.ts';
import type { ReadableDb } from '../database/connection.ts';
import { fittedPartsOf, metersOf } from '../machines/queries.ts';
import { trueHours } from '../machines/true-hours.ts';
import { marksOf } from '../marks/queries.ts';
import { shotsOf } from '../photos/queries.ts';
import { rowToVisit } from '../visits/queries.ts';
import { type StoodVisit, type VisitAndEarlier, visitAndEarlier } from '../visits/stood-visit.ts';
import { workItemsOf } from '../work/queries.ts';
import { answersOf } from './queries.ts';

/** What earlier visits left for this one; null where there was none. */
export const returnOfVisit = (db: ReadableDb, { now, earlier }: VisitAndEarlier): ReturnView | null => {
  if (earlier.length === 0) return null;
  const meters = metersOf(db, now.row.machine_id);
  const asNow = ({ row, input, standing }: StoodVisit): VisitNow => {
    const visit = rowToVisit(row);
    return {
      id: row.id,
      date: row.date,
      trueHours: trueHours(visit.meter, meters),
      conditions: visit.conditions,
      input,
      standing,
      decisions: decisionRows(db, row.id).map(rowToDecision),
      choices: choiceRows(db, row.id).map((choice) => rowToChoice(db, choice)),
      work: workItemsOf(db, row.id),
      answers: answersOf(db, row.id),
    };
  };
  const then = earlier.map((visit): VisitThen => {
    const { id } = visit.row;
    return { ...asNow(visit), shots: shotsOf(db, id), marks: marksOf(db, id) };
  });
  return returnView(asNow(now), then, fittedPartsOf(db, now.row.machine_id));
};

/** What earlier visits left, and what has become of it. @throws AppError 'not-found' */
export const returnToVisit = (db: ReadableDb, visitId: string): ReturnView | null =>
  returnOfVisit(db, visitAndEarlier(db, visitId));
