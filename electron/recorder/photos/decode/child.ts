import sharp from 'sharp';
import type { FromChild, ToChild } from '../decoder.ts';
import { type Job, type JobAnswer, RefusedPicture, type Taken } from './job.ts';
import { take } from './take.ts';
import { cutRegion, makeFull, makeWorkingCopy } from './working-copy.ts';

/**
 * Decodes photos away from the recorder: a file that crashes, hangs or bloats a decoder costs this process alone. One job at
 * a time; its parent watches clock and memory. Only this process loads the image libraries.
 */
sharp.cache(false);
// One thread for one picture: two of these children keep two cores busy without fighting over them.
sharp.concurrency(1);

const perform = async (job: Job): Promise<Taken | null> => {
  switch (job.kind) {
    case 'take':
      return await take(job);
    case 'full':
      await makeFull(job);
      return null;
    case 'working':
      await makeWorkingCopy(job);
      return null;
    case 'region':
      await cutRegion(job);
      return null;
  }
};

const answerTo = async (job: Job): Promise<JobAnswer> => {
  try {
    return { ok: true, taken: await perform(job) };
  } catch (cause) {
    if (cause instanceof RefusedPicture) return { ok: false, refusal: cause.refusal };
    const code = (cause as { code?: unknown }).code;
    if (code === 'ENOSPC' || code === 'EDQUOT') return { ok: false, refusal: { code: 'disk-full' } };
    return { ok: false, fault: cause instanceof Error ? (cause.stack ?? cause.message) : String(cause) };
  }
};

const tell = (message: FromChild): void => {
  if (process.connected) process.send?.(message);
};

process.on('message', (message: ToChild) => {
  void answerTo(message.job).then((answer) => tell({ kind: 'answer', answer }));
});
process.on('disconnect', () => process.exit());
tell({ kind: 'ready' });
