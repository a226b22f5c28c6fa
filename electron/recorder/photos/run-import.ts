import { basename } from 'node:path';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { ImportJob, OfferedFile } from '../../../shared-lib/contract/shots.ts';
import type { Context } from '../context.ts';
import { visitLayout } from '../findings/places.ts';
import { addShot, type ImportTarget } from './add-shot.ts';
import { type ItemOutcome, importPhotos, type OfferedItem } from './import-job.ts';
import { type PhotoService, photosOf } from './photo-service.ts';

const offeredFile = (outcome: ItemOutcome<OfferedFile>): OfferedFile =>
  'accepted' in outcome ? outcome.accepted : { name: outcome.name, accepted: false, error: outcome.refused.toWire() };

const asInternal = (context: Context, cause: unknown): AppError => {
  const id = context.newId();
  process.stderr.write(`internal ${id}: ${cause instanceof Error ? (cause.stack ?? cause.message) : String(cause)}\n`);
  return new AppError('internal', { id });
};

const run = async (
  context: Context,
  photos: PhotoService,
  target: ImportTarget,
  jobId: string,
  items: readonly OfferedItem[],
  signal: AbortSignal,
): Promise<OfferedFile[]> => {
  const tell = (done: number, file: OfferedFile | null, ended: 'no' | 'complete' | 'stopped'): void =>
    context.emit({ event: 'import', jobId, visitId: target.visitId, done, of: items.length, file, ended });
  const outcomes = await importPhotos<OfferedFile>({
    room: photos,
    items,
    signal,
    // One step id for the whole import: undo takes it back at once.
    commit: (taken, item) =>
      context.mutate((writer) => addShot(context, writer, target, taken, item.name), { stepId: jobId }),
    progress: (outcome, done) => tell(done, offeredFile(outcome), 'no'),
    fault: (cause) => asInternal(context, cause),
  });
  photos.jobs.delete(jobId);
  tell(outcomes.length, null, outcomes.length < items.length ? 'stopped' : 'complete');
  return outcomes.map(offeredFile);
};

const start = (context: Context, visitId: string, items: readonly OfferedItem[]) => {
  const { visit } = visitLayout(context, visitId);
  const photos = photosOf(context);
  photos.decoder.warm();
  const jobId = context.newId();
  const stop = new AbortController();
  photos.jobs.set(jobId, stop);
  const target = { visitId, machineId: visit.machine_id, component: visit.current_part };
  return { jobId, ended: run(context, photos, target, jobId, items, stop.signal) };
};

/** Begins an import and answers at once; `import` events tell the rest. */
export const beginImport = (context: Context, visitId: string, items: readonly OfferedItem[]): ImportJob => {
  const { jobId, ended } = start(context, visitId, items);
  context.background(ended.then(() => {}));
  return { jobId, files: items.length };
};

/** Imports and waits for the end: what became of each file, in the order of offering. */
export const takeIntoVisit = (context: Context, visitId: string, paths: readonly string[]): Promise<OfferedFile[]> =>
  start(
    context,
    visitId,
    paths.map((path) => ({ name: basename(path), source: path })),
  ).ended;
