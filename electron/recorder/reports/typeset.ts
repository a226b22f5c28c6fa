import { Worker } from 'node:worker_threads';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { Report } from '../../../shared-lib/report/model.ts';
import type { ReportSource } from '../../../shared-lib/report/source.ts';
import { cardSheet } from '../../../shared-lib/wording/card-sheet.ts';
import { ownProgram } from '../own-files.ts';
import type { BuildJob, CardJob, PaperName, ReportJob, TypesetAnswer, TypesetJob } from './typeset-job.ts';

export interface TypesetOptions {
  readonly paper: PaperName;
  /** Screen-sized pictures by the digest of their original. One that is missing leaves a labelled frame. */
  readonly photoFiles: ReadonlyMap<string, string>;
}

export interface TypesetPdf {
  readonly pdf: Uint8Array;
  readonly pages: number;
}

interface Waiting {
  readonly resolve: (answer: TypesetAnswer) => void;
  readonly reject: (error: AppError) => void;
  readonly timer: NodeJS.Timeout;
}

/** Longer than any report takes; a thread that is silent for so long is stuck. */
const patienceMs = 180_000;

const failed = (message: string): AppError => new AppError('report-typesetting-failed', { message });

/**
 * The typesetter in a thread of its own, so that a long report never holds up a save. Its thread loads from the moment it
 * is made, stays warm, and is started anew when it dies.
 */
export class Typesetter {
  #worker: Worker | null = null;
  #nextId = 1;
  readonly #waiting = new Map<number, Waiting>();

  constructor() {
    this.#start().unref();
  }

  /**
   * The report of a record.
   *
   * @throws AppError 'report-typesetting-failed'
   */
  async build(source: ReportSource): Promise<Report> {
    const answer = await this.#run({ make: 'report', source });
    if (!('report' in answer)) throw failed('no report came back');
    return answer.report;
  }

  /** @throws AppError 'report-typesetting-failed' */
  async typeset(report: Report, options: TypesetOptions): Promise<TypesetPdf> {
    const answer = await this.#run({ make: 'pdf', report, ...options });
    if (!('pdf' in answer)) throw failed('no PDF came back');
    return { pdf: answer.pdf, pages: answer.pages };
  }

  /**
   * One SVG per page, from the same document, with its photos by their `photo://` addresses.
   *
   * @throws AppError 'report-typesetting-failed'
   */
  async preview(report: Report, options: TypesetOptions): Promise<readonly string[]> {
    const answer = await this.#run({ make: 'preview', report, ...options });
    if (!('svgs' in answer)) throw failed('no pages came back');
    return answer.svgs;
  }

  /**
   * The sheet with the calibration cards, true to size.
   *
   * @throws AppError 'report-typesetting-failed'
   */
  async card(paper: PaperName): Promise<Uint8Array> {
    const answer = await this.#run({ make: 'card', sheet: cardSheet(), paper });
    if (!('pdf' in answer)) throw failed('no PDF came back');
    return answer.pdf;
  }

  async close(): Promise<void> {
    const worker = this.#worker;
    this.#worker = null;
    this.#rejectAll('the typesetter was closed');
    await worker?.terminate();
  }

  async #run(job: BuildJob | TypesetJob | CardJob): Promise<TypesetAnswer> {
    const worker = this.#start();
    const id = this.#nextId++;
    const answer = await new Promise<TypesetAnswer>((resolve, reject) => {
      const timer = setTimeout(() => {
        this.#forget(worker, 'it took too long');
        void worker.terminate();
      }, patienceMs);
      this.#waiting.set(id, { resolve, reject, timer });
      worker.ref();
      worker.postMessage({ id, ...job } satisfies ReportJob);
    });
    if ('failed' in answer) throw failed(answer.failed);
    return answer;
  }

  #start(): Worker {
    if (this.#worker) return this.#worker;
    const worker = new Worker(ownProgram('reports/typeset-worker'));
    worker.on('message', (answer: TypesetAnswer) => this.#settle(worker, answer));
    worker.on('error', (error) => this.#forget(worker, error instanceof Error ? error.message : String(error)));
    worker.on('exit', () => this.#forget(worker, 'its thread ended'));
    this.#worker = worker;
    return worker;
  }

  #settle(worker: Worker, answer: TypesetAnswer): void {
    const waiting = this.#waiting.get(answer.id);
    if (!waiting) return;
    this.#waiting.delete(answer.id);
    clearTimeout(waiting.timer);
    // An idle typesetter must not keep the recorder from ending.
    if (this.#waiting.size === 0) worker.unref();
    waiting.resolve(answer);
  }

  /** The next report starts a new thread; what waited for this one fails with the reason. */
  #forget(worker: Worker, message: string): void {
    if (this.#worker !== worker) return;
    this.#worker = null;
    this.#rejectAll(message);
  }

  #rejectAll(message: string): void {
    const waiting = [...this.#waiting.values()];
    this.#waiting.clear();
    for (const { reject, timer } of waiting) {
      clearTimeout(timer);
      reject(failed(message));
    }
  }
}
