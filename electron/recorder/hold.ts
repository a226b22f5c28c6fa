import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { AppError } from '../../shared-lib/contract/errors.ts';

export interface Holder {
  readonly program: string;
  readonly pid: number;
  readonly sinceMs: number;
}

const holderFile = (dataFolder: string): string => join(dataFolder, 'holder.json');

const readHolder = (dataFolder: string): Partial<Holder> => {
  try {
    return JSON.parse(readFileSync(holderFile(dataFolder), 'utf8')) as Partial<Holder>;
  } catch {
    // Between taking the lock and writing the note, or an older note half written: the lock itself is what counts.
    return {};
  }
};

/**
 * Holds a data folder for one writer. The lock is the operating system's, taken by SQLite on a small file of its own, so
 * it is freed whichever way the process ends; the note beside it only says who.
 *
 * @returns the way to let go
 * @throws AppError 'folder-held' with the holder's program and process number
 */
export const holdFolder = (dataFolder: string, holder: Holder): (() => void) => {
  const lock = new Database(join(dataFolder, 'hold.sqlite'), { timeout: 0 });
  try {
    lock.pragma('journal_mode = DELETE');
    lock.exec('BEGIN EXCLUSIVE');
  } catch (cause) {
    lock.close();
    if ((cause as { code?: string }).code !== 'SQLITE_BUSY') {
      throw new AppError('folder-unwritable', { reason: String(cause) }, { cause });
    }
    const { program = 'another program', pid = 0, sinceMs = 0 } = readHolder(dataFolder);
    throw new AppError('folder-held', { holder: program, pid, since: sinceMs }, { cause });
  }
  // Not waited for until it is on the disk: a note is worth something only while its writer runs.
  writeFileSync(holderFile(dataFolder), JSON.stringify(holder));
  return () => {
    if (lock.open) lock.close();
  };
};
