import { z } from 'zod';
import { type WorkStepKind, workSteps } from '../cautions/work-step.ts';
import { DamageClass, Safety, Urgency } from '../model/finding.ts';

const id = z.string();

export const Bears = z.enum(['for', 'against', 'cannot tell']);
export type Bears = z.infer<typeof Bears>;

/** A finding, an observation or a reading, and which way it points. */
export const Evidence = z.strictObject({
  id,
  findingId: id.nullable(),
  readingId: id.nullable(),
  bears: Bears,
  because: z.string().max(400),
  /** When it was held against the suspicion; null where nobody kept the time. */
  atMs: z.int().nullable(),
});
export type Evidence = z.infer<typeof Evidence>;

export const turnKinds = ['given-up', 'taken-up', 'found'] as const;
/** Given up, taken up again, or found to be so: by a confirmed finding, never by how sure one feels. */
export const SuspicionTurn = z.strictObject({
  id,
  turn: z.enum(turnKinds),
  findingId: id.nullable(),
  because: z.string().max(400),
  atMs: z.int().nullable(),
});
export type SuspicionTurn = z.infer<typeof SuspicionTurn>;

/**
 * A possible cause, listed early. One that is given up says why and stays; nothing is deleted. Of what bears on it the last
 * word on each reading or finding counts, and the earlier ones stay.
 */
export const Suspicion = z.strictObject({
  id,
  what: z.string().trim().min(1).max(400),
  at: z.string().max(300).nullable(),
  /** The defect that is meant, where it is one: then it is known which test can show it. */
  defect: z.string().max(40).nullable(),
  /** Null while it is not given up. */
  closedBecause: z.string().max(400).nullable(),
  createdAtMs: z.int(),
  evidence: z.array(Evidence),
  /** In the order they were taken. */
  turns: z.array(SuspicionTurn),
});
export type Suspicion = z.infer<typeof Suspicion>;

const stepKinds = Object.keys(workSteps) as [WorkStepKind, ...WorkStepKind[]];

/** Work done in the visit, or that a choice needs. Cautions stand before it. */
export const Step = z.strictObject({ id, step: z.enum(stepKinds), at: z.string().max(300).nullable() });
export type Step = z.infer<typeof Step>;

export const dispositionKinds = ['fixed', 'partly', 'left', 'made-safe', 'unknown'] as const;
export const DispositionIs = z.enum(dispositionKinds);
export type DispositionIs = z.infer<typeof DispositionIs>;

/** What stays in some other way than it was: only there a new judgement has a meaning. */
export const judgeable: ReadonlySet<DispositionIs> = new Set(['partly', 'made-safe', 'unknown']);

/** The mechanic's new judgement of what stays; a field left out stays as it was judged. */
export const JudgedAfter = z.strictObject({
  safety: z.union([Safety, z.literal('none')]).optional(),
  urgency: Urgency.optional(),
  runWorse: z.boolean().optional(),
  damageClass: DamageClass.optional(),
});
export type JudgedAfter = z.infer<typeof JudgedAfter>;

export const ChoiceDisposition = z.strictObject({
  findingId: id,
  is: DispositionIs,
  after: JudgedAfter.nullable(),
  why: z.string().max(400),
});
export type ChoiceDisposition = z.infer<typeof ChoiceDisposition>;

/** A number of money or hours as written: `1240.50`. Never a binary fraction. */
export const Decimal = z.string().regex(/^-?\d{1,12}(\.\d{1,6})?$/);
export const costKinds = ['parts', 'labour', 'outside', 'contingency'] as const;
export const CostLine = z.strictObject({
  id,
  kind: z.enum(costKinds),
  words: z.string().max(200),
  /** How many, or how many hours. */
  amount: Decimal,
  /** Of one, without tax. */
  price: Decimal,
});
export type CostLine = z.infer<typeof CostLine>;

export const Money = z.strictObject({
  /** ISO 4217, or empty while nobody has said. */
  currency: z.string().regex(/^([A-Z]{3})?$/),
  /** Added to every line; null where prices are as they are. */
  taxPercent: Decimal.nullable(),
});
export type Money = z.infer<typeof Money>;

/** One way to go on. Each ranked finding of its visit is in it exactly once; one that nobody has spoken of is left. */
export const Choice = z.strictObject({
  id,
  name: z.string().trim().min(1).max(120),
  conditions: z.string().max(1000),
  holdPoints: z.string().max(1000),
  dispositions: z.array(ChoiceDisposition),
  steps: z.array(Step),
  costs: z.array(CostLine),
});
export type Choice = z.infer<typeof Choice>;

export const decisionKinds = [
  'accepted',
  'accepted-with-changes',
  'declined',
  'deferred',
  'refused-by-mechanic',
] as const;
export const DecisionKind = z.enum(decisionKinds);
export type DecisionKind = z.infer<typeof DecisionKind>;

/** A signature as drawn: strokes of points, in parts of the box's width and height. */
export const Signature = z
  .array(z.array(z.tuple([z.number().min(0).max(1), z.number().min(0).max(1)])).min(1))
  .min(1)
  .max(400);
export type Signature = z.infer<typeof Signature>;

/** What the owner chose, of a finding or of a choice, as it was read back. Written once. */
export const Decision = z.strictObject({
  id,
  findingId: id.nullable(),
  choiceId: id.nullable(),
  decision: DecisionKind,
  /** How the blank was completed: the change, the day it is put off to, the mechanic's reason. */
  completed: z.string().max(400),
  words: z.string().max(1000),
  by: z.string().max(200),
  capacity: z.string().max(200),
  howTold: z.string().max(200),
  shownShotIds: z.array(id),
  statement: z.string().min(1).max(8000),
  signature: Signature.nullable(),
  unsignedBecause: z.string().max(400),
  decidedAtMs: z.int(),
  zoneOffsetMin: z.int(),
  /** The mechanic who read it. */
  personId: id.nullable(),
});
export type Decision = z.infer<typeof Decision>;
