import { resolve } from 'node:path';
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
  const recorder = openRecorder({
    dataFolder: resolve(folder),
    program: 'the command line (wm)',
    readOnly: mode === 'read',
    emit: (event) => {
      for (const listener of listeners) listener(event);
    },
  });
  try {
    return await work({ recorder, listen: (listener) => listeners.push(listener) });
  } finally {
    await recorder.close();
  }
};
