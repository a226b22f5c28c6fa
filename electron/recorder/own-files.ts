import { extname, join } from 'node:path';

/** Started beside the recorder, as a process or thread of its own: each is an entry of the shell's bundle. */
export const ownPrograms = [
  'database/damage-worker',
  'measuring/child',
  'photos/decode/child',
  'reports/typeset-worker',
] as const;

/**
 * The recorder runs as the TypeScript it is written in (tests, command line), or as the bundle of it in `dist/recorder`
 * that the shell starts. Both folders stand two below the project's, so that each finds its files by the same paths.
 */
const here = import.meta.dirname;

/** The file of a program of its own: a bundle starts those of the bundle. */
export const ownProgram = (name: (typeof ownPrograms)[number]): string =>
  join(here, `${name}${extname(import.meta.filename)}`);

/** What is read while running, by its path in the project's folder; a packaged program has it at the same path. */
export const projectFile = (path: string): string => join(here, '../..', path);
