import { z } from 'zod';

export const earlierDeeds = ['changed', 'removed', 'added', 'repaired', 'adjusted', 'not-known'] as const;
/** What somebody did to the machine before it came in. */
export const EarlierWork = z.strictObject({
  id: z.string(),
  /** The part in words, as it was told. */
  what: z.string().trim().min(1).max(400),
  place: z.string().max(300).nullable(),
  did: z.enum(earlierDeeds),
  /** The owner, a shop, nobody knows. */
  byWhom: z.string().max(200),
  /** As it was told: `last spring`, `at 5200 h`. */
  whenDone: z.string().max(200),
});
export type EarlierWork = z.infer<typeof EarlierWork>;

export const fluidKinds = [
  'engine-oil',
  'coolant',
  'hydraulic-oil',
  'fuel',
  'gear-oil',
  'brake-fluid',
  'battery-acid',
] as const;
export const FluidKind = z.enum(fluidKinds);
export type FluidKind = z.infer<typeof FluidKind>;

export const fluidLevels = ['over', 'at-mark', 'low', 'empty', 'not-looked'] as const;
export const FluidLevel = z.enum(fluidLevels);
export type FluidLevel = z.infer<typeof FluidLevel>;

/** One fluid as it was when the machine came in. */
export const FluidReceived = z.strictObject({
  id: z.string(),
  fluid: FluidKind,
  level: FluidLevel,
  /** Colour, smell, what swims in it. */
  look: z.string().max(400),
  /** Topped up since the trouble began: how much, with what, how often. */
  added: z.string().max(400),
});
export type FluidReceived = z.infer<typeof FluidReceived>;

/** The walk round the machine, in the order one walks. */
export const arrivalViews = [
  'front-left',
  'front-right',
  'rear-right',
  'rear-left',
  'plate',
  'hour-meter',
  'wheels',
  'underneath',
] as const;
export const ArrivalView = z.enum(arrivalViews);
export type ArrivalView = z.infer<typeof ArrivalView>;

export const ArrivalPhoto = z.strictObject({ id: z.string(), view: ArrivalView, shotId: z.string() });
export type ArrivalPhoto = z.infer<typeof ArrivalPhoto>;

/** The machine as it was received: it protects owner and mechanic alike. */
export interface Intake {
  readonly earlierWork: readonly EarlierWork[];
  readonly fluids: readonly FluidReceived[];
  readonly photos: readonly ArrivalPhoto[];
}
