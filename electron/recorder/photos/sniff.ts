/** What a file's bytes are, whatever its name says. */
export type Kind =
  | 'jpeg'
  | 'png'
  | 'webp'
  | 'tiff'
  | 'gif'
  | 'avif'
  | 'heic'
  | 'bmp'
  | 'camera-raw'
  | 'jpeg-xl'
  | 'jpeg-2000'
  | 'layered'
  | 'video'
  | 'svg'
  | 'pdf'
  | 'html'
  | 'zip'
  | 'text'
  | 'unknown';

/** Kinds that are taken in, with the media type that a shot carries. */
export const readableKinds = {
  jpeg: 'image/jpeg',
  png: 'image/png',
  webp: 'image/webp',
  tiff: 'image/tiff',
  gif: 'image/gif',
  avif: 'image/avif',
  heic: 'image/heic',
} as const satisfies Partial<Record<Kind, string>>;
export type ReadableKind = keyof typeof readableKinds;
export const isReadableKind = (kind: Kind): kind is ReadableKind => Object.hasOwn(readableKinds, kind);

/** How much of a file's start sniffing looks at: an SVG may open with long comments. */
export const sniffLength = 65_536;

const latin = (head: Uint8Array, from: number, to: number): string =>
  Buffer.from(head.buffer, head.byteOffset, head.byteLength).toString('latin1', from, to);

/** Signatures at the very start. Sources: each format's own specification (ISO 10918-1, ISO 15948, TIFF 6.0, RFC 9649 ...). */
const signatures: readonly (readonly [Kind, string])[] = [
  ['jpeg', '\xff\xd8\xff'],
  ['png', '\x89PNG\r\n\x1a\n'],
  ['gif', 'GIF87a'],
  ['gif', 'GIF89a'],
  ['jpeg-xl', '\xff\x0a'],
  ['jpeg-xl', '\0\0\0\x0cJXL '],
  ['jpeg-2000', '\0\0\0\x0cjP  '],
  ['jpeg-2000', '\xff\x4f\xff\x51'],
  ['layered', '8BPS'],
  ['camera-raw', 'FUJIFILM'],
  ['camera-raw', 'IIRO'],
  ['camera-raw', 'IIRS'],
  ['camera-raw', 'IIU\0'],
  ['camera-raw', 'II\x2a\0\x10\0\0\0CR'],
  ['tiff', 'II\x2a\0'],
  ['tiff', 'MM\0\x2a'],
  ['tiff', 'II\x2b\0'],
  ['tiff', 'MM\0\x2b'],
  ['pdf', '%PDF-'],
  ['zip', 'PK\x03\x04'],
  ['zip', 'PK\x05\x06'],
];

/** Brands of ISO/IEC 14496-12 files; the picture brands are those of ISO/IEC 23008-12 and of AVIF. */
const brandKinds: Readonly<Record<string, Kind>> = {
  avif: 'avif',
  avis: 'avif',
  heic: 'heic',
  heix: 'heic',
  heim: 'heic',
  heis: 'heic',
  hevc: 'heic',
  hevx: 'heic',
  hevm: 'heic',
  hevs: 'heic',
  'crx ': 'camera-raw',
};
const generalPictureBrands = new Set(['mif1', 'msf1', 'mif2', 'miaf']);

const kindOfBrands = (head: Uint8Array): Kind => {
  const boxLength = Math.min(Buffer.from(head.buffer, head.byteOffset, head.byteLength).readUInt32BE(0), head.length);
  const brands = [latin(head, 8, 12)];
  for (let at = 16; at + 4 <= boxLength; at += 4) brands.push(latin(head, at, at + 4));
  for (const brand of brands) {
    const kind = brandKinds[brand];
    if (kind) return kind;
  }
  return brands.some((brand) => generalPictureBrands.has(brand)) ? 'heic' : 'video';
};

const hasOnlyTextBytes = (head: Uint8Array): boolean =>
  head.every((byte) => byte >= 32 || (byte >= 9 && byte <= 13) || byte === 27);

const isUtf8 = (head: Uint8Array): boolean => {
  try {
    // Streaming: a letter cut in two by the end of the head is no fault.
    new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: true });
    return true;
  } catch {
    return false;
  }
};

const kindOfText = (head: Uint8Array): Kind => {
  const isWide = (head[0] === 0xff && head[1] === 0xfe) || (head[0] === 0xfe && head[1] === 0xff);
  if (!isWide && !hasOnlyTextBytes(head)) return 'unknown';
  // Dropping the zero bytes is enough to see ASCII tags in UTF-16 text.
  const text = latin(head, 0, head.length).replaceAll('\0', '').toLowerCase();
  if (/^\W*<(!doctype html|html)[\s>]/.test(text)) return 'html';
  if (/<svg[\s>:]|<[a-z]+:svg[\s>]/.test(text)) return 'svg';
  if (/<(html|head|body|script)[\s>]/.test(text)) return 'html';
  return isWide || isUtf8(head) ? 'text' : 'unknown';
};

const isBmp = (head: Uint8Array): boolean =>
  latin(head, 0, 2) === 'BM' && head.length >= 18 && head[6] === 0 && head[7] === 0 && head[8] === 0 && head[9] === 0;

/** @param head  the first `sniffLength` bytes, or all of a shorter file */
export const sniff = (head: Uint8Array): Kind => {
  const start = latin(head, 0, 16);
  for (const [kind, signature] of signatures) if (start.startsWith(signature)) return kind;
  if (start.startsWith('RIFF') && start.slice(8, 12) === 'WEBP') return 'webp';
  if (start.slice(4, 8) === 'ftyp' && head.length >= 12) return kindOfBrands(head);
  if (isBmp(head)) return 'bmp';
  return kindOfText(head);
};
