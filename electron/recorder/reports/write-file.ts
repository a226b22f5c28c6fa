import { open, rename, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { syncFolder } from '../photos/sync.ts';

/**
 * Writes a whole file or none: into a neighbour, synced, then renamed over what was there.
 *
 * @throws AppError 'disk-full'; 'file-unwritable'
 */
export const writeWholeFile = async (path: string, bytes: Uint8Array): Promise<void> => {
  const half = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  try {
    const handle = await open(half, 'w');
    try {
      await handle.writeFile(bytes);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(half, path);
    await syncFolder(dirname(path));
  } catch (cause) {
    await rm(half, { force: true });
    const { code } = cause as { code?: unknown };
    if (code === 'ENOSPC') throw new AppError('disk-full', {}, { cause });
    throw new AppError('file-unwritable', { path, reason: String(code ?? cause) }, { cause });
  }
};
