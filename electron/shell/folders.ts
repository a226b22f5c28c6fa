import { createHash } from 'node:crypto';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { app } from 'electron';

/**
 * Decides which data folder this run works in: `--data DIR`, else `record` beside the program's own settings.
 *
 * Must run before the single-instance lock is asked for: a second start on the same folder brings up the first
 * window, one on another folder is a program of its own, with settings of its own.
 */
export function setupFolders(commandLine: readonly string[]): { dataFolder: string; codeFolder: string } {
  const { values } = parseArgs({
    args: [...commandLine],
    options: { data: { type: 'string' } },
    strict: false,
    allowPositionals: true,
  });
  const userData = app.getPath('userData');
  const codeFolder = join(userData, 'compiled');
  if (typeof values.data !== 'string') return { dataFolder: join(userData, 'record'), codeFolder };
  const dataFolder = resolve(values.data);
  const name = createHash('sha256').update(dataFolder).digest('hex').slice(0, 16);
  app.setPath('userData', join(userData, 'folders', name));
  return { dataFolder, codeFolder };
}
