import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { UndoState } from '../../../shared-lib/contract/journal.ts';
import type { ReadableDb } from '../database/connection.ts';
import { type Cell, type Row, type RowChange, reversed } from './change.ts';
import { entriesOfStep, windowSteps } from './queries.ts';
import type { RecordWriter } from './record-writer.ts';

interface Step {
  readonly stepId: string;
  readonly operation: string;
}

export interface UndoStacks {
  readonly undo: readonly Step[];
  readonly redo: readonly Step[];
}

/**
 * What can be taken back and done again, from a window's entries in order. An entry that reverses a done step is an undo;
 * one that reverses an undo is a redo. Anything new clears what could be redone.
 */
export const foldUndo = (
  entries: readonly { step_id: string; operation: string; reverses: string | null }[],
): UndoStacks => {
  const undo: Step[] = [];
  const redo: Step[] = [];
  const seen = new Set<string>();
  for (const entry of entries) {
    // A step of many entries (an import) counts once, where it began.
    if (seen.has(entry.step_id)) continue;
    seen.add(entry.step_id);
    const step = { stepId: entry.step_id, operation: entry.operation };
    if (entry.reverses === null) {
      undo.push(step);
      redo.length = 0;
      continue;
    }
    const [from, to] = undo.at(-1)?.stepId === entry.reverses ? [undo, redo] : [redo, undo];
    const taken = from.at(-1);
    if (taken?.stepId !== entry.reverses) continue;
    from.pop();
    // The person knows the step by what they did, not by 'undo'.
    to.push({ stepId: entry.step_id, operation: taken.operation });
  }
  return { undo, redo };
};

export const stacksOf = (db: ReadableDb, windowId: string, visitId: string): UndoStacks =>
  foldUndo(windowSteps(db, windowId, visitId));

export const undoState = (db: ReadableDb, windowId: string, visitId: string): UndoState => {
  const { undo, redo } = stacksOf(db, windowId, visitId);
  return { undo: undo.at(-1)?.operation ?? null, redo: redo.at(-1)?.operation ?? null };
};

const stillAs = (writer: RecordWriter, change: RowChange, expected: Readonly<Record<string, Cell>>): Row => {
  if (!writer.has(change.table, change.id))
    throw new AppError('changed-by-another', { record: change.table, id: change.id });
  const row = writer.row(change.table, change.id);
  for (const [column, value] of Object.entries(expected)) {
    if (!Object.is(row[column] ?? null, value))
      throw new AppError('changed-by-another', { record: change.table, id: change.id });
  }
  return row;
};

/** Photos are never unmade: taking an import back puts its shots in the bin, their bytes stay. */
const isShot = (change: RowChange): boolean => change.table === 'shot';

const apply = (writer: RecordWriter, change: RowChange): void => {
  if ('added' in change) {
    if (writer.has(change.table, change.id))
      throw new AppError('changed-by-another', { record: change.table, id: change.id });
    writer.insert(change.table, change.added as never);
  } else if ('removed' in change) {
    if (change.table === 'original') return;
    if (isShot(change)) {
      stillAs(writer, change, { binned: 0 });
      writer.update('shot', change.id, { binned: 1 });
      return;
    }
    stillAs(writer, change, change.removed);
    writer.remove(change.table, change.id);
  } else if ('updated' in change) {
    const from: Record<string, Cell> = {};
    const to: Record<string, Cell> = {};
    for (const [column, [before, after]] of Object.entries(change.updated)) {
      from[column] = before;
      to[column] = after;
    }
    stillAs(writer, change, from);
    writer.update(change.table, change.id, to as never);
  }
};

/**
 * Appends what takes a visit's step back: all its entries, last first.
 *
 * @throws AppError 'changed-by-another' when a row is no longer as the step left it
 */
export const reverseStep = (db: ReadableDb, writer: RecordWriter, visitId: string, stepId: string): void => {
  const entries = entriesOfStep(db, visitId, stepId);
  const machineId = entries[0]?.machine_id ?? null;
  writer.about({ visitId, ...(machineId === null ? {} : { machineId }) });
  for (const entry of entries.toReversed()) {
    const changes = JSON.parse(entry.changes) as RowChange[];
    for (const change of changes.toReversed()) apply(writer, reversed(change));
  }
};
