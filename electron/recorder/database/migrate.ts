import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type Database from 'better-sqlite3';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { projectFile } from '../own-files.ts';

export interface Migration {
  readonly version: number;
  readonly name: string;
  readonly sql: string;
}

/** The numbered `.sql` files, in order. Their numbers must rise by one from 1: a gap or a double is a bug. */
export const readMigrations = (folder = projectFile('electron/recorder/database/migrations')): Migration[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.sql'))
    .sort()
    .map((name, index) => {
      const version = Number(name.slice(0, 4));
      if (version !== index + 1) throw new Error(`migration ${name} stands at place ${index + 1}`);
      return { version, name, sql: readFileSync(join(folder, name), 'utf8') };
    });

export const schemaVersion = (sqlite: Database.Database): number =>
  sqlite.pragma('user_version', { simple: true }) as number;

/**
 * Brings a database to the newest known version, each migration in a transaction that also sets `user_version`.
 *
 * @param beforeFirst  called once when there is something to migrate in a database that is not new
 * @throws AppError 'folder-newer' when the database was written by a newer program
 */
export const migrate = (sqlite: Database.Database, migrations: readonly Migration[], beforeFirst: () => void): void => {
  const found = schemaVersion(sqlite);
  if (found > migrations.length) throw new AppError('folder-newer', { found, known: migrations.length });
  const ahead = migrations.slice(found);
  if (found > 0 && ahead.length > 0) beforeFirst();
  for (const migration of ahead) {
    sqlite.transaction(() => {
      sqlite.exec(migration.sql);
      sqlite.pragma(`user_version = ${migration.version}`);
    })();
  }
};
