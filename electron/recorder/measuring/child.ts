import { basename } from 'node:path';
import sharp from 'sharp';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { traceBox, traceLine } from '../../../shared-lib/tracing/trace.ts';
import { RefusedPicture } from '../photos/decode/job.ts';
import { refusedReading } from '../photos/refusals.ts';
import {
  checkInside,
  type FromMeasuringChild,
  type MeasuringAnswer,
  type MeasuringJob,
  MeasuringRefusal,
} from './job.ts';
import { greyOf, readUprightPixels } from './pixels.ts';

/** Opens photos and measures in them away from the recorder, so that no photo and no long calculation holds up a save. */
sharp.cache(false);
sharp.concurrency(1);

const perform = async (job: MeasuringJob): Promise<MeasuringAnswer> => {
  const picture = await readUprightPixels(job.path);
  const photo = { width: picture.width, height: picture.height };
  const { points, scribble = [] } = job.request;
  checkInside([...points, ...scribble], photo);
  const grey = greyOf(picture, traceBox([...points, ...scribble], photo));
  const began = performance.now();
  const trace = traceLine(grey, job.request);
  return { kind: 'trace', trace, photo, tracingMs: performance.now() - began };
};

const answerTo = async (job: MeasuringJob): Promise<FromMeasuringChild> => {
  const name = basename(job.path);
  try {
    return { ok: true, answer: await perform(job) };
  } catch (cause) {
    if (cause instanceof AppError) return { ok: false, error: cause.toWire() };
    if (cause instanceof MeasuringRefusal)
      return { ok: false, error: { code: cause.code, details: { name, ...cause.details } } };
    if (cause instanceof RefusedPicture) {
      const { code, ...details } = cause.refusal;
      return { ok: false, error: { code, details: { name, ...details } } };
    }
    const reading = refusedReading(cause, name);
    if (reading instanceof AppError) return { ok: false, error: reading.toWire() };
    return { ok: false, fault: cause instanceof Error ? (cause.stack ?? cause.message) : String(cause) };
  }
};

process.on('message', (job: MeasuringJob) => {
  void answerTo(job).then((answer) => {
    if (process.connected) process.send?.(answer);
  });
});
process.on('disconnect', () => process.exit());
