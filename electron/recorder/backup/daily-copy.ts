import { existsSync, mkdirSync } from 'node:fs';
import { mkdir, open, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type Database from 'better-sqlite3';
import { schemaVersion } from '../database/migrate.ts';
import { syncFolder } from '../photos/sync.ts';
import { copiesFolder, dailyCopyName, migrationCopyName, rotateCopies } from './copies.ts';
import { verifyCopy } from './verify-copy.ts';

/** Copied a few pages at a time, so that calls are answered in between. */
const pagesAtOnce = 200;

/** Copies the open database, checks the copy, and only then gives it its name. @throws when the copy cannot be trusted */
export const copyDatabase = async (sqlite: Database.Database, file: string): Promise<void> => {
  const making = `${file}.making`;
  await rm(making, { force: true });
  await sqlite.backup(making, { progress: () => pagesAtOnce });
  try {
    verifyCopy(making);
    const handle = await open(making, 'r+');
    await handle.sync();
    await handle.close();
    await rename(making, file);
    await syncFolder(join(file, '..'));
  } catch (cause) {
    await rm(making, { force: true });
    throw cause;
  }
};

/**
 * The day's copy of the database, once a day.
 *
 * @param day  `2026-06-08`, the shop's own
 * @returns whether one was made now
 */
export const makeDailyCopy = async (sqlite: Database.Database, dataFolder: string, day: string): Promise<boolean> => {
  const folder = copiesFolder(dataFolder);
  const file = join(folder, dailyCopyName(day));
  if (existsSync(file)) return false;
  await mkdir(folder, { recursive: true });
  await copyDatabase(sqlite, file);
  await rotateCopies(folder);
  return true;
};

/** Before a migration, at once and checked: nothing is migrated without it. */
export const copyBeforeMigration = (sqlite: Database.Database, dataFolder: string, atMs: number): void => {
  const folder = copiesFolder(dataFolder);
  mkdirSync(folder, { recursive: true });
  const file = join(folder, migrationCopyName(schemaVersion(sqlite), atMs));
  sqlite.prepare('VACUUM INTO ?').run(file);
  verifyCopy(file);
};
