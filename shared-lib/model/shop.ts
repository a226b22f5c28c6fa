import { z } from 'zod';

export const Shop = z.strictObject({
  name: z.string().max(200),
  address: z.string().max(400),
  phone: z.string().max(60),
  units: z.enum(['metric', 'us']),
  paper: z.enum(['a4', 'us-letter']),
  /** `+01:00`; what a time without a zone is read in. */
  timeZone: z.string().regex(/^[+-]\d{2}:\d{2}$/),
  /** Its own words at the end of every statement; absent where it has none. */
  statementWords: z.string().trim().max(1000).exactOptional(),
});
export type Shop = z.infer<typeof Shop>;

/** The journal's 'who': a chip to switch, no login. */
export const Person = z.strictObject({
  id: z.string(),
  name: z.string().trim().min(1).max(120),
  trade: z.string().max(120),
  here: z.boolean(),
});
export type Person = z.infer<typeof Person>;

export const Instrument = z.strictObject({
  id: z.string(),
  name: z.string().max(120),
  kind: z.string().max(120),
  resolution: z.string().max(60),
  lastCheck: z.iso.date().nullable(),
});
export type Instrument = z.infer<typeof Instrument>;
