import { createHash, randomUUID } from 'node:crypto';
import { type FileHandle, mkdir, open, readdir, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { refusedReading, refusedWriting } from './refusals.ts';
import { syncFolder } from './sync.ts';

/** Pictures made from an original. All of them can be made again. */
export const derivativeKinds = ['thumb', 'screen', 'full', 'region', 'working'] as const;
export type DerivativeKind = (typeof derivativeKinds)[number];

/** A copy on its way in: complete and digested, not yet part of the store. */
export interface Incoming {
  readonly path: string;
  readonly digest: string;
  readonly byteLength: number;
}

const chunkBytes = 1 << 20;
const abandonedAfterMs = 3_600_000;
const isDigest = (text: string): boolean => /^[0-9a-f]{64}$/.test(text);

/** A path part made of a digest and of nothing else. @throws Error for anything that is not a digest: names never become paths. */
const shelf = (digest: string): string => {
  if (!isDigest(digest)) throw new Error('not a digest');
  return join(digest.slice(0, 2), digest);
};

/**
 * The photos of a data folder: untouched originals under their SHA-256, and a cache of what is made from them. An original
 * is written under a temporary name, synced, renamed, and its folder synced, so that a name in the store always stands for
 * whole bytes that are on the disk.
 */
export class PhotoStore {
  readonly #data: string;
  readonly #originals: string;
  readonly #incoming: string;
  readonly #derivatives: string;
  readonly #making: string;
  /** Two copies of one photo offered together must not race for one name. */
  readonly #keeping = new Map<string, Promise<unknown>>();

  #readyForOriginals: Promise<void> | null = null;

  constructor(dataFolder: string) {
    this.#data = dataFolder;
    this.#originals = join(dataFolder, 'originals');
    this.#incoming = join(this.#originals, 'incoming');
    this.#derivatives = join(dataFolder, 'derivatives');
    this.#making = join(this.#derivatives, 'making');
  }

  /** Makes the folders and clears away what a sudden end left half done. Only the folder's one writer comes here. */
  async #prepare(): Promise<void> {
    await mkdir(this.#incoming, { recursive: true });
    await mkdir(this.#making, { recursive: true });
    await syncFolder(this.#data);
    await syncFolder(this.#originals);
    for (const name of await readdir(this.#incoming)) await rm(join(this.#incoming, name), { force: true });
    for (const name of await readdir(this.#making)) {
      const path = join(this.#making, name);
      const about = await stat(path).catch(() => null);
      // A reader beside the writer may be making one this moment.
      if (about && Date.now() - about.mtimeMs > abandonedAfterMs) await rm(path, { force: true });
    }
  }

  originalPath(digest: string): string {
    return join(this.#originals, shelf(digest));
  }

  derivativePath(digest: string, kind: DerivativeKind): string {
    return join(this.#derivatives, kind, `${shelf(digest)}.${kind === 'working' ? 'tif' : 'jpg'}`);
  }

  derivativeFolder(kind: DerivativeKind): string {
    return join(this.#derivatives, kind);
  }

  /** A free name for a derivative in the making, on the same file system as its later place. */
  async makingPath(): Promise<string> {
    try {
      await mkdir(this.#making, { recursive: true });
    } catch (cause) {
      throw refusedWriting(cause);
    }
    return join(this.#making, randomUUID());
  }

  /** Moves a finished derivative to its place. Not synced: what a power cut spoils is found out and made again. */
  async putDerivative(madePath: string, digest: string, kind: DerivativeKind): Promise<void> {
    const path = this.derivativePath(digest, kind);
    try {
      await mkdir(join(path, '..'), { recursive: true });
      await rename(madePath, path);
    } catch (cause) {
      await rm(madePath, { force: true });
      throw refusedWriting(cause);
    }
  }

  /**
   * Copies a file in under a temporary name, digesting on the way.
   *
   * @throws AppError 'disk-full', 'folder-unwritable', 'photo-unreadable'; the signal's reason when cancelled. Nothing is left behind.
   */
  async receive(source: FileHandle | Uint8Array, name: string, signal?: AbortSignal): Promise<Incoming> {
    const path = join(this.#incoming, `${randomUUID()}.part`);
    let out: FileHandle | undefined;
    try {
      this.#readyForOriginals ??= this.#prepare();
      await this.#readyForOriginals;
      out = await open(path, 'wx', 0o600);
      const hash = createHash('sha256');
      let byteLength = 0;
      for await (const chunk of chunksOf(source, name)) {
        signal?.throwIfAborted();
        hash.update(chunk);
        await writeAll(out, chunk);
        byteLength += chunk.byteLength;
      }
      await out.close();
      out = undefined;
      return { path, digest: hash.digest('hex'), byteLength };
    } catch (cause) {
      await out?.close().catch(() => {});
      await rm(path, { force: true });
      throw refusedWriting(cause);
    }
  }

  /** Makes an incoming copy part of the store. When this resolves, bytes and name are on the disk. */
  async keep(incoming: Incoming): Promise<{ alreadyThere: boolean }> {
    const before = this.#keeping.get(incoming.digest);
    const kept = (before ?? Promise.resolve()).catch(() => {}).then(() => this.#keep(incoming));
    this.#keeping.set(incoming.digest, kept);
    try {
      return await kept;
    } finally {
      if (this.#keeping.get(incoming.digest) === kept) this.#keeping.delete(incoming.digest);
    }
  }

  async #keep({ path, digest, byteLength }: Incoming): Promise<{ alreadyThere: boolean }> {
    const place = this.originalPath(digest);
    const folder = join(place, '..');
    try {
      const there = await stat(place).catch(() => null);
      if (there) {
        if (there.size !== byteLength)
          throw new AppError('folder-damaged', { what: `original ${digest.slice(0, 12)}` });
        await rm(path, { force: true });
        // It may have been renamed by a run that ended before the folder was synced.
        await syncFolder(folder);
        return { alreadyThere: true };
      }
      const handle = await open(path, 'r+');
      try {
        await handle.chmod(0o400);
        await handle.sync();
      } finally {
        await handle.close();
      }
      const isNewFolder = (await mkdir(folder, { recursive: true })) !== undefined;
      await rename(path, place);
      await syncFolder(folder);
      if (isNewFolder) await syncFolder(this.#originals);
      return { alreadyThere: false };
    } catch (cause) {
      await rm(path, { force: true });
      throw refusedWriting(cause);
    }
  }

  async discard(incoming: Incoming): Promise<void> {
    await rm(incoming.path, { force: true });
  }

  /** Where an original or a derivative lies, or null when it is not there or the digest is none. */
  async locate(digest: string, kind: 'original' | DerivativeKind): Promise<string | null> {
    if (!isDigest(digest)) return null;
    const path = kind === 'original' ? this.originalPath(digest) : this.derivativePath(digest, kind);
    const there = await stat(path).catch(() => null);
    if (!there?.isFile()) return null;
    return kind === 'original' || kind === 'working' || (await isWholeJpeg(path)) ? path : null;
  }
}

async function* chunksOf(source: FileHandle | Uint8Array, name: string): AsyncGenerator<Uint8Array> {
  if (source instanceof Uint8Array) {
    for (let at = 0; at < source.byteLength; at += chunkBytes) yield source.subarray(at, at + chunkBytes);
    return;
  }
  const chunk = Buffer.allocUnsafe(chunkBytes);
  for (let at = 0; ; ) {
    const { bytesRead } = await source.read(chunk, 0, chunkBytes, at).catch((cause: unknown) => {
      throw refusedReading(cause, name);
    });
    if (bytesRead === 0) return;
    at += bytesRead;
    yield chunk.subarray(0, bytesRead);
  }
}

const writeAll = async (out: FileHandle, chunk: Uint8Array): Promise<void> => {
  for (let at = 0; at < chunk.byteLength; ) at += (await out.write(chunk, at)).bytesWritten;
};

/** A derivative that a power cut cut short lacks its end marker. */
const isWholeJpeg = async (path: string): Promise<boolean> => {
  const handle = await open(path, 'r');
  try {
    const { size } = await handle.stat();
    const marker = Buffer.alloc(2);
    if (size < 4) return false;
    await handle.read(marker, 0, 2, size - 2);
    return marker.readUInt16BE() === 0xffd9;
  } finally {
    await handle.close();
  }
};
