import { z } from 'zod';
import { Quantity } from './quantity.ts';

/** Four states, never merged. Unknown never looks like good. */
export const findingStates = ['confirmed', 'suspected', 'not-examined', 'none-found'] as const;
export const FindingState = z.enum(findingStates);
export type FindingState = z.infer<typeof FindingState>;

/** MIL-STD-882E: severity 1 (worst) to 4, probability A to F. */
export const Severity = z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4)]);
export type Severity = z.infer<typeof Severity>;
export const Probability = z.enum(['A', 'B', 'C', 'D', 'E', 'F']);
export type Probability = z.infer<typeof Probability>;
export const Safety = z.strictObject({ severity: Severity, probability: Probability });
export type Safety = z.infer<typeof Safety>;

/** 0 next start, 1 within 10 h, 2 within 50 h, 3 within 250 h, 4 later, 5 none seen or a hazard with no clock. */
export const Urgency = z.union([z.literal(0), z.literal(1), z.literal(2), z.literal(3), z.literal(4), z.literal(5)]);
export type Urgency = z.infer<typeof Urgency>;
/** 1 worst (three quarters of the machine's value or more) to 4. */
export const DamageClass = z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4)]);
export type DamageClass = z.infer<typeof DamageClass>;

/** What the named do-not-operate conditions need to know and no other field says. */
export const findingFacts = [
  'past-limit',
  'under-load',
  'through-load-path',
  'growth-shown',
  'to-reinforcement',
  'load-holding-line',
  'no-lock-valve',
  'pressurised',
  'near-heat',
  'fuel-in-sump',
  'fluid-in-cylinder',
  'creeps-on-slope-used',
  'other-hold',
  'people-reach',
  'co-above-limit-indoors',
  'over-charged',
  'bare-full-current',
  'raised-unsupported',
  'charred-seal',
] as const;
export const FindingFact = z.enum(findingFacts);
export type FindingFact = z.infer<typeof FindingFact>;

export const methodCodes = ['V', 'MG', 'PT', 'MT', 'UT', 'PR', 'VAC', 'M', 'F', 'E', 'LAB'] as const;
export const MethodCode = z.enum(methodCodes);
export type MethodCode = z.infer<typeof MethodCode>;

export const findingActions = [
  'mend',
  'replace',
  'adjust',
  'clean',
  'monitor',
  'leave',
  'disable-function',
  'remove-from-service',
] as const;
export const FindingAction = z.enum(findingActions);
export type FindingAction = z.infer<typeof FindingAction>;

/** What the mechanic may fill, in any order and as late as he likes. Null means: not said yet. */
export const FindingFields = z.strictObject({
  kind: z.enum(['condition', 'observation']),
  /** A defect id of shared-lib/defects; an observation has none. */
  defect: z.string().max(40).nullable(),
  words: z.string().max(2000),
  state: FindingState,
  methods: z.array(MethodCode),
  quantities: z.record(z.string(), Quantity),
  /** Judged, with no safety side: `none`. Not judged yet: null. */
  safety: z.union([Safety, z.literal('none')]).nullable(),
  urgency: Urgency.nullable(),
  runWorse: z.boolean().nullable(),
  damageClass: DamageClass.nullable(),
  facts: z.array(FindingFact),
  /** Places of the location grammar; the first one places the finding in the tree. */
  locations: z.array(z.string().max(300)).max(20),
  notExaminedBecause: z.string().max(400).nullable(),
  namedConditionDeclinedBecause: z.string().max(400).nullable(),
  /** What it leads to if left, in the mechanic's words. */
  ifLeft: z.string().max(1000),
  watchFor: z.string().max(1000),
  action: FindingAction.nullable(),
  actionWords: z.string().max(1000),
  /** Two tags that protect different things: people, and the engine. */
  doNotOperate: z.boolean(),
  doNotRun: z.boolean(),
  loopStart: z.boolean(),
  foundOn: z.iso.date().nullable(),
  /** Since when it is known to be there, as by the owner; and a day on which it was known not to be there yet. */
  noticedOn: z.iso.date().nullable().exactOptional(),
  absentOn: z.iso.date().nullable().exactOptional(),
});
export type FindingFields = z.infer<typeof FindingFields>;

export const Finding = FindingFields.extend({
  id: z.string(),
  visitId: z.string(),
  /** Stamped on the tag, for life: a tracked finding keeps its number from visit to visit. */
  number: z.int().min(1),
  trackOf: z.string().nullable(),
  supersedes: z.string().nullable(),
  supersededBecause: z.string().nullable(),
  /** A line of the standing moved by hand, to stand just before this finding (null: last of its tier). */
  moved: z.strictObject({ beforeFindingId: z.string().nullable(), reason: z.string().min(1).max(400) }).nullable(),
  createdAtMs: z.int(),
  binned: z.boolean(),
});
export type Finding = z.infer<typeof Finding>;

export const Certainty = z.enum(['confirmed', 'suspected']);
/** A reading or a finding of the same visit that a link rests on. */
export const LinkEvidence = z.union([
  z.strictObject({ readingId: z.string() }),
  z.strictObject({ findingId: z.string() }),
]);
export type LinkEvidence = z.infer<typeof LinkEvidence>;

/** `from` leads to `to`. Several causes of one finding are joined by and / or. */
export const FindingLink = z.strictObject({
  id: z.string(),
  fromId: z.string(),
  toId: z.string(),
  certainty: Certainty,
  join: z.enum(['and', 'or']),
  evidence: z.string().max(1000),
  shownBy: z.array(LinkEvidence).max(20).exactOptional(),
});
export type FindingLink = z.infer<typeof FindingLink>;

/** What shows a finding: a shot (with or without a mark on it) or a reading. */
export const FindingProof = z.strictObject({
  id: z.string(),
  findingId: z.string(),
  shotId: z.string().nullable(),
  readingId: z.string().nullable(),
});
export type FindingProof = z.infer<typeof FindingProof>;
