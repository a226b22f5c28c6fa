import type { Context } from '../context.ts';
import { photosOf } from './photo-service.ts';
import { originalByDigest } from './queries.ts';

export interface LocatedPhoto {
  readonly path: string;
  readonly mediaType: string;
}

const address = /^photo:\/\/(original|whole|screen|thumb|region)\/([0-9a-f]{64})$/;

const locate = async (
  context: Pick<Context, 'db' | 'services' | 'dataFolder'>,
  url: string,
): Promise<LocatedPhoto | null> => {
  const [, what, digest] = address.exec(url) ?? [];
  if (what === undefined || digest === undefined) return null;
  const photos = photosOf(context);
  if (what === 'region') {
    const path = await photos.store.locate(digest, 'region');
    return path === null ? null : { path, mediaType: 'image/jpeg' };
  }
  const original = originalByDigest(context.db, digest);
  if (!original) return null;
  if (what === 'whole') return await photos.whole(original);
  if (what === 'original') {
    const path = await photos.store.locate(digest, 'original');
    return path === null ? null : { path, mediaType: original.mediaType };
  }
  return { path: await photos.shown(original, what === 'thumb' ? 'thumb' : 'screen'), mediaType: 'image/jpeg' };
};

/**
 * Where the file of a `photo://` address lies: `original/<digest>` (the untouched bytes), `whole/<digest>` (the same, or an
 * upright JPEG where the window cannot show those), `screen/<digest>`, `thumb/<digest>`, `region/<key>`. Nothing outside the
 * store, and no digest that the record does not know.
 *
 * @returns null when there is no such thing, or it can no longer be made
 */
export const locatePhoto = async (
  context: Pick<Context, 'db' | 'services' | 'dataFolder'>,
  url: string,
): Promise<LocatedPhoto | null> => {
  try {
    return await locate(context, url);
  } catch (cause) {
    // The window shows a missing picture either way; the log keeps the reason.
    process.stderr.write(
      `photo not served: ${cause instanceof Error ? (cause.stack ?? cause.message) : String(cause)}\n`,
    );
    return null;
  }
};
