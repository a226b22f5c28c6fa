/** The one signature of a sealed report: what it covers, and the CMS bytes in the gap. */
export interface PdfSignature {
  readonly covered: Buffer;
  readonly cms: Buffer;
}

export type Found = { readonly signature: PdfSignature } | 'none' | 'broken';

/** Any of these says that somebody signed it; a seal of which one letter was changed still shows the others. */
const traces = [/\/ByteRange/, /\/Type\s*\/Sig\b/, /adbe\.pkcs7\.detached/, /\/FT\s*\/Sig\b/, /\/Adobe\.PPKLite/];

const byteRange = /\/ByteRange\s*\[\s*(\d+)\s+(\d+)\s+(\d+)\s+(\d+)\s*\]/g;

/** Lower case, as it was written: the same value in other letters is another file. */
const canonicalHex = /^<([0-9a-f]+)>$/;

/** The length that a DER SEQUENCE says it has, header included; null when it is none. */
const derLength = (bytes: Buffer): number | null => {
  if (bytes[0] !== 0x30 || bytes[1] === undefined) return null;
  if (bytes[1] < 0x80) return 2 + bytes[1];
  const count = bytes[1] & 0x7f;
  if (count === 0 || count > 4 || bytes.length < 2 + count) return null;
  return 2 + count + bytes.readUIntBE(2, count);
};

/**
 * Finds the signature of a PDF. It must be one, cover the whole file but its own gap, and stand in the gap exactly as it was
 * written; anything else is 'broken'. 'none' only where there is no trace of one.
 */
export const signatureIn = (pdf: Buffer): Found => {
  const text = pdf.toString('latin1');
  const ranges = [...text.matchAll(byteRange)];
  const hasTrace = traces.some((trace) => trace.test(text));
  const [only] = ranges;
  if (only === undefined || ranges.length !== 1) return hasTrace ? 'broken' : 'none';
  const [start, first, second, rest] = only.slice(1, 5).map(Number) as [number, number, number, number];
  if (start !== 0 || first >= second || second + rest !== pdf.length) return 'broken';
  const hex = canonicalHex.exec(text.slice(first, second))?.[1];
  if (hex === undefined || hex.length % 2 !== 0) return 'broken';
  const gap = Buffer.from(hex, 'hex');
  const length = derLength(gap);
  if (length === null || length > gap.length) return 'broken';
  // What is left of the room must be the zeros it was filled with.
  if (gap.subarray(length).some((byte) => byte !== 0)) return 'broken';
  return {
    signature: {
      covered: Buffer.concat([pdf.subarray(0, first), pdf.subarray(second)]),
      cms: gap.subarray(0, length),
    },
  };
};
