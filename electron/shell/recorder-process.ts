import { type ChildProcess, fork } from 'node:child_process';
import type { Answer } from '../../shared-lib/contract/bridge.ts';
import type { Call, FromRecorder, OfferedPath, PhotoAnswer, ToRecorder } from '../../shared-lib/contract/envelope.ts';
import type { WireError } from '../../shared-lib/contract/errors.ts';
import type { RecorderEvent } from '../../shared-lib/contract/events.ts';

export interface RecorderOptions {
  /** The Node binary that runs it, never Electron's own. */
  readonly node: string;
  readonly script: string;
  readonly dataFolder: string;
  /** Where its compiled code is kept from one start to the next. */
  readonly codeFolder?: string;
  readonly onEvent: (event: RecorderEvent) => void;
}

/** Waits before the first, second ... restart in a row; the last one repeats. */
const restartDelaysMs = [100, 500, 2000, 8000];
/** A recorder that ran this long did not die of its start: the waits begin anew. */
const soundRunMs = 30_000;
const stopPatienceMs = 5000;
/** A folder that could not be opened is tried again by a call, but no more often than this. */
const reopenDelayMs = 1000;

const stopped: WireError = { code: 'recorder-stopped', details: {} };

/**
 * Runs the recorder, relays to it and from it, and starts it again when it dies.
 *
 * Every call is answered: by the recorder, or with `recorder-stopped` when it died before it could. Calls made while
 * it is starting wait for it. When it says that it cannot open the folder, its reason answers every call until a
 * later call's attempt succeeds.
 */
export class RecorderProcess {
  readonly #options: RecorderOptions;
  readonly #calls = new Map<number, (answer: Answer) => void>();
  readonly #photos = new Map<number, (answer: PhotoAnswer | 'recorder-stopped') => void>();
  #child: ChildProcess | null = null;
  #nextId = 1;
  #deathsInARow = 0;
  #startedAtMs = 0;
  #lastHeardAtMs = 0;
  #hasRun = false;
  #cannotOpen: WireError | null = null;
  #restart: NodeJS.Timeout | null = null;
  #afterStop: (() => void) | null = null;

  constructor(options: RecorderOptions) {
    this.#options = options;
  }

  start(): void {
    if (this.#child || this.#afterStop) return;
    if (this.#restart) clearTimeout(this.#restart);
    this.#restart = null;
    this.#startedAtMs = Date.now();
    const { node, script, dataFolder, codeFolder } = this.#options;
    const child = fork(script, ['--data', dataFolder], {
      execPath: node,
      execArgv: [],
      env: environment(codeFolder),
      serialization: 'advanced',
    });
    this.#child = child;
    child.on('message', (message) => this.#hear(message as FromRecorder));
    child.on('exit', (code, signal) => this.#lose(child, signal ?? `exit ${code}`));
    child.on('error', (error) => {
      // Also told of a message that could not be sent; then 'exit' follows.
      if (child.pid === undefined) this.#lose(child, error.message);
    });
  }

  call(call: Omit<Call, 'id'>): Promise<Answer> {
    if (!this.#child && this.#cannotOpen && Date.now() - this.#startedAtMs > reopenDelayMs) this.start();
    if (!this.#child) return Promise.resolve({ ok: false, error: this.#cannotOpen ?? stopped });
    const id = this.#nextId++;
    return new Promise((resolve) => {
      this.#calls.set(id, resolve);
      this.#send({ kind: 'call', call: { ...call, id } });
    });
  }

  /** Arrives before any call made after it: the channel keeps its order. */
  offer(offer: OfferedPath): void {
    this.#send({ kind: 'offer', offer });
  }

  locatePhoto(url: string): Promise<PhotoAnswer | 'recorder-stopped'> {
    if (!this.#child) return Promise.resolve('recorder-stopped');
    const id = this.#nextId++;
    return new Promise((resolve) => {
      this.#photos.set(id, resolve);
      this.#send({ kind: 'photo', request: { id, url } });
    });
  }

  /** Lets it finish what it has in hand; one that does not answer is ended. */
  stop(): Promise<void> {
    if (this.#restart) clearTimeout(this.#restart);
    const child = this.#child;
    return new Promise((resolve) => {
      this.#afterStop = resolve;
      if (!child) {
        resolve();
        return;
      }
      this.#send({ kind: 'stop' });
      setTimeout(() => child.kill('SIGKILL'), stopPatienceMs).unref();
    });
  }

  #send(message: ToRecorder): void {
    // An undelivered message needs no answer here: the child's exit answers for it.
    this.#child?.send(message, () => undefined);
  }

  #hear(message: FromRecorder): void {
    this.#lastHeardAtMs = Date.now();
    switch (message.kind) {
      case 'ready':
        this.#cannotOpen = null;
        this.#tell(this.#hasRun ? 'restarted' : 'running', null);
        this.#hasRun = true;
        return;
      case 'cannot-open':
        this.#cannotOpen = message.error;
        this.#answerAll(message.error);
        return;
      case 'reply': {
        const { id, ...answer } = message.reply;
        this.#calls.get(id)?.(answer);
        this.#calls.delete(id);
        return;
      }
      case 'photo':
        this.#photos.get(message.answer.id)?.(message.answer);
        this.#photos.delete(message.answer.id);
        return;
      case 'event':
        this.#options.onEvent(message.event);
        return;
    }
  }

  #lose(child: ChildProcess, reason: string): void {
    if (child !== this.#child) return;
    this.#child = null;
    this.#answerAll(this.#cannotOpen ?? stopped);
    if (this.#afterStop) {
      this.#afterStop();
      return;
    }
    this.#tell('gone', this.#cannotOpen?.code ?? reason);
    if (this.#cannotOpen) return;
    if (Date.now() - this.#startedAtMs > soundRunMs) this.#deathsInARow = 0;
    const delayMs = restartDelaysMs[Math.min(this.#deathsInARow, restartDelaysMs.length - 1)];
    this.#deathsInARow += 1;
    this.#restart = setTimeout(() => this.start(), delayMs);
  }

  #answerAll(error: WireError): void {
    const calls = [...this.#calls.values()];
    const photos = [...this.#photos.values()];
    this.#calls.clear();
    this.#photos.clear();
    for (const answer of calls) answer({ ok: false, error });
    for (const answer of photos) answer('recorder-stopped');
  }

  #tell(state: 'running' | 'restarted' | 'gone', reason: string | null): void {
    this.#options.onEvent({ event: 'recorder', state, atMs: this.#lastHeardAtMs, reason });
  }
}

/** Without what would turn the child into an Electron, or make its Node take options meant for another. */
function environment(codeFolder: string | undefined): NodeJS.ProcessEnv {
  const { ELECTRON_RUN_AS_NODE, NODE_OPTIONS, ...kept } = process.env;
  return codeFolder === undefined ? kept : { ...kept, NODE_COMPILE_CACHE: codeFolder };
}
