import { readFile } from 'node:fs/promises';
import { damaged } from './job.ts';
import type { Size } from './orientation.ts';

export interface RawPicture extends Size {
  readonly data: Uint8Array;
  readonly channels: 3 | 4;
}

/**
 * Decodes the primary picture of a HEIC, turned and cropped as its container says.
 *
 * @param stated  the size the container states; a file that lost its end may decode to something smaller
 */
export const decodeHeic = async (path: string, stated: Size): Promise<RawPicture> => {
  const bytes = await readFile(path);
  // Loaded with the first HEIC: a shop whose cameras write JPEG never pays for it.
  const { default: libheif } = await import('libheif-js/wasm-bundle.js');
  await libheif.ready;
  const decoder = new libheif.HeifDecoder();
  const pictures = decoder.decode(bytes);
  try {
    const primary = pictures.find((picture) => picture.is_primary());
    if (!primary) throw damaged('not-decodable');
    const size = { width: primary.get_width(), height: primary.get_height() };
    if (size.width !== stated.width || size.height !== stated.height) throw damaged('size-differs');
    const into = { data: new Uint8ClampedArray(size.width * size.height * 4), ...size };
    const filled = await new Promise<{ data: Uint8ClampedArray } | null>((done) => primary.display(into, done));
    if (!filled) throw damaged('not-decodable');
    const { buffer, byteOffset, byteLength } = filled.data;
    return { data: new Uint8Array(buffer, byteOffset, byteLength), channels: 4, ...size };
  } finally {
    for (const picture of pictures) picture.free();
    decoder.decoder?.delete();
  }
};
