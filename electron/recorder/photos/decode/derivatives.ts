import { writeFile } from 'node:fs/promises';
import sharp, { type Sharp } from 'sharp';
import { thumbEdge } from './edges.ts';
import type { RawPicture } from './heic.ts';
import { turnOf } from './orientation.ts';

/** Cracks are fine lines: the screen picture is kept better than a thumbnail needs. */
const screenQuality = 85;
const thumbQuality = 78;

export const turnUpright = async (stored: RawPicture, orientation: number): Promise<RawPicture> => {
  if (orientation === 1) return stored;
  const { mirrored, clockwise } = turnOf(orientation);
  // The library mirrors before it turns, as the table of turns does.
  const { data, info } = await sharp(stored.data, { raw: stored })
    .flop(mirrored)
    .rotate(clockwise)
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { data, width: info.width, height: info.height, channels: stored.channels };
};

/** Encoded first and written by the file system's own call, whose errors have a code: a full disk must be told as such. */
const writeEncoded = async (source: Sharp, path: string): Promise<void> =>
  await writeFile(path, await source.toBuffer());

/** Writes a JPEG of bare pixels: nothing else can come along, no place, no names, no old preview. */
export const writeJpeg = async (picture: RawPicture, path: string, quality = screenQuality): Promise<void> =>
  await writeEncoded(sharp(picture.data, { raw: picture }).jpeg({ quality }), path);

export const writeScreenAndThumb = async (
  upright: RawPicture,
  screenPath: string,
  thumbPath: string,
): Promise<void> => {
  const thumb = sharp(upright.data, { raw: upright })
    .resize(thumbEdge, thumbEdge, { fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: thumbQuality });
  await Promise.all([writeJpeg(upright, screenPath), writeEncoded(thumb, thumbPath)]);
};
