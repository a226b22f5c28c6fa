import { Worker } from 'node:worker_threads';
import { ownProgram } from '../own-files.ts';

/**
 * SQLite's quick check in a thread of its own: it reads the whole database, and calls are answered meanwhile.
 *
 * @returns what it finds, or null when it finds nothing
 * @throws what kept the check from being made
 */
export const damageBeside = (dataFolder: string): Promise<string | null> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(ownProgram('database/damage-worker'), { workerData: dataFolder });
    worker.once('message', resolve);
    worker.once('error', reject);
    // After an answer this changes nothing; without one, nobody may wait for ever.
    worker.once('exit', (code) => reject(new Error(`the check ended with ${code} and no answer`)));
    // A recorder that is told to stop does not wait for it.
    worker.unref();
  });
