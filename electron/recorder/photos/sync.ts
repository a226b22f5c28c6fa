import { open } from 'node:fs/promises';

/** Waits until a folder's list of names is on the disk: without it a renamed file may be gone after a power cut. */
export const syncFolder = async (folder: string): Promise<void> => {
  // Windows opens no folders; its file systems keep the names in their own journal.
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
};
