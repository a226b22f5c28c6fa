import { createHash, randomUUID } from 'node:crypto';
import { open, rename, rm } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { syncFolder } from '../photos/sync.ts';

/** Digested in about a millisecond: a long report must not hold up a save. */
const pieceBytes = 1 << 20;

/**
 * Writes a whole file or none: into a neighbour, synced, then renamed over what was there.
 *
 * @returns  the hex SHA-256 of its bytes
 * @throws AppError 'disk-full'; 'file-unwritable'
 */
export const writeWholeFile = async (path: string, bytes: Uint8Array): Promise<string> => {
  const hash = createHash('sha256');
  const half = join(dirname(path), `.${basename(path)}.${randomUUID()}.part`);
  try {
    const handle = await open(half, 'w');
    try {
      for (let at = 0; at < bytes.length; at += pieceBytes) {
        const piece = bytes.subarray(at, at + pieceBytes);
        const written = handle.writeFile(piece);
        hash.update(piece);
        await written;
      }
      await handle.sync();
    } finally {
      await handle.close();
    }
    await rename(half, path);
    await syncFolder(dirname(path));
    return hash.digest('hex');
  } catch (cause) {
    await rm(half, { force: true });
    const { code } = cause as { code?: unknown };
    if (code === 'ENOSPC') throw new AppError('disk-full', {}, { cause });
    throw new AppError('file-unwritable', { path, reason: String(code ?? cause) }, { cause });
  }
};
