import { z } from 'zod';

export const verdicts = [
  'within',
  'beyond',
  'watch',
  'too close to tell',
  'recorded only',
  'void',
  'not taken',
  'shown',
  'not found by this test',
  'no growth shown',
] as const;
export const Verdict = z.enum(verdicts);
export type Verdict = z.infer<typeof Verdict>;

/** One result of a sheet, as typed text with its unit, and what it was held against. */
export const ResultLine = z.strictObject({
  of: z.string(),
  value: z.string().nullable(),
  seen: z.boolean().nullable(),
  limit: z
    .strictObject({
      min: z.string().optional(),
      max: z.string().optional(),
      badBelow: z.string().optional(),
      badAbove: z.string().optional(),
      source: z.enum(['maker', 'machine-shop', 'common-practice', 'none']),
      page: z.string().optional(),
    })
    .nullable(),
  uncertainty: z.string().nullable(),
  uncertaintyFrom: z.string().nullable(),
  verdict: Verdict,
});
export type ResultLine = z.infer<typeof ResultLine>;

/** A limit as the mechanic typed it: numbers with or without their unit, whose it is and where it stands. */
export const TypedLimit = z.strictObject({
  min: z.string().max(60).exactOptional(),
  max: z.string().max(60).exactOptional(),
  badBelow: z.string().max(60).exactOptional(),
  badAbove: z.string().max(60).exactOptional(),
  source: z.enum(['maker', 'machine-shop', 'common-practice', 'none']),
  page: z.string().max(200).exactOptional(),
});
export type TypedLimit = z.infer<typeof TypedLimit>;

/** One filled measurement sheet. */
export const Reading = z.strictObject({
  id: z.string(),
  visitId: z.string(),
  sheet: z.string(),
  sheetVersion: z.int().min(0),
  at: z.string(),
  inputs: z.record(z.string(), z.string()),
  conditions: z.record(z.string(), z.string()),
  remark: z.string(),
  notTakenBecause: z.string().nullable(),
  instrumentId: z.string().nullable(),
  takenAtMs: z.int(),
  results: z.array(ResultLine),
  /** By the result's name; they stand before the sheet's own default. */
  limits: z.record(z.string(), TypedLimit).exactOptional(),
  /** Results typed without the inputs they come from, as on a machine shop's paper. */
  takenOver: z.record(z.string(), z.string()).exactOptional(),
  /** Photos of the dial. */
  shotIds: z.array(z.string()).exactOptional(),
  /**
   * What was written down by another version of the sheet, where it said something else: the earlier results of a draft,
   * or what the sheet would say now of an issued report.
   */
  otherwise: z.strictObject({ sheetVersion: z.int().min(0), results: z.array(ResultLine) }).exactOptional(),
});
export type Reading = z.infer<typeof Reading>;
