import { open } from 'node:fs/promises';
import type { Box } from '../../../shared-lib/geometry/spaces.ts';
import type { GreyImage } from '../../../shared-lib/tracing/grey.ts';
import { turnUpright } from '../photos/decode/derivatives.ts';
import { readHeader } from '../photos/decode/header.ts';
import type { RawPicture } from '../photos/decode/heic.ts';
import { readPixels } from '../photos/decode/pixels.ts';
import { isReadableKind, sniff, sniffLength } from '../photos/sniff.ts';
import { MeasuringRefusal } from './job.ts';

/** A whole picture, upright, sRGB. @throws MeasuringRefusal, RefusedPicture, or the file system's error */
export const readUprightPixels = async (path: string): Promise<RawPicture> => {
  const file = await open(path, 'r');
  try {
    const { size } = await file.stat();
    const head = Buffer.alloc(Math.min(size, sniffLength));
    await file.read(head, 0, head.length, 0);
    if (size === 0) throw new MeasuringRefusal('photo-empty');
    const kind = sniff(head);
    if (!isReadableKind(kind)) throw new MeasuringRefusal('photo-not-an-image', { found: kind });
    const header = await readHeader(path, kind, size);
    const { picture } = await readPixels(path, kind, header, null);
    return await turnUpright(picture, header.orientation);
  } finally {
    await file.close();
  }
};

/** Brightness of a part of a picture: luma of BT.601, as video and JPEG have it. */
export const greyOf = ({ data, width, height, channels }: RawPicture, box?: Box): GreyImage => {
  const left = Math.max(0, box?.left ?? 0);
  const top = Math.max(0, box?.top ?? 0);
  const right = Math.min(width - 1, box?.right ?? width - 1);
  const bottom = Math.min(height - 1, box?.bottom ?? height - 1);
  const grey = new Float32Array((right - left + 1) * (bottom - top + 1));
  let to = 0;
  for (let y = top; y <= bottom; y += 1) {
    for (let from = (y * width + left) * channels; to < (y - top + 1) * (right - left + 1); from += channels) {
      grey[to] =
        0.299 * (data[from] as number) + 0.587 * (data[from + 1] as number) + 0.114 * (data[from + 2] as number);
      to += 1;
    }
  }
  return { width: right - left + 1, height: bottom - top + 1, left, top, data: grey };
};
