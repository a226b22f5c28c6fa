import { z } from 'zod';

/** How the owner uses the machine: the exposure that probability letters and named conditions refer to. */
export const Use = z.strictObject({
  road: z.boolean(),
  slope: z.boolean(),
  peopleNear: z.boolean(),
  exposureHours: z.number().positive().max(100_000),
});
export type Use = z.infer<typeof Use>;

/** The hour meter as seen. `reading` is null while nobody has read it. */
export const MeterReading = z.strictObject({
  meterId: z.string().nullable(),
  typed: z.string().max(60),
  reading: z.number().nonnegative().nullable(),
  estimate: z.boolean(),
});
export type MeterReading = z.infer<typeof MeterReading>;

export const Visit = z.strictObject({
  id: z.string(),
  machineId: z.string(),
  layoutId: z.string(),
  personId: z.string().nullable(),
  /** The day it came in, in the shop's zone. */
  date: z.iso.date(),
  complaint: z.string().max(4000),
  use: Use,
  conditions: z.record(z.string(), z.string().max(400)),
  meter: MeterReading,
  /** The part that sticks to every shot taken in until it is changed. */
  currentPart: z.string().nullable(),
  openedAtMs: z.int(),
  leftAtMs: z.int().nullable(),
});
export type Visit = z.infer<typeof Visit>;

/** One agreed item of the inspection. Whether it was examined is computed, never stored. */
export const ScopeItem = z.strictObject({
  id: z.string(),
  visitId: z.string(),
  path: z.string(),
  position: z.int(),
  notExaminedBecause: z.string().max(400).nullable(),
  notApplicableBecause: z.string().max(400).nullable(),
});
export type ScopeItem = z.infer<typeof ScopeItem>;
