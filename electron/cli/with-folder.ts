import { resolve } from 'node:path';
import { AppError } from '../../shared-lib/contract/errors.ts';
import type { RecorderEvent } from '../../shared-lib/contract/events.ts';
import { openRecorder, type Recorder } from '../recorder/open-recorder.ts';

export interface OpenFolder {
  readonly recorder: Recorder;
  /** Hears the recorder's events until the folder is closed. */
  listen(listener: (event: RecorderEvent) => void): void;
}

/** Opens a data folder for one command and closes it whatever happens. */
export const withFolder = async <T>(
  folder: string,
  mode: 'read' | 'write',
  work: (open: OpenFolder) => Promise<T>,
): Promise<T> => {
  const listeners: ((event: RecorderEvent) => void)[] = [];
  const recorder = openIn(mode, (readOnly) =>
    openRecorder({
      dataFolder: resolve(folder),
      program: 'the command line (wm)',
      readOnly,
      emit: (event) => {
        for (const listener of listeners) listener(event);
      },
    }),
  );
  try {
    return await work({ recorder, listen: (listener) => listeners.push(listener) });
  } finally {
    await recorder.close();
  }
};

/** A folder of an older version is brought up to date first, also for reading: nobody else can be holding it then. */
const openIn = (mode: 'read' | 'write', open: (readOnly: boolean) => Recorder): Recorder => {
  if (mode === 'write') return open(false);
  try {
    return open(true);
  } catch (error) {
    if (error instanceof AppError && error.code === 'folder-older') return open(false);
    throw error;
  }
};
