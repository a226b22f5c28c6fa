import { z } from 'zod';
import { change, query } from './operation.ts';

/** One entry of the append-only journal, as people read it. */
export interface JournalEntry {
  readonly seq: number;
  readonly atMs: number;
  readonly zoneOffsetMin: number;
  readonly personId: string | null;
  readonly operation: string;
  /** The step it takes back. */
  readonly reverses: string | null;
  readonly stepId: string;
  readonly digest: string;
}

export interface UndoState {
  /** The operation that undo (or redo) would take; null when there is none in this window and visit. */
  readonly undo: string | null;
  readonly redo: string | null;
}

const scope = z.strictObject({ visitId: z.string() });

export const journalOperations = {
  'undo.state': query<UndoState>()(scope),
  'undo.undo': change<UndoState & { done: string }>()(scope),
  'undo.redo': change<UndoState & { done: string }>()(scope),
  'journal.of': query<JournalEntry[]>()(scope),
};
