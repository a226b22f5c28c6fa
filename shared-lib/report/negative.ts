import { AppError } from '../contract/errors.ts';
import { notFoundSentence } from '../methods/not-found.ts';
import type { Finding } from '../model/finding.ts';
import { certaintyWords } from '../wording/report.ts';

/** What was looked for and not found, by which method, and whether that method can miss it. */
export function negativeSentence({ defect, methods, locations }: Finding): string {
  if (defect === null) return `${certaintyWords['none-found']}.`;
  try {
    return `${notFoundSentence(defect, methods, locations[0] ?? null)}.`;
  } catch (error) {
    if (error instanceof AppError) return `${notFoundSentence(defect, methods, null)}.`;
    throw error;
  }
}
