import { createHash } from 'node:crypto';
import { rm } from 'node:fs/promises';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { Original } from '../../../shared-lib/model/shot.ts';
import type { Context } from '../context.ts';
import type { Job } from './decode/job.ts';
import { wholePictureMegapixels } from './decode/limits.ts';
import type { Rectangle } from './decode/orientation.ts';
import { Decoder } from './decoder.ts';
import { type ReadableKind, readableKinds } from './sniff.ts';
import { type DerivativeKind, PhotoStore } from './store.ts';
import { touch, trimFolder } from './trim-cache.ts';

/** What is needed of an original to make pictures from it. */
export type KnownOriginal = Pick<Original, 'digest' | 'mediaType' | 'width' | 'height' | 'orientation'>;

/** Bounds of the caches that grow with looking; thumbnails and screen pictures stay with their originals. */
const cacheBounds: Partial<Record<DerivativeKind, number>> = {
  region: 300_000_000,
  full: 600_000_000,
  working: 1_500_000_000,
};
const trimEvery = 25;

const kindOf = (mediaType: string): ReadableKind => {
  const found = Object.entries(readableKinds).find(([, known]) => known === mediaType);
  if (!found) throw new Error(`no decoder for ${mediaType}`);
  return found[0] as ReadableKind;
};

/**
 * What the window can show from the original's own bytes. It turns a JPEG by its EXIF itself; other formats' EXIF it may
 * or may not heed, so those are shown as they are only where there is nothing to turn.
 */
const isShownAsItIs = ({ mediaType, orientation }: KnownOriginal): boolean =>
  mediaType === 'image/jpeg' || (orientation === 1 && mediaType !== 'image/heic' && mediaType !== 'image/tiff');

/** The photos of an open data folder, with what is running on them. */
export class PhotoService {
  readonly store: PhotoStore;
  readonly decoder: Decoder;
  /** Imports that can still be stopped. */
  readonly jobs = new Map<string, AbortController>();
  readonly #making = new Map<string, Promise<string>>();
  readonly #bounds: Partial<Record<DerivativeKind, number>>;
  #puts = 0;

  constructor(dataFolder: string, decoder = new Decoder(), bounds = cacheBounds) {
    this.store = new PhotoStore(dataFolder);
    this.decoder = decoder;
    this.#bounds = bounds;
  }

  /** Thumbnail or screen picture, made again when it is not there. */
  async shown(original: KnownOriginal, kind: 'thumb' | 'screen'): Promise<string> {
    const there = await this.store.locate(original.digest, kind);
    if (there) return there;
    await this.#once(`shown ${original.digest}`, async () => {
      const [thumbPath, screenPath] = [await this.store.makingPath(), await this.store.makingPath()];
      await this.#make({ kind: 'take', ...this.#source(original), thumbPath, screenPath }, [thumbPath, screenPath]);
      await this.store.putDerivative(thumbPath, original.digest, 'thumb');
      await this.store.putDerivative(screenPath, original.digest, 'screen');
      return screenPath;
    });
    return this.store.derivativePath(original.digest, kind);
  }

  /** The whole picture in a form that the window can show; null above the size where it asks for regions. */
  async whole(original: KnownOriginal): Promise<{ path: string; mediaType: string } | null> {
    if (original.width * original.height > wholePictureMegapixels * 1_000_000) return null;
    if (isShownAsItIs(original)) {
      const path = await this.store.locate(original.digest, 'original');
      return path === null ? null : { path, mediaType: original.mediaType };
    }
    return { path: await this.#copy(original, 'full'), mediaType: 'image/jpeg' };
  }

  /**
   * Cuts a region of the upright picture, fitted to `edge`.
   *
   * @returns the key under which photo:// serves it
   */
  async region(original: KnownOriginal, rectangle: Rectangle, edge: number): Promise<string> {
    const { x, y, width, height } = rectangle;
    if (x + width > original.width || y + height > original.height) {
      throw new AppError('invalid-input', { issues: [{ path: 'width', message: 'reaches beyond the photo' }] });
    }
    const key = createHash('sha256').update([original.digest, x, y, width, height, edge].join(' ')).digest('hex');
    const there = await this.store.locate(key, 'region');
    if (there) await touch(there);
    else {
      await this.#once(`region ${key}`, async () => {
        const workingPath = await this.#copy(original, 'working');
        const outPath = await this.store.makingPath();
        await this.#make({ kind: 'region', workingPath, rectangle, edge, outPath }, [outPath]);
        return await this.#put(outPath, key, 'region');
      });
    }
    return key;
  }

  /** A picture made from an original by someone else, kept among the regions under a key of its maker's. */
  async drawn(key: string, draw: (outPath: string) => Promise<unknown>): Promise<string> {
    const there = await this.store.locate(key, 'region');
    if (there) {
      await touch(there);
      return there;
    }
    return await this.#once(`region ${key}`, async () => {
      const outPath = await this.store.makingPath();
      try {
        await draw(outPath);
      } catch (cause) {
        await rm(outPath, { force: true });
        throw cause;
      }
      return await this.#put(outPath, key, 'region');
    });
  }

  async #copy(original: KnownOriginal, kind: 'full' | 'working'): Promise<string> {
    const there = await this.store.locate(original.digest, kind);
    if (there) {
      await touch(there);
      return there;
    }
    return await this.#once(`${kind} ${original.digest}`, async () => {
      const outPath = await this.store.makingPath();
      await this.#make({ kind, ...this.#source(original), outPath }, [outPath]);
      return await this.#put(outPath, original.digest, kind);
    });
  }

  #source({ digest, mediaType }: KnownOriginal): { path: string; picture: ReadableKind } {
    return { path: this.store.originalPath(digest), picture: kindOf(mediaType) };
  }

  async #make(job: Job, made: readonly string[]): Promise<void> {
    try {
      await this.decoder.run(job, '');
    } catch (cause) {
      for (const path of made) await rm(path, { force: true });
      throw cause;
    }
  }

  async #put(madePath: string, digest: string, kind: DerivativeKind): Promise<string> {
    await this.store.putDerivative(madePath, digest, kind);
    this.#puts += 1;
    const bound = this.#bounds[kind];
    if (bound !== undefined && (kind !== 'region' || this.#puts % trimEvery === 0)) {
      await trimFolder(this.store.derivativeFolder(kind), bound);
    }
    return this.store.derivativePath(digest, kind);
  }

  /** Two windows asking for the same thing wait for one making of it. */
  async #once(key: string, make: () => Promise<string>): Promise<string> {
    const running = this.#making.get(key);
    if (running) return await running;
    const fresh = make().finally(() => this.#making.delete(key));
    this.#making.set(key, fresh);
    return await fresh;
  }

  close(): void {
    for (const job of this.jobs.values()) job.abort();
    this.decoder.close();
  }
}

/** The service of this data folder, opened when first asked for. */
export const photosOf = ({ services, dataFolder }: Pick<Context, 'services' | 'dataFolder'>): PhotoService =>
  services.get('photos', () => new PhotoService(dataFolder));
