import { type ChildProcess, fork } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { ownProgram } from '../own-files.ts';
import type { Job, JobAnswer, Refusal, Taken } from './decode/job.ts';

export interface ToChild {
  readonly job: Job;
}
export type FromChild = { readonly kind: 'ready' } | { readonly kind: 'answer'; readonly answer: JobAnswer };

export interface DecoderLimits {
  readonly children: number;
  /** For a new file, from the moment a child has it. */
  readonly takeMs: number;
  /** For a large picture that was decoded before, and is made into a working copy. */
  readonly copyMs: number;
  /** Resident memory at which a child is ended. Below the 1.5 GB promised, since it is looked at only now and then. */
  readonly mostBytes: number;
  /** Resident memory above which an idle child is replaced: WebAssembly never gives memory back. */
  readonly restBytes: number;
  /** An idle child is ended after this long. */
  readonly idleMs: number;
  readonly childModule: string;
}

export const usualLimits: DecoderLimits = {
  children: 2,
  takeMs: 10_000,
  copyMs: 30_000,
  mostBytes: 1_250_000_000,
  restBytes: 600_000_000,
  idleMs: 60_000,
  childModule: ownProgram('photos/decode/child'),
};

const watchEveryMs = 40;
const startMs = 30_000;

/** Resident bytes of a process. @returns null where the system does not say without asking another program */
const residentBytes = (pid: number): number | null => {
  if (process.platform !== 'linux') return null;
  try {
    const kibibytes = /^VmRSS:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
    return kibibytes === undefined ? null : Number(kibibytes) * 1024;
  } catch {
    // The child has just ended; its exit event says the rest.
    return null;
  }
};

const errorOf = (refusal: Refusal, name: string): AppError => {
  const { code, ...details } = refusal;
  return new AppError(code, code === 'disk-full' ? {} : { name, ...details });
};

type GaveUp = 'time' | 'memory' | 'crash' | 'stopped' | 'no-start';

/** V8 aborts when its own heap is full; a kill that is not ours is the system's, short of memory. */
const endedBy = (signal: NodeJS.Signals | null): GaveUp =>
  signal === 'SIGABRT' || signal === 'SIGKILL' ? 'memory' : 'crash';

/** One forked process, busy with at most one job. */
class DecodingChild {
  readonly #process: ChildProcess;
  readonly #limits: DecoderLimits;
  readonly #ready: Promise<void>;
  #gaveUp: GaveUp | null = null;
  #settle: ((answer: JobAnswer | GaveUp) => void) | null = null;
  #idleClock: NodeJS.Timeout | undefined;
  #isGone = false;

