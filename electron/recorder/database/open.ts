import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { migrate, readMigrations, schemaVersion } from './migrate.ts';

export const databaseFile = (dataFolder: string): string => join(dataFolder, 'record.sqlite');

const refused = (cause: unknown): AppError => {
  const code = (cause as { code?: string }).code ?? '';
  if (code === 'SQLITE_NOTADB' || code.startsWith('SQLITE_CORRUPT')) {
    return new AppError('folder-damaged', { what: 'record.sqlite' }, { cause });
  }
  if (code === 'ENOSPC' || code === 'SQLITE_FULL') return new AppError('disk-full', {}, { cause });
  return new AppError(
    'folder-unwritable',
    { reason: cause instanceof Error ? cause.message : String(cause) },
    { cause },
  );
};

/**
 * Opens the record for its one writer and brings it up to date. FULL sync in WAL mode: a commit is on the disk before the
 * call returns, which is what lets the window show a change as done.
 *
 * @throws AppError 'folder-newer', 'folder-damaged', 'folder-unwritable', 'disk-full'
 */
export const openForWriting = (
  dataFolder: string,
  beforeMigration: (sqlite: Database.Database) => void = () => {},
): Database.Database => {
  try {
    mkdirSync(dataFolder, { recursive: true });
    const sqlite = new Database(databaseFile(dataFolder));
    sqlite.pragma('journal_mode = WAL');
    sqlite.pragma('synchronous = FULL');
    sqlite.pragma('foreign_keys = ON');
    sqlite.pragma('trusted_schema = OFF');
    migrate(sqlite, readMigrations(), () => beforeMigration(sqlite));
    return sqlite;
  } catch (cause) {
    throw cause instanceof AppError ? cause : refused(cause);
  }
};

/** Opens the record beside a writer that may hold it; changes nothing. */
export const openForReading = (dataFolder: string): Database.Database => {
  try {
    const sqlite = new Database(databaseFile(dataFolder), { readonly: true, fileMustExist: true });
    const found = schemaVersion(sqlite);
    const known = readMigrations().length;
    if (found !== known) {
      sqlite.close();
      throw new AppError(found > known ? 'folder-newer' : 'folder-older', { found, known });
    }
    return sqlite;
  } catch (cause) {
    throw cause instanceof AppError ? cause : refused(cause);
  }
};

/** What SQLite's own check finds, or null when it finds nothing. A read-only connection, so that work goes on beside it. */
export const damageIn = (dataFolder: string, check: 'quick_check' | 'integrity_check'): string | null => {
  const sqlite = openForReading(dataFolder);
  try {
    const rows = sqlite.pragma(check) as Record<string, string>[];
    const lines = rows.map((row) => Object.values(row)[0] ?? '');
    return lines.length === 1 && lines[0] === 'ok' ? null : lines.slice(0, 5).join('; ');
  } catch (cause) {
    // Some damage stops the check itself, and is damage all the same.
    const { code = '', message = '' } = cause as { code?: string; message?: string };
    if (code.startsWith('SQLITE_CORRUPT')) return message;
    throw cause;
  } finally {
    sqlite.close();
  }
};
