import { expect, it } from 'vitest';
import { sniff } from '../../../electron/recorder/photos/sniff.ts';

const latin = (text: string): Buffer => Buffer.from(text, 'latin1');
const boxed = (...brands: string[]): Buffer => {
  const rest = latin(`ftyp${brands[0]}\0\0\0\0${brands.slice(1).join('')}`);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(rest.length + 4);
  return Buffer.concat([length, rest, Buffer.alloc(40)]);
};

// Sources: ISO 10918-1, ISO 15948, TIFF 6.0, GIF89a, RFC 9649, ISO/IEC 14496-12 and 23008-12, AVIF 1.1, ISO 32000, PKWARE APPNOTE.
it.for([
  ['jpeg', latin('\xff\xd8\xff\xe0\0\x10JFIF\0')],
  ['png', latin('\x89PNG\r\n\x1a\n\0\0\0\rIHDR')],
  ['webp', latin('RIFF\x10\0\0\0WEBPVP8 ')],
  ['unknown', latin('RIFF\x10\0\0\0WAVEfmt \x00')],
  ['tiff', latin('II*\0\x08\0\0\0')],
  ['tiff', latin('MM\0*\0\0\0\x08')],
  ['camera-raw', latin('II*\0\x10\0\0\0CR\x02\0')],
  ['gif', latin('GIF89a\x01\0\x01\0')],
  ['avif', boxed('avif', 'mif1')],
  ['avif', boxed('mif1', 'avif', 'miaf')],
  ['heic', boxed('heic', 'mif1')],
  ['heic', boxed('mif1', 'heic')],
  ['video', boxed('isom', 'mp41')],
  ['video', boxed('qt  ')],
  ['bmp', latin('BM\x36\x10\0\0\0\0\0\0\x36\0\0\0\x28\0\0\0\0')],
  ['svg', latin('<?xml version="1.0"?>\n<!-- drawing -->\n<svg xmlns="http://www.w3.org/2000/svg">')],
  ['svg', Buffer.from('\ufeff<svg width="1">', 'utf16le')],
  ['svg', latin('<?xml version="1.0"?><s:svg xmlns:s="http://www.w3.org/2000/svg">')],
  ['html', latin('  <!DOCTYPE html><title>x</title>')],
  ['html', latin('<script>alert(1)</script>')],
  ['pdf', latin('%PDF-1.7\n')],
  ['zip', latin('PK\x03\x04\x14\0')],
  ['text', latin('only words, BM included')],
  ['unknown', latin('\x01\x02\x03')],
  ['unknown', latin('\xff\xd8')],
] as const)('knows %s by its bytes', ([kind, bytes]) => {
  expect(sniff(bytes)).toBe(kind);
});
