import { randomUUID } from 'node:crypto';
import type { OfferedFile } from '../../shared-lib/contract/shots.ts';
import type { OpenFolder } from './with-folder.ts';

/** Takes files into a visit and waits for the end of the import. */
export const takePaths = async (
  { recorder, listen }: OpenFolder,
  visitId: string,
  paths: readonly string[],
): Promise<OfferedFile[]> => {
  const files: OfferedFile[] = [];
  const ended = new Promise<void>((resolve) => {
    listen((event) => {
      if (event.event !== 'import') return;
      if (event.file) files.push(event.file);
      if (event.ended !== 'no') resolve();
    });
  });
  const tokens = paths.map((path) => {
    const token = randomUUID();
    recorder.offer({ token, path, for: 'read' });
    return token;
  });
  await recorder.call('shot.take', { visitId, tokens });
  await ended;
  return files;
};
