import { AppError } from '../../../shared-lib/contract/errors.ts';
import { refuseDecided } from '../choices/refuse-decided.ts';
import type { Context, Handlers } from '../context.ts';
import { issuedOf } from '../reports/queries.ts';
import type { RowChange } from './change.ts';
import { entriesOfStep, entriesOfVisit, rowOf } from './queries.ts';
import { reverseStep, stacksOf, undoState } from './undo.ts';

/** What stands in an issued report is superseded or corrected by a new revision, never taken back. */
const refuseIssued = ({ db }: Context, visitId: string, stepId: string): void => {
  const writtenAtMs = entriesOfStep(db, visitId, stepId)[0]?.at_ms ?? 0;
  const issued = issuedOf(db, visitId).at(-1);
  if (issued && issued.issued_at_ms >= writtenAtMs) throw new AppError('issued', { number: issued.number });
};

const takeBack = (context: Context, visitId: string, which: 'undo' | 'redo') => {
  const { db, caller } = context;
  const step = stacksOf(db, caller.windowId, visitId)[which].at(-1);
  if (!step) throw new AppError(which === 'undo' ? 'nothing-to-undo' : 'nothing-to-redo', {});
  refuseIssued(context, visitId, step.stepId);
  const changes = entriesOfStep(db, visitId, step.stepId).flatMap((entry) => JSON.parse(entry.changes) as RowChange[]);
  refuseDecided(db, changes, ({ table, id }) => rowOf(db, table, id));
  try {
    context.mutate((writer) => reverseStep(db, writer, visitId, step.stepId), { reverses: step.stepId });
  } catch (cause) {
    // Something that is never taken back, a decision, rests on it.
    if ((cause as { code?: unknown }).code !== 'SQLITE_CONSTRAINT_FOREIGNKEY') throw cause;
    throw new AppError('changed-by-another', {}, { cause });
  }
  return { done: step.operation, ...undoState(db, caller.windowId, visitId) };
};

export const journalHandlers: Handlers = {
  'undo.state': { read: ({ db, caller }, { visitId }) => undoState(db, caller.windowId, visitId) },
  'undo.undo': { outside: (context, { visitId }) => takeBack(context, visitId, 'undo') },
  'undo.redo': { outside: (context, { visitId }) => takeBack(context, visitId, 'redo') },
  'journal.of': {
    read: ({ db }, { visitId }) =>
      entriesOfVisit(db, visitId).map((entry) => ({
        seq: entry.seq,
        stepId: entry.step_id,
        atMs: entry.at_ms,
        zoneOffsetMin: entry.zone_offset_min,
        personId: entry.person_id,
        operation: entry.operation,
        reverses: entry.reverses,
        digest: entry.digest,
      })),
  },
};
