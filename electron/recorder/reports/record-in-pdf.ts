import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { AppError } from '../../../shared-lib/contract/errors.ts';

/** The name under which a report carries its record. */
export const recordAttachment = 'record.json';

interface Attachment {
  readonly filename: string;
  readonly content: Uint8Array;
}

/**
 * The record inside a report, byte for byte as it was attached.
 *
 * @throws AppError 'not-our-pdf' for a file that is no PDF or carries no record
 */
export const recordInPdf = async (pdf: Uint8Array): Promise<Uint8Array> => {
  const { getDocument, VerbosityLevel } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const fonts = join(dirname(createRequire(import.meta.url).resolve('pdfjs-dist/package.json')), 'standard_fonts/');
  const task = getDocument({ data: pdf.slice(), standardFontDataUrl: fonts, verbosity: VerbosityLevel.ERRORS });
  try {
    const document = await task.promise;
    const attachments = ((await document.getAttachments()) ?? {}) as Record<string, Attachment>;
    const record = Object.values(attachments).find(({ filename }) => filename === recordAttachment);
    if (!record) throw new AppError('not-our-pdf', { reason: 'no-record' });
    return record.content;
  } catch (cause) {
    throw cause instanceof AppError ? cause : new AppError('not-our-pdf', { reason: 'not-a-pdf' }, { cause });
  } finally {
    await task.destroy();
  }
};
