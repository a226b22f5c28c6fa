import { readdir, rm, stat, utimes } from 'node:fs/promises';
import { join } from 'node:path';

/** Marks a cached file as used, which is what trimming goes by: access times are often not kept. */
export const touch = async (path: string): Promise<void> => {
  const now = new Date();
  // A file system that refuses this only makes the cache forget in another order.
  await utimes(path, now, now).catch(() => {});
};

/** Deletes the files longest not used, until all of a folder tree takes at most `mostBytes`. The one used last always stays. */
export const trimFolder = async (folder: string, mostBytes: number): Promise<void> => {
  const names = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => []);
  const files = await Promise.all(
    names
      .filter((entry) => entry.isFile())
      .map(async (entry) => {
        const path = join(entry.parentPath, entry.name);
        const about = await stat(path).catch(() => null);
        return about && { path, bytes: about.size, usedMs: about.mtimeMs };
      }),
  );
  const newestFirst = files.filter((file) => file !== null).sort((a, b) => b.usedMs - a.usedMs);
  let total = 0;
  for (const [index, { path, bytes }] of newestFirst.entries()) {
    total += bytes;
    if (index > 0 && total > mostBytes) await rm(path, { force: true });
  }
};
