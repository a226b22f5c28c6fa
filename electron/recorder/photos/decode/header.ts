import { open } from 'node:fs/promises';
import sharp, { type Metadata } from 'sharp';
import type { ReadableKind } from '../sniff.ts';
import { isWholeContainer } from './container.ts';
import { damaged, RefusedPicture } from './job.ts';
import { checkClaim } from './limits.ts';
import { orientationOf, type Size } from './orientation.ts';

/** What a file says of itself, checked against the limits, with nothing decoded yet. */
export interface Header {
  /** As stored; for HEIC and AVIF with the container's own turning and cropping applied, as every decoder does. */
  readonly stored: Size;
  readonly orientation: number;
  readonly pages: number;
  readonly exif: Buffer | null;
  readonly colourProfile: Buffer | null;
}

const formatOf: Readonly<Record<ReadableKind, Metadata['format']>> = {
  jpeg: 'jpeg',
  png: 'png',
  webp: 'webp',
  tiff: 'tiff',
  gif: 'gif',
  avif: 'heif',
  heic: 'heif',
};

const sampleBytes = (metadata: Metadata): number => {
  const depth = metadata.depth;
  if (depth === 'ushort' || depth === 'short') return 2;
  if (depth === 'uint' || depth === 'int' || depth === 'float') return 4;
  return depth === 'double' || depth === 'complex' ? 8 : 1;
};

const checkContainer = async (path: string): Promise<void> => {
  const file = await open(path, 'r');
  try {
    if (!(await isWholeContainer(file))) throw damaged('cut-off');
  } finally {
    await file.close();
  }
};

/** @throws RefusedPicture when the header is broken, contradicts what the bytes look like, or claims too much */
export const readHeader = async (path: string, picture: ReadableKind, fileBytes: number): Promise<Header> => {
  const isContainer = picture === 'heic' || picture === 'avif';
  if (isContainer) await checkContainer(path);
  let metadata: Metadata;
  try {
    // The limit is ours to check, so that the refusal can say how large the picture claims to be.
    metadata = await sharp(path, { limitInputPixels: false }).metadata();
  } catch (cause) {
    throw damaged('header', cause);
  }
  if (metadata.format !== formatOf[picture])
    throw new RefusedPicture({ code: 'photo-kind-not-read', kind: metadata.format });
  const stored = { width: metadata.width, height: metadata.pageHeight ?? metadata.height };
  checkClaim({ ...stored, bytesPerPixel: metadata.channels * sampleBytes(metadata) }, fileBytes);
  return {
    stored,
    // ISO/IEC 23008-12 and MIAF: turning and mirroring belong to the container there, and EXIF's value is a copy of it.
    orientation: isContainer ? 1 : orientationOf(metadata.orientation),
    pages: metadata.pages ?? 1,
    exif: metadata.exif ?? null,
    colourProfile: metadata.icc ?? null,
  };
};
