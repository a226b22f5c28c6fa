import { join } from 'node:path';
import Database from 'better-sqlite3';

/** As long as the journal entry that a saved field writes. */
const text = 'x'.repeat(700);

export interface BareCommit {
  readonly commit: () => void;
  readonly close: () => void;
}

/** What nothing can be kept faster than: one row, by the same driver, with the same promise of being on the disk. */
export const openBareCommit = (folder: string): BareCommit => {
  const sqlite = new Database(join(folder, 'bare.sqlite'));
  sqlite.pragma('journal_mode = WAL');
  sqlite.pragma('synchronous = FULL');
  sqlite.exec('CREATE TABLE entry (seq INTEGER PRIMARY KEY, text TEXT NOT NULL)');
  const insert = sqlite.prepare('INSERT INTO entry (text) VALUES (?)');
  return { commit: () => void insert.run(text), close: () => sqlite.close() };
};
