import { z } from 'zod';
import { Decimal } from '../choices/records.ts';

const id = z.string();

export const outcomes = ['done', 'partly', 'not-done'] as const;
export const Outcome = z.enum(outcomes);
export type Outcome = z.infer<typeof Outcome>;

export const outcomeWords: Readonly<Record<Outcome, string>> = {
  done: 'done',
  partly: 'done in part',
  'not-done': 'not done',
};

/** A part that went in. Where it stands for a place of the machine, it is on the machine's list of fitted parts too. */
export const WorkPart = z.strictObject({
  id,
  words: z.string().max(200),
  amount: Decimal,
  fittedPartId: id.nullable(),
});
export type WorkPart = z.infer<typeof WorkPart>;

/** The test after the repair: a reading of the visit, or a photo. */
export const WorkProof = z.strictObject({ id, readingId: id.nullable(), shotId: id.nullable() });
export type WorkProof = z.infer<typeof WorkProof>;

export const WorkItem = z.strictObject({
  id,
  visitId: id,
  /** What it was done for; null where it belongs to no finding. */
  findingId: id.nullable(),
  words: z.string().max(1000),
  outcome: Outcome,
  /** Why it was not done, or not all of it. */
  because: z.string().max(400),
  writtenAtMs: z.int(),
  parts: z.array(WorkPart),
  proofs: z.array(WorkProof),
});
export type WorkItem = z.infer<typeof WorkItem>;

/** What is said when the machine goes: in the mechanic's words, beside what the record says by itself. */
export const HandOver = z.strictObject({
  proved: z.string().max(2000),
  /** How it may be used, and within which limits. */
  limits: z.string().max(2000),
  watch: z.string().max(2000),
  comeBack: z.string().max(400),
  /** Kept, shown or taken away. */
  oldParts: z.string().max(400),
  handedTo: z.string().max(200),
});
export type HandOver = z.infer<typeof HandOver>;

export const noHandOver: HandOver = { proved: '', limits: '', watch: '', comeBack: '', oldParts: '', handedTo: '' };
