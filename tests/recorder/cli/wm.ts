import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';

const project = resolve(import.meta.dirname, '../../..');

export interface Said {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** The command line as it is started by hand: a process of its own, its words, and what it ends with. */
export const wm = (...words: readonly string[]): Said => {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['electron/cli/main.ts', ...words], {
    cwd: project,
    encoding: 'utf8',
    timeout: 60_000,
  });
  return { code: status, out: stdout, err: stderr };
};
