import { type ChildProcess, fork } from 'node:child_process';
import { basename } from 'node:path';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { ownProgram } from '../own-files.ts';
import type { FromMeasuringChild, MeasuringAnswer, MeasuringJob } from './job.ts';

const patienceMs = 60_000;

/** One child that opens photos and measures in them; jobs wait their turn. Started at the first job, anew after a failure. */
export class Measurer {
  #child: ChildProcess | null = null;
  #last: Promise<unknown> = Promise.resolve();

  /** @throws AppError a refusal of the picture or of the points; Error for what is a bug */
  async run<K extends MeasuringJob['kind']>(
    job: Extract<MeasuringJob, { kind: K }>,
  ): Promise<Extract<MeasuringAnswer, { kind: K }>> {
    const turn = this.#last.then(() => this.#ask(job));
    this.#last = turn.catch(() => {});
    return (await turn) as Extract<MeasuringAnswer, { kind: K }>;
  }

  async #ask(job: MeasuringJob): Promise<MeasuringAnswer> {
    const child = this.#child ?? this.#start();
    const name = basename('path' in job ? job.path : '');
    const answer = await new Promise<FromMeasuringChild | 'time' | 'crash'>((resolve) => {
      const clock = setTimeout(() => resolve('time'), patienceMs);
      const settle = (value: FromMeasuringChild | 'crash'): void => {
        clearTimeout(clock);
        resolve(value);
      };
      child.once('message', (message: FromMeasuringChild) => settle(message));
      child.once('exit', () => settle('crash'));
      child.send(job, () => {});
    });
    child.removeAllListeners('message').removeAllListeners('exit');
    if (answer === 'time' || answer === 'crash') {
      this.close();
      if (answer === 'time') throw new AppError('photo-decoder-gave-up', { name, reason: 'time' });
      throw new AppError('photo-damaged', { name, why: 'decoder-crashed' });
    }
    if (answer.ok) return answer.answer;
    if ('error' in answer) throw new AppError(answer.error.code, { ...answer.error.details });
    throw new Error(answer.fault);
  }

  #start(): ChildProcess {
    const { ELECTRON_RUN_AS_NODE: _, NODE_OPTIONS: __, ...env } = process.env;
    const child = fork(ownProgram('measuring/child'), [], {
      execArgv: ['--max-old-space-size=1024'],
      serialization: 'advanced',
      stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
      env: { ...env, MALLOC_ARENA_MAX: '2' },
    });
    child.on('error', () => {});
    this.#child = child;
    return child;
  }

  close(): void {
    this.#child?.kill('SIGKILL');
    this.#child = null;
  }
}
