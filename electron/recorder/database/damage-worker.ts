import { parentPort, workerData } from 'node:worker_threads';
import { damageIn } from './open.ts';

/** The thread of `damageBeside`: one check, one answer, and it ends. */
parentPort?.postMessage(damageIn(String(workerData), 'quick_check'));
