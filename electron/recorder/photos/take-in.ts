import { constants, type FileHandle, open, rm } from 'node:fs/promises';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { Original } from '../../../shared-lib/model/shot.ts';
import type { Taken } from './decode/job.ts';
import type { Decoder } from './decoder.ts';
import { refusedReading } from './refusals.ts';
import { isReadableKind, type Kind, type ReadableKind, readableKinds, sniff, sniffLength } from './sniff.ts';
import type { Incoming, PhotoStore } from './store.ts';

export interface PhotoRoom {
  readonly store: PhotoStore;
  readonly decoder: Decoder;
}

/** What the camera says of the moment. The name of the camera stands in the original. */
export interface ShotFacts {
  readonly takenLocal: string | null;
  readonly takenZoneOffsetMin: number | null;
  readonly camera: string | null;
}

export interface TakenIn {
  readonly original: Original;
  readonly facts: ShotFacts;
  /** The bytes were in the store before. */
  readonly alreadyThere: boolean;
}

/** A path that the shell or the command line named, or the bytes themselves. */
export type PhotoSource = string | Uint8Array;

/** A gigabyte: a raw scan of 120 megapixels in 16 bits still fits. */
const mostFileMegabytes = 1000;

const notImages: ReadonlySet<Kind> = new Set(['pdf', 'html', 'zip', 'text', 'unknown']);

/** @throws AppError when these bytes are not a picture that is taken in */
const kindOf = (head: Uint8Array, name: string): ReadableKind => {
  const kind = sniff(head);
  if (isReadableKind(kind)) return kind;
  if (kind === 'svg') throw new AppError('photo-is-drawing', { name });
  if (notImages.has(kind)) throw new AppError('photo-not-an-image', { name, found: kind });
  throw new AppError('photo-kind-not-read', { name, kind });
};

const checkSize = (bytes: number, name: string): void => {
  if (bytes === 0) throw new AppError('photo-empty', { name });
  const megabytes = Math.round(bytes / 1_000_000);
  if (megabytes > mostFileMegabytes) {
    throw new AppError('photo-too-large', { name, megabytes, mostMegabytes: mostFileMegabytes });
  }
};

const openFile = async (path: string, name: string): Promise<FileHandle> => {
  let file: FileHandle;
  try {
    // Without NONBLOCK a pipe under a photo's name would be waited on for ever.
    file = await open(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  } catch (cause) {
    throw refusedReading(cause, name);
  }
  const about = await file.stat();
  if (about.isFile()) return file;
  await file.close();
  throw about.isDirectory()
    ? new AppError('photo-is-folder', { name })
    : new AppError('photo-unreadable', { name, reason: 'no-ordinary-file' });
};

const readHead = async (file: FileHandle, name: string): Promise<Uint8Array> => {
  try {
    const { bytesRead, buffer } = await file.read(Buffer.alloc(sniffLength), 0, sniffLength, 0);
    return buffer.subarray(0, bytesRead);
  } catch (cause) {
    throw refusedReading(cause, name);
  }
};

const receive = async (
  store: PhotoStore,
  source: PhotoSource,
  name: string,
  signal?: AbortSignal,
): Promise<{ incoming: Incoming; kind: ReadableKind }> => {
  if (typeof source !== 'string') {
    checkSize(source.byteLength, name);
    const kind = kindOf(source.subarray(0, sniffLength), name);
    return { incoming: await store.receive(source, name, signal), kind };
  }
  const file = await openFile(source, name);
  try {
    checkSize((await file.stat()).size, name);
    const kind = kindOf(await readHead(file, name), name);
    return { incoming: await store.receive(file, name, signal), kind };
  } finally {
    await file.close();
  }
};

const keepTaken = async (
  store: PhotoStore,
  incoming: Incoming,
  made: { thumbPath: string; screenPath: string },
): Promise<boolean> => {
  const { alreadyThere } = await store.keep(incoming);
  await store.putDerivative(made.thumbPath, incoming.digest, 'thumb');
  await store.putDerivative(made.screenPath, incoming.digest, 'screen');
  return alreadyThere;
};

/**
 * Takes one file into the store: copied and digested, looked over and decoded in a child, and only then given its place.
 * When this resolves, the original and its name are on the disk; when it throws, nothing of it is left.
 *
 * @param name  the offered name: for refusals only, never for a path
 * @throws AppError 'photo-*', 'disk-full', 'folder-unwritable'; the signal's reason when cancelled
 */
export const takeIn = async (
  { store, decoder }: PhotoRoom,
  source: PhotoSource,
  name: string,
  signal?: AbortSignal,
): Promise<TakenIn> => {
  signal?.throwIfAborted();
  const { incoming, kind } = await receive(store, source, name, signal);
  const made: string[] = [];
  try {
    const [thumbPath, screenPath] = [await store.makingPath(), await store.makingPath()];
    made.push(thumbPath, screenPath);
    const job = { kind: 'take', path: incoming.path, picture: kind, thumbPath, screenPath } as const;
    const taken: Taken | null = await decoder.run(job, name, signal);
    if (!taken) throw new Error('the decoder answered without what it found');
    const { takenLocal, takenZoneOffsetMin, ...picture } = taken;
    const alreadyThere = await keepTaken(store, incoming, { thumbPath, screenPath });
    const { digest, byteLength } = incoming;
    return {
      original: { digest, byteLength, mediaType: readableKinds[kind], ...picture },
      facts: { takenLocal, takenZoneOffsetMin, camera: taken.camera },
      alreadyThere,
    };
  } catch (cause) {
    await store.discard(incoming);
    for (const path of made) await rm(path, { force: true });
    throw cause;
  }
};
