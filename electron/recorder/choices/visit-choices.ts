import type { ToldVisit } from '../../../shared-lib/choices/carried-over.ts';
import { choicesOf } from '../../../shared-lib/choices/choices-of.ts';
import type { VisitChoices } from '../../../shared-lib/contract/choices.ts';
import type { Standing } from '../../../shared-lib/contract/standing.ts';
import type { StandingInput } from '../../../shared-lib/ranking/standing.ts';
import type { ReadableDb } from '../database/connection.ts';
import type { Tables } from '../database/tables.ts';
import { rowToSuspicion, suspicionRows } from '../suspicions/queries.ts';
import { choiceRows, decisionRows, moneyOf, rowToChoice, rowToDecision, rowToStep, visitStepRows } from './queries.ts';

/** What the caller has loaded already. */
export interface LoadedVisit {
  readonly row: Tables['visit'];
  readonly input: StandingInput;
  readonly standing: Standing;
  /** The machine's visits before this one, oldest first, with what their standing needs. */
  readonly earlier: readonly {
    readonly row: Tables['visit'];
    readonly input: StandingInput;
    readonly standing: Standing;
  }[];
}

/** A visit's suspicions, choices and decisions with what follows from them. */
export const visitChoices = (db: ReadableDb, { row, input, standing, earlier }: LoadedVisit): VisitChoices =>
  choicesOf({
    input,
    standing,
    date: row.date,
    money: moneyOf(db, row.id),
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
