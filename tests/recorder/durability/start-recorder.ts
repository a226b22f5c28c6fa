import { onTestFinished } from 'vitest';
import { type RecorderChild, runRecorder } from './recorder-child.ts';

/** A recorder of one test's own, gone with the test. */
export const startRecorder = async (dataFolder: string, under: readonly string[] = []): Promise<RecorderChild> => {
  const child = await runRecorder(dataFolder, under);
  onTestFinished(async () => {
    await child.kill();
  });
  return child;
};
