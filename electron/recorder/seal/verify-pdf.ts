import { checkCms } from './check-cms.ts';
import { signatureIn } from './signature-in-pdf.ts';

export type SealState = 'genuine' | 'altered' | "another shop's" | 'not signed';

export interface SealCheck {
  readonly state: SealState;
  /** SHA-256 of the signer's certificate; null unless the signature holds. */
  readonly fingerprint: string | null;
}

/**
 * What a PDF's seal says, without any server: genuine (ours, untouched), altered, sealed by another shop's key, or not
 * signed at all.
 *
 * @param ours  fingerprint of this shop's key; null where it has none
 */
export const verifyPdf = (pdf: Uint8Array, ours: string | null): SealCheck => {
  const found = signatureIn(Buffer.from(pdf.buffer, pdf.byteOffset, pdf.byteLength));
  if (found === 'none') return { state: 'not signed', fingerprint: null };
  if (found === 'broken') return { state: 'altered', fingerprint: null };
  const fingerprint = checkCms(found.signature.cms, found.signature.covered);
  if (fingerprint === null) return { state: 'altered', fingerprint: null };
  return { state: fingerprint === ours ? 'genuine' : "another shop's", fingerprint };
};
