import { readFile } from 'node:fs/promises';
import sharp, { type Sharp, type SharpOptions } from 'sharp';
import type { ReadableKind } from '../sniff.ts';
import type { Header } from './header.ts';
import { decodeHeic, type RawPicture } from './heic.ts';
import { damaged } from './job.ts';
import { mostPixels } from './limits.ts';
import { tiffWithProfile } from './tagged-raw.ts';

export interface Pixels {
  /** As stored, not yet turned; sRGB, three channels, no transparency. */
  readonly picture: RawPicture;
  /** The decoder met faults on its way, yet made a picture. */
  readonly isDamaged: boolean;
}

/** Where pixels come from, and how strict the decoder is with faults in them. */
interface Attempt {
  readonly from: string | Buffer;
  readonly failOn: SharpOptions['failOn'];
  readonly isDamaged: boolean;
}

const endOfJpeg = Buffer.from([0xff, 0xd9]);

/**
 * From strict to lenient. Bytes that are missing are never made up: what the last attempt refuses is cut off. A JPEG whose
 * pixels are all there and that lacks its end marker alone is whole, so it is tried with the marker put back.
 */
async function* attempts(path: string, kind: ReadableKind): AsyncGenerator<Attempt> {
  // libpng warns of harmless oddities that many programs write, such as a repeated sRGB profile.
  yield { from: path, failOn: kind === 'jpeg' ? 'warning' : 'error', isDamaged: false };
  yield { from: path, failOn: 'truncated', isDamaged: true };
  if (kind !== 'jpeg') return;
  const bytes = await readFile(path);
  if (!bytes.subarray(-2).equals(endOfJpeg)) {
    yield { from: Buffer.concat([bytes, endOfJpeg]), failOn: 'warning', isDamaged: false };
  }
}

const isOneFlatRow = (data: Uint8Array, start: number, rowBytes: number, channels: number): boolean => {
  let at = channels;
  while (at < rowBytes && data[start + at] === data[start + (at % channels)]) at += 1;
  return at >= rowBytes;
};

/** How much of a picture's foot is flat, row by row: what a decoder paints where the data ended before its time. */
const flatFootShare = ({ data, width, height, channels }: RawPicture): number => {
  const rowBytes = width * channels;
  let row = height;
  while (row > 0 && isOneFlatRow(data, (row - 1) * rowBytes, rowBytes, channels)) row -= 1;
  return (height - row) / height;
};

const fitInside = (source: Sharp, edge: number | null): Sharp =>
  edge === null ? source : source.resize(edge, edge, { fit: 'inside', withoutEnlargement: true });

/** Anything to plain sRGB on white. */
const plainColours = (source: Sharp): Sharp => source.flatten({ background: '#ffffff' }).toColourspace('srgb');

const toRaw = async (source: Sharp): Promise<RawPicture> => {
  const { data, info } = await source.raw({ depth: 'uchar' }).toBuffer({ resolveWithObject: true });
  if (info.channels !== 3 && info.channels !== 4)
    throw new Error(`${info.channels} channels where three were asked for`);
  return { data, width: info.width, height: info.height, channels: info.channels };
};

const heicSource = async (path: string, header: Header, edge: number | null): Promise<Sharp> => {
  const whole = await decodeHeic(path, header.stored);
  const bare = fitInside(sharp(whole.data, { raw: whole }), edge);
  return header.colourProfile ? sharp(tiffWithProfile(await toRaw(bare), header.colourProfile)) : bare;
};

/**
 * Pixels fitted into a square of `edge`, or in full: what a decoder can leave out at once, it does.
 *
 * @throws RefusedPicture when no honest picture comes of it
 */
export const readPixels = async (
  path: string,
  kind: ReadableKind,
  header: Header,
  edge: number | null,
): Promise<Pixels> => {
  if (kind === 'heic')
    return { picture: await toRaw(plainColours(await heicSource(path, header, edge))), isDamaged: false };
  let lastCause: unknown;
  for await (const { from, failOn, isDamaged } of attempts(path, kind)) {
    const source = sharp(from, { failOn, limitInputPixels: mostPixels, unlimited: false, autoOrient: false, page: 0 });
    const picture = await toRaw(plainColours(fitInside(source, edge))).catch((cause: unknown) => {
      lastCause = cause;
      return null;
    });
    // A header that claims more rows than there are passes for bit rot otherwise.
    if (picture && !(isDamaged && kind === 'jpeg' && flatFootShare(picture) > 0.1)) return { picture, isDamaged };
  }
  throw damaged(kind === 'jpeg' || kind === 'png' ? 'cut-off' : 'not-decodable', lastCause);
};
