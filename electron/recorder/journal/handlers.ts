import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { Context, Handlers } from '../context.ts';
import { entriesOfVisit } from './queries.ts';
import { reverseStep, stacksOf, undoState } from './undo.ts';

const takeBack = (context: Context, visitId: string, which: 'undo' | 'redo') => {
  const { db, caller } = context;
  const step = stacksOf(db, caller.windowId, visitId)[which].at(-1);
  if (!step) throw new AppError(which === 'undo' ? 'nothing-to-undo' : 'nothing-to-redo', {});
  context.mutate((writer) => reverseStep(db, writer, step.stepId), { reverses: step.stepId });
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
