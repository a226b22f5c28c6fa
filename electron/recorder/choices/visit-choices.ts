import type { ToldVisit } from '../../../shared-lib/choices/carried-over.ts';
import { choicesOf } from '../../../shared-lib/choices/choices-of.ts';
import type { VisitChoices } from '../../../shared-lib/contract/choices.ts';
import type { VisitWork } from '../../../shared-lib/contract/work.ts';
import type { ReadableDb } from '../database/connection.ts';
import { rowToSuspicion, suspicionRows } from '../suspicions/queries.ts';
import { type VisitAndEarlier, visitAndEarlier } from '../visits/stood-visit.ts';
import { workIfAny } from '../work/visit-work.ts';
import { choiceRows, decisionRows, moneyOf, rowToChoice, rowToDecision, rowToStep, visitStepRows } from './queries.ts';

/**
 * A visit's suspicions, choices and decisions with what follows from them.
 *
 * @param work  what is on record of it; null where nothing is
 */
export const visitChoices = (
  db: ReadableDb,
  { now, earlier }: VisitAndEarlier,
  work: VisitWork | null,
): VisitChoices => {
  const { row, input, standing } = now;
  return choicesOf({
    input,
    standing,
    date: row.date,
    money: moneyOf(db, row.id),
    work,
    steps: visitStepRows(db, row.id).map(rowToStep),
    suspicions: suspicionRows(db, row.id).map((suspicion) => rowToSuspicion(db, suspicion)),
    choices: choiceRows(db, row.id).map((choice) => rowToChoice(db, choice)),
    decisions: decisionRows(db, row.id).map((decision) => ({
      decision: rowToDecision(decision),
      told: decision.told,
    })),
    earlier: earlier.map(
      (visit): ToldVisit => ({
        date: visit.row.date,
        findings: visit.input.findings,
        standing: visit.standing,
        decisions: decisionRows(db, visit.row.id).map(rowToDecision),
      }),
    ),
  });
};

/** What was suspected, what can be chosen, and what was decided. @throws AppError 'not-found' */
export const choicesOfVisit = (db: ReadableDb, visitId: string): VisitChoices => {
  const visits = visitAndEarlier(db, visitId);
  return visitChoices(db, visits, workIfAny(db, visits.now));
};