  constructor(limits: DecoderLimits) {
    this.#limits = limits;
    const { ELECTRON_RUN_AS_NODE: _, NODE_OPTIONS: __, ...env } = process.env;
    this.#process = fork(limits.childModule, [], {
      execArgv: ['--max-old-space-size=512'],
      serialization: 'advanced',
      // The image libraries print to the error stream what they also report as errors.
      stdio: ['ignore', 'ignore', 'ignore', 'ipc'],
      env: { ...env, MALLOC_ARENA_MAX: '2' },
    });
    let ready = (): void => {};
    this.#ready = new Promise((resolve) => {
      ready = resolve;
    });
    let isStarted = false;
    this.#process.on('message', (message: FromChild) => {
      if (message.kind === 'ready') {
        isStarted = true;
        ready();
      } else this.#settle?.(message.answer);
    });
    const ended = (signal: NodeJS.Signals | null): void => {
      this.#isGone = true;
      clearTimeout(this.#idleClock);
      // A child that never came up says nothing of the photo.
      this.#gaveUp ??= isStarted ? endedBy(signal) : 'no-start';
      ready();
      this.#settle?.(this.#gaveUp);
    };
    this.#process.on('exit', (_code, signal) => ended(signal));
    this.#process.on('error', () => ended(null));
    this.#rest();
  }

  /** An idle child must not keep the recorder alive. */
  #rest(): void {
    this.#process.unref();
    this.#process.channel?.unref();
    this.#idleClock = setTimeout(() => this.end('stopped'), this.#limits.idleMs).unref();
  }

  end(reason: GaveUp): void {
    this.#gaveUp ??= reason;
    if (!this.#isGone) this.#process.kill('SIGKILL');
  }

  /** Neither gone nor told to go. */
  isUsable(): boolean {
    return !this.#isGone && this.#gaveUp === null;
  }

  isBloated(): boolean {
    return (residentBytes(this.#process.pid ?? 0) ?? 0) > this.#limits.restBytes;
  }

  async run(job: Job, capMs: number, signal?: AbortSignal): Promise<JobAnswer | GaveUp> {
    clearTimeout(this.#idleClock);
    this.#process.ref();
    this.#process.channel?.ref();
    const onAbort = (): void => this.end('stopped');
    signal?.addEventListener('abort', onAbort, { once: true });
    const starting = setTimeout(() => this.end('no-start'), startMs);
    await this.#ready;
    clearTimeout(starting);
    const clock = setTimeout(() => this.end('time'), capMs);
    const watch = setInterval(() => {
      if ((residentBytes(this.#process.pid ?? 0) ?? 0) > this.#limits.mostBytes) this.end('memory');
    }, watchEveryMs);
    try {
      return await new Promise<JobAnswer | GaveUp>((resolve) => {
        this.#settle = resolve;
        if (this.#isGone) resolve(this.#gaveUp ?? 'no-start');
        else this.#process.send({ job } satisfies ToChild, () => {});
      });
    } finally {
      clearTimeout(clock);
      clearInterval(watch);
      signal?.removeEventListener('abort', onAbort);
      this.#settle = null;
      if (this.isUsable()) this.#rest();
    }
  }
}

/** A small pool of decoding children, kept warm. */
export class Decoder {
  readonly #limits: DecoderLimits;
  readonly #idle: DecodingChild[] = [];
  readonly #all = new Set<DecodingChild>();
  readonly #waiting: (() => void)[] = [];
  #free: number;

  constructor(limits: Partial<DecoderLimits> = {}) {
    this.#limits = { ...usualLimits, ...limits };
    this.#free = this.#limits.children;
  }

  /** Starts the children before the first photo needs them. */
  warm(): void {
    while (this.#all.size < this.#limits.children) this.#idle.push(this.#start());
  }

  #start(): DecodingChild {
    const child = new DecodingChild(this.#limits);
    this.#all.add(child);
    return child;
  }

  #takeChild(): DecodingChild {
    for (let child = this.#idle.pop(); child; child = this.#idle.pop()) {
      if (child.isUsable()) return child;
      this.#all.delete(child);
    }
    return this.#start();
  }

  #putBack(child: DecodingChild): void {
    if (child.isUsable() && !child.isBloated()) {
      this.#idle.push(child);
      return;
    }
    child.end('stopped');
    this.#all.delete(child);
  }

  async #turn(signal?: AbortSignal): Promise<void> {
    if (this.#free > 0) this.#free -= 1;
    else await new Promise<void>((resolve) => this.#waiting.push(resolve));
    if (!signal?.aborted) return;
    this.#passTurn();
    signal.throwIfAborted();
  }

  #passTurn(): void {
    const next = this.#waiting.shift();
    if (next) next();
    else this.#free += 1;
  }

  /**
   * @param name  the offered name, for the refusal's sentence
   * @throws AppError a refusal of the picture; the signal's reason when stopped; Error for what is a bug
   */
  async run(job: Job, name: string, signal?: AbortSignal): Promise<Taken | null> {
    await this.#turn(signal);
    let answer: JobAnswer | GaveUp;
    try {
      answer = await this.#runOnce(job, signal);
      // Starting may fail for a reason that passes, such as a moment without memory.
      if (answer === 'no-start' && !signal?.aborted) answer = await this.#runOnce(job, signal);
    } finally {
      this.#passTurn();
    }
    signal?.throwIfAborted();
    if (answer === 'time' || answer === 'memory') throw new AppError('photo-decoder-gave-up', { name, reason: answer });
    if (answer === 'crash') throw new AppError('photo-damaged', { name, why: 'decoder-crashed' });
    if (answer === 'stopped') throw new AppError('recorder-stopped', {});
    if (answer === 'no-start') throw new Error('the decoding child did not start');
    if (answer.ok) return answer.taken;
    if ('refusal' in answer) throw errorOf(answer.refusal, name);
    throw new Error(answer.fault);
  }

  async #runOnce(job: Job, signal?: AbortSignal): Promise<JobAnswer | GaveUp> {
    const child = this.#takeChild();
    try {
      const { takeMs, copyMs } = this.#limits;
      return await child.run(job, job.kind === 'take' ? takeMs : copyMs, signal);
    } finally {
      this.#putBack(child);
    }
  }

  close(): void {
    for (const child of this.#all) child.end('stopped');
    this.#all.clear();
    this.#idle.length = 0;
  }
}
