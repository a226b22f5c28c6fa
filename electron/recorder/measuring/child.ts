import { basename } from 'node:path';
import sharp from 'sharp';
import { findCard } from '../../../shared-lib/calibration/card/find-card.ts';
import { suggestRegistration } from '../../../shared-lib/comparison/register.ts';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { growArea } from '../../../shared-lib/growing/grow.ts';
import { traceBox, traceLine } from '../../../shared-lib/tracing/trace.ts';
import { RefusedPicture } from '../photos/decode/job.ts';
import { refusedReading } from '../photos/refusals.ts';
import { looksAt } from './colour-planes.ts';
import {
  checkInside,
  type FromMeasuringChild,
  type MeasuringAnswer,
  type MeasuringJob,
  MeasuringRefusal,
} from './job.ts';
import { greyOf, readUprightPixels } from './pixels.ts';
import { practise } from './practise.ts';
import { softened } from './softened.ts';
import { writeStraight } from './straighten.ts';

/** Opens photos and measures in them away from the recorder, so that no photo and no long calculation holds up a save. */
sharp.cache(false);
sharp.concurrency(1);

const trace = async ({ path, request }: Extract<MeasuringJob, { kind: 'trace' }>): Promise<MeasuringAnswer> => {
  const picture = await readUprightPixels(path);
  const photo = { width: picture.width, height: picture.height };
  const { points, scribble = [] } = request;
  checkInside([...points, ...scribble], photo);
  const grey = greyOf(picture, traceBox([...points, ...scribble], photo));
  const began = performance.now();
  const found = traceLine(grey, request);
  return { kind: 'trace', trace: found, photo, tracingMs: performance.now() - began };
};

/** The same two photos give the same suggestion every time. */
const fixedSeed = 20240229;

/** Park and Miller's generator (1988): enough to draw samples with. */
const draws = (seed: number): (() => number) => {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
};

const register = async (job: Extract<MeasuringJob, { kind: 'register' }>): Promise<MeasuringAnswer> => {
  // One after the other: two large photos at once need twice the memory.
  const before = greyOf(await readUprightPixels(job.path));
  const after = greyOf(await readUprightPixels(job.laterPath));
  return { kind: 'register', suggestion: suggestRegistration(before, after, draws(fixedSeed)) };
};

const straighten = async (job: Extract<MeasuringJob, { kind: 'straighten' }>): Promise<MeasuringAnswer> => {
  const { source, toSource } = await softened(await readUprightPixels(job.path), job.toPhoto, job);
  await writeStraight(source, job, toSource, job.outPath);
  return { kind: 'straighten' };
};

const lookForCard = async ({ path }: Extract<MeasuringJob, { kind: 'find-card' }>): Promise<MeasuringAnswer> => {
  const grey = greyOf(await readUprightPixels(path));
  const began = performance.now();
  const card = findCard(grey);
  const photo = { width: grey.width, height: grey.height };
  return { kind: 'find-card', card, photo, findingMs: performance.now() - began };
};

const grow = async ({ path, request }: Extract<MeasuringJob, { kind: 'grow' }>): Promise<MeasuringAnswer> => {
  const picture = await readUprightPixels(path);
  const photo = { width: picture.width, height: picture.height };
  checkInside(request.points, photo);
  const began = performance.now();
  const grown = growArea(looksAt(picture), photo, request);
  return { kind: 'grow', grown, photo, growingMs: performance.now() - began };
};

const perform = (job: MeasuringJob): Promise<MeasuringAnswer> => {
  switch (job.kind) {
    case 'trace':
      return trace(job);
    case 'grow':
      return grow(job);
    case 'register':
      return register(job);
    case 'straighten':
      return straighten(job);
    case 'find-card':
      return lookForCard(job);
  }
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

practise();
