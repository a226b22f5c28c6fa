import { plainAddPlaceholder } from '@signpdf/placeholder-plain';
import { P12Signer } from '@signpdf/signer-p12';
import { SignPdf } from '@signpdf/signpdf';
import { plainLetters } from './plain-letters.ts';
import type { ShopKey } from './shop-key.ts';

/** Room for the signature in bytes: an RSA-3072 signature with its certificate takes about two thousand. */
const signatureLength = 6_000;

export interface SealWords {
  readonly shopName: string;
  readonly place: string;
  readonly reason: string;
  readonly contact: string;
  readonly atMs: number;
}

/**
 * Seals a report with a standard PDF signature (ISO 32000 byte range, CMS detached) as an incremental update: the typeset
 * bytes stay as they are, and any reader can check it.
 */
export const signPdf = async (
  pdf: Uint8Array,
  key: ShopKey,
  words: SealWords,
  passphrase = '',
): Promise<Uint8Array> => {
  const signingTime = new Date(words.atMs);
  const prepared = plainAddPlaceholder({
    pdfBuffer: Buffer.from(pdf),
    reason: plainLetters(words.reason),
    contactInfo: plainLetters(words.contact),
    name: plainLetters(words.shopName) || 'A repair shop',
    location: plainLetters(words.place),
    signingTime,
    signatureLength,
    // A PDF name: a space in it is written as its number.
    appName: 'Witness#20Mark',
  });
  const signed = await new SignPdf().sign(prepared, new P12Signer(key.p12, { passphrase }), signingTime);
  return new Uint8Array(signed);
};
