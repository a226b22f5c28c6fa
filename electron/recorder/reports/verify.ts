import { readFile } from 'node:fs/promises';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { VerifiedReport } from '../../../shared-lib/contract/reports.ts';
import type { Context } from '../context.ts';
import { shopFingerprint } from '../seal/shop-key.ts';
import { verifyPdf } from '../seal/verify-pdf.ts';
import { newestRevision } from './queries.ts';
import { recordInPdf } from './record-in-pdf.ts';

const issueIn = async (pdf: Uint8Array): Promise<{ number: number; revision: number } | null> => {
  try {
    const { issue } = JSON.parse(new TextDecoder().decode(await recordInPdf(pdf))) as {
      issue?: { number: number; revision: number };
    };
    return issue ?? null;
  } catch {
    // A PDF that cannot be read for its record can still be judged by its seal.
    return null;
  }
};

/** What a file's seal says, and which revision it is. @throws AppError 'file-unreadable' */
export const verifyReport = async (
  { db, dataFolder }: Pick<Context, 'db' | 'dataFolder'>,
  path: string,
): Promise<VerifiedReport> => {
  let pdf: Uint8Array;
  try {
    pdf = new Uint8Array(await readFile(path));
  } catch (cause) {
    throw new AppError(
      'file-unreadable',
      { path, reason: cause instanceof Error ? cause.message : String(cause) },
      { cause },
    );
  }
  const { state } = verifyPdf(pdf, await shopFingerprint(dataFolder));
  const issue = state === 'genuine' || state === "another shop's" ? await issueIn(pdf) : null;
  const newest = state === 'genuine' && issue ? newestRevision(db, issue.number) : null;
  return {
    state,
    number: issue?.number ?? null,
    revision: issue?.revision ?? null,
    replacedBy: newest !== null && issue && newest > issue.revision ? newest : null,
  };
};
