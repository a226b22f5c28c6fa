import { existsSync } from 'node:fs';
import { cp, mkdir, readdir, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { connect } from '../database/connection.ts';
import { databaseFile } from '../database/open.ts';
import { originalDigests } from '../photos/queries.ts';
import { verifyOriginal } from '../photos/verify-original.ts';
import { copyDatabase } from './daily-copy.ts';
import { type CopyState, verifyCopy } from './verify-copy.ts';

export interface FolderCopy extends CopyState {
  readonly originals: number;
}

const digestsIn = (file: string): string[] => {
  const sqlite = new Database(file, { readonly: true });
  try {
    return originalDigests(connect(sqlite)).map(({ digest }) => digest);
  } finally {
    sqlite.close();
  }
};

const originalsOf = (folder: string): string => join(folder, 'originals');

/** Every photo that the database names must be there, byte for byte. @throws AppError 'folder-damaged' */
const verifyPhotos = async (folder: string): Promise<number> => {
  const digests = digestsIn(databaseFile(folder));
  for (const digest of digests) {
    const found = await verifyOriginal(folder, digest);
    if (found !== 'whole') throw new AppError('folder-damaged', { what: `photo ${digest.slice(0, 12)} is ${found}` });
  }
  return digests.length;
};

const refuseUsed = async (folder: string): Promise<void> => {
  const names = existsSync(folder) ? await readdir(folder) : [];
  if (names.length > 0) throw new AppError('file-unwritable', { path: folder, reason: 'there is something in it' });
};

const copyPhotos = (from: string, to: string): Promise<void> =>
  existsSync(originalsOf(from))
    ? cp(originalsOf(from), originalsOf(to), { recursive: true, filter: (path) => !path.endsWith('incoming') })
    : Promise.resolve();

/**
 * Copies a whole data folder into an empty one, database and untouched photos, and reads all of it back. The database is
 * taken first: a photo that comes in meanwhile is more than it names, never less.
 *
 * @throws AppError 'file-unwritable' when there is something in the target; 'folder-damaged' when what was read back differs
 */
export const backupFolder = async (dataFolder: string, target: string): Promise<FolderCopy> => {
  await refuseUsed(target);
  await mkdir(target, { recursive: true });
  const sqlite = new Database(databaseFile(dataFolder), { readonly: true, fileMustExist: true });
  try {
    await copyDatabase(sqlite, databaseFile(target));
  } finally {
    sqlite.close();
  }
  await copyPhotos(dataFolder, target);
  return { ...verifyCopy(databaseFile(target)), originals: await verifyPhotos(target) };
};

/**
 * Makes a data folder of a backup, in a folder that is empty or not there. It is put together under another name and moved
 * into place when all of it was read back.
 *
 * @throws AppError 'file-unwritable', 'folder-damaged', 'not-found' when there is no record in the backup
 */
export const restoreFolder = async (backup: string, dataFolder: string): Promise<FolderCopy> => {
  if (!existsSync(databaseFile(backup))) throw new AppError('not-found', { record: 'folder', id: backup });
  await refuseUsed(dataFolder);
  const making = `${dataFolder}.making`;
  await rm(making, { recursive: true, force: true });
  try {
    const copied = await backupFolder(backup, making);
    await rm(dataFolder, { recursive: true, force: true });
    await rename(making, dataFolder);
    return copied;
  } catch (cause) {
    await rm(making, { recursive: true, force: true });
    throw cause;
  }
};
