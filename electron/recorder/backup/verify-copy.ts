import Database from 'better-sqlite3';
import { connect } from '../database/connection.ts';
import { lastEntry } from '../journal/queries.ts';

/** What a copy of the database must still say to be one: how far its journal goes, and with which digest. */
export interface CopyState {
  readonly entries: number;
  readonly digest: string | null;
}

const stateOf = (sqlite: Database.Database): CopyState => {
  const last = lastEntry(connect(sqlite));
  return { entries: last?.seq ?? 0, digest: last?.digest ?? null };
};

/**
 * Reads a copy as if it were the record: SQLite's own check, then the end of the journal.
 *
 * @throws Error in words when it cannot be trusted
 */
export const verifyCopy = (file: string): CopyState => {
  const sqlite = new Database(file, { readonly: true, fileMustExist: true });
  try {
    const found = sqlite.pragma('integrity_check', { simple: true });
    if (found !== 'ok') throw new Error(`the copy is damaged: ${String(found)}`);
    return stateOf(sqlite);
  } finally {
    sqlite.close();
  }
};
