import { readFile, stat } from 'node:fs/promises';
import type { ReadableKind } from '../sniff.ts';
import { turnUpright, writeScreenAndThumb } from './derivatives.ts';
import { screenEdge } from './edges.ts';
import { type Header, readHeader } from './header.ts';
import { type Job, RefusedPicture, type Taken } from './job.ts';
import { cameraFacts, isCameraRaw } from './metadata.ts';
import { uprightSize } from './orientation.ts';
import { readPixels } from './pixels.ts';

/** A TIFF keeps its facts anywhere in the file; beyond this size they are not worth reading it twice for. */
const mostTiffBytesForFacts = 256 * 1024 * 1024;

const pageWord: Partial<Record<ReadableKind, string>> = { tiff: 'page', gif: 'frame', webp: 'frame' };

const remarkOf = (kind: ReadableKind, pages: number, isDamaged: boolean): string | null => {
  const remarks = [
    ...(isDamaged ? ['file is damaged'] : []),
    ...(pages > 1 ? [`${kind === 'heic' ? 'main picture' : `first ${pageWord[kind] ?? 'picture'}`} of ${pages}`] : []),
  ];
  return remarks.join('; ') || null;
};

const factsSource = async (
  path: string,
  picture: ReadableKind,
  header: Header,
  fileBytes: number,
): Promise<Uint8Array | null> => {
  if (picture !== 'tiff') return header.exif;
  if (fileBytes > mostTiffBytesForFacts) return null;
  const tiff = await readFile(path);
  if (isCameraRaw(tiff)) throw new RefusedPicture({ code: 'photo-kind-not-read', kind: 'camera-raw' });
  return tiff;
};

/** Looks a new original over, decodes it once, and writes thumbnail and screen picture from that. */
export const take = async ({
  path,
  picture,
  thumbPath,
  screenPath,
}: Extract<Job, { kind: 'take' }>): Promise<Taken> => {
  const { size } = await stat(path);
  const header = await readHeader(path, picture, size);
  const facts = cameraFacts(await factsSource(path, picture, header, size));
  const { picture: stored, isDamaged } = await readPixels(path, picture, header, screenEdge);
  await writeScreenAndThumb(await turnUpright(stored, header.orientation), screenPath, thumbPath);
  return {
    ...uprightSize(header.stored, header.orientation),
    ...facts,
    orientation: header.orientation,
    remark: remarkOf(picture, header.pages, isDamaged),
  };
};
