import {
  Choice,
  ChoiceDisposition,
  CostLine,
  Decision,
  type Money,
  Step,
} from '../../../shared-lib/choices/records.ts';
import { build, type ReadableDb } from '../database/connection.ts';
import { all, first, type Param } from '../database/query.ts';
import type { Tables } from '../database/tables.ts';

export const rowToStep = (row: Pick<Tables['visit_step'], 'id' | 'step' | 'place'>): Step =>
  Step.parse({ id: row.id, step: row.step, at: row.place });

const rowToDisposition = (row: Tables['disposition']): ChoiceDisposition =>
  ChoiceDisposition.parse({
    findingId: row.finding_id,
    is: row.what,
    after: row.after === null ? null : JSON.parse(row.after),
    why: row.why,
  });

const rowToCost = ({ id, kind, words, amount, price }: Tables['cost_line']): CostLine =>
  CostLine.parse({ id, kind, words, amount, price });

export const rowToDecision = (row: Tables['decision']): Decision =>
  Decision.parse({
    id: row.id,
    findingId: row.finding_id,
    choiceId: row.choice_id,
    decision: row.decision,
    completed: row.completed,
    words: row.words,
    by: row.decided_by,
    capacity: row.capacity,
    howTold: row.how_told,
    shownShotIds: JSON.parse(row.shown_shots),
    statement: row.statement,
    signature: row.signature === null ? null : JSON.parse(row.signature),
    unsignedBecause: row.unsigned_because,
    decidedAtMs: row.decided_at_ms,
    zoneOffsetMin: row.zone_offset_min,
    personId: row.person_id,
  });

export const visitStepRows = all((visitId: Param<string>) =>
  build.selectFrom('visit_step').selectAll().where('visit_id', '=', visitId).orderBy('position'),
);

export const choiceRows = all((visitId: Param<string>) =>
  build.selectFrom('choice').selectAll().where('visit_id', '=', visitId).orderBy('position'),
);

export const choiceRow = first((id: Param<string>) => build.selectFrom('choice').selectAll().where('id', '=', id));

export const dispositionRows = all((choiceId: Param<string>) =>
  build.selectFrom('disposition').selectAll().where('choice_id', '=', choiceId).orderBy('id'),
);

export const choiceStepRows = all((choiceId: Param<string>) =>
  build.selectFrom('choice_step').selectAll().where('choice_id', '=', choiceId).orderBy('position'),
);

export const costRows = all((choiceId: Param<string>) =>
  build.selectFrom('cost_line').selectAll().where('choice_id', '=', choiceId).orderBy('position'),
);

export const rowToChoice = (db: ReadableDb, row: Tables['choice']): Choice =>
  Choice.parse({
    id: row.id,
    name: row.name,
    conditions: row.conditions,
    holdPoints: row.hold_points,
    dispositions: dispositionRows(db, row.id).map(rowToDisposition),
    steps: choiceStepRows(db, row.id).map(rowToStep),
    costs: costRows(db, row.id).map(rowToCost),
  });

/** In the order they were taken. */
export const decisionRows = all((visitId: Param<string>) =>
  build
    .selectFrom('decision')
    .selectAll()
    .where('visit_id', '=', visitId)
    .orderBy('decided_at_ms')
    .orderBy('rowid' as 'id'),
);

const decisionOf = first((choiceId: Param<string>) =>
  build.selectFrom('decision').select('id').where('choice_id', '=', choiceId).limit(1),
);

export const isDecided = (db: ReadableDb, choiceId: string): boolean => decisionOf(db, choiceId) !== undefined;

const moneyRow = first((visitId: Param<string>) =>
  build.selectFrom('visit_money').selectAll().where('id', '=', visitId),
);

export const moneyOf = (db: ReadableDb, visitId: string): Money => {
  const row = moneyRow(db, visitId);
  return { currency: row?.currency ?? '', taxPercent: row?.tax_percent ?? null };
};

/** Where the next row of a list goes. */
export const nextPosition = (rows: readonly { readonly position: number }[]): number =>
  Math.max(-1, ...rows.map(({ position }) => position)) + 1;
