import { z } from 'zod';

/** What became of an old finding. Source of the words: the handbook's return visits (chapter 8). */
export const answerKinds = [
  'same',
  'grown',
  'smaller',
  'repaired-holds',
  'repaired-failed',
  'not-re-examined',
  'part-replaced',
] as const;
export const AnswerKind = z.enum(answerKinds);
export type AnswerKind = z.infer<typeof AnswerKind>;

export const ReturnAnswer = z.strictObject({
  id: z.string(),
  visitId: z.string(),
  /** The earlier visit's finding. */
  findingId: z.string(),
  answer: AnswerKind,
  because: z.string().max(400),
  /** The part that was noted as replaced with the answer. */
  fittedPartId: z.string().nullable(),
  answeredAtMs: z.int(),
});
export type ReturnAnswer = z.infer<typeof ReturnAnswer>;

/** Answers after which the condition stands in the list again; after the others there is nothing left to rank. */
export const standsAgain: ReadonlySet<AnswerKind> = new Set([
  'same',
  'grown',
  'smaller',
  'repaired-failed',
  'not-re-examined',
]);

export interface AnswerWords {
  /** On a button. */
  readonly short: string;
  /** In a sentence after the finding's name. */
  readonly said: string;
}

export const answerWords: Readonly<Record<AnswerKind, AnswerWords>> = {
  same: { short: 'The same', said: 'the same as then' },
  grown: { short: 'Grown', said: 'grown since' },
  smaller: { short: 'Smaller', said: 'smaller than then: was it measured the same way?' },
  'repaired-holds': { short: 'Mended, holds', said: 'mended, and it holds' },
  'repaired-failed': { short: 'Mended, failed again', said: 'mended, and it failed again' },
  'not-re-examined': { short: 'Not looked at again', said: 'not looked at again' },
  'part-replaced': { short: 'Part replaced since', said: 'the part was replaced since' },
};

const mendedFirst: readonly AnswerKind[] = [
  'repaired-holds',
  'repaired-failed',
  'part-replaced',
  'not-re-examined',
  'same',
  'grown',
  'smaller',
];

/** The likeliest answers first: what was mended is asked whether it holds. */
export const answersFor = (mended: boolean): readonly AnswerKind[] => (mended ? mendedFirst : answerKinds);
