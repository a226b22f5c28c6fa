import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { ReadableDb } from '../database/connection.ts';
import type { Cell, RowChange } from '../journal/change.ts';
import { choiceRow, choiceRows, isDecided } from './queries.ts';

const partsOfChoice: ReadonlySet<string> = new Set(['disposition', 'choice_step', 'cost_line']);

/** The column as the change has it, or as the row had it. */
const column = (change: RowChange, name: string): Cell | undefined => {
  if ('added' in change) return change.added[name];
  if ('removed' in change) return change.removed[name];
  return undefined;
};

/** What was decided on stays as it was read out: taking back an earlier step may not change it either. */
export const refuseDecided = (
  db: ReadableDb,
  changes: readonly RowChange[],
  rowOf: (change: RowChange) => Readonly<Record<string, Cell>> | undefined,
): void => {
  for (const change of changes) {
    const choiceId =
      change.table === 'choice'
        ? change.id
        : partsOfChoice.has(change.table)
          ? (column(change, 'choice_id') ?? rowOf(change)?.choice_id)
          : undefined;
    if (typeof choiceId === 'string' && choiceRow(db, choiceId) && isDecided(db, choiceId))
      throw new AppError('decided', {});
    if (change.table === 'visit_money' && choiceRows(db, change.id).some(({ id }) => isDecided(db, id)))
      throw new AppError('decided', {});
  }
};
