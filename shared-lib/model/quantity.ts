import { z } from 'zod';

/** Where a number comes from: a gauge, a scaled photo, a guess, or what the owner says. */
export const QuantityOrigin = z.enum(['measured', 'photo', 'estimate', 'owner-reported']);

/** A number as it was typed, beside what it was understood to be. `value` is null while the text is not one number. */
export const Quantity = z.strictObject({
  typed: z.string().max(200),
  value: z.number().nullable(),
  unit: z.string().max(40),
  resolution: z.number().nonnegative().nullable(),
  uncertainty: z.number().nonnegative().nullable(),
  origin: QuantityOrigin,
  /** How it was got, where that matters: a leak as drops, catch or estimate. */
  how: z.string().max(200).optional(),
});
export type Quantity = z.infer<typeof Quantity>;
