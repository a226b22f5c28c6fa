import type { RecorderEvent } from '../../shared-lib/contract/events.ts';
import type { OfferedFile } from '../../shared-lib/contract/shots.ts';
import { createStore, useStore } from './store.ts';

type ImportEvent = Extract<RecorderEvent, { event: 'import' }>;

/** One import as the window follows it. */
export interface ImportProgress {
  readonly jobId: string;
  readonly visitId: string;
  readonly done: number;
  readonly of: number;
  readonly accepted: readonly Extract<OfferedFile, { accepted: true }>[];
  readonly refused: readonly Extract<OfferedFile, { accepted: false }>[];
  readonly ended: ImportEvent['ended'];
}

/** The imports with one event more taken into account. */
export function withImportEvent(jobs: readonly ImportProgress[], event: ImportEvent): readonly ImportProgress[] {
  const before = jobs.find((job) => job.jobId === event.jobId);
  const { file } = event;
  const next: ImportProgress = {
    jobId: event.jobId,
    visitId: event.visitId,
    done: event.done,
    of: event.of,
    accepted: [...(before?.accepted ?? []), ...(file?.accepted === true ? [file] : [])],
    refused: [...(before?.refused ?? []), ...(file?.accepted === false ? [file] : [])],
    ended: event.ended,
  };
  return before === undefined ? [...jobs, next] : jobs.map((job) => (job === before ? next : job));
}

const imports = createStore<readonly ImportProgress[]>([]);

export function noteImport(event: ImportEvent): void {
  imports.set((jobs) => withImportEvent(jobs, event));
}

/** A recorder that has died takes nothing in any more; what it had not told of is not known to be here. */
export function endImports(): void {
  imports.set((jobs) => jobs.map((job) => (job.ended === 'no' ? { ...job, ended: 'stopped' } : job)));
}

/** The imports of one visit: running ones, and ended ones until they are put away. */
export function useImports(visitId: string): readonly ImportProgress[] {
  return useStore(imports).filter((job) => job.visitId === visitId);
}

export function putAwayImport(jobId: string): void {
  imports.set((jobs) => jobs.filter((job) => job.jobId !== jobId));
}
