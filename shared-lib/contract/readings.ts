import { z } from 'zod';
import { Reading, TypedLimit } from '../model/reading.ts';
import { Instrument } from '../model/shop.ts';
import type { ReadingSeries } from '../trends/gather-series.ts';
import { query, step } from './operation.ts';

const id = z.string();
/** A table pasted from a spreadsheet is one field. */
const typed = z.record(z.string().max(60), z.string().max(40_000));

/** The fields of a filled sheet; half of them are legal, and shown as what they need. */
const filled = z.strictObject({
  inputs: typed,
  conditions: typed,
  /** By the result's name. The maker's and the machine shop's are remembered for the machine. */
  limits: z.record(z.string(), TypedLimit.nullable()),
  takenOver: typed,
  remark: z.string().max(2000),
  notTakenBecause: z.string().trim().min(1).max(400).nullable(),
  instrumentId: id.nullable(),
  shotIds: z.array(id).max(50),
});

/** The same sheet at the same place in an earlier stay of the machine. */
export interface PreviousReading {
  readonly reading: Reading;
  readonly date: string;
  /** A part was fitted there since, or may have been: the two are not one thing getting older. */
  readonly isOfAnotherPart: boolean;
}

/** What was read more than once on the machine up to a visit, and the hours it had run at the visit before. */
export interface GatheredSeries {
  readonly series: readonly ReadingSeries[];
  readonly before: { readonly date: string; readonly hours: number } | null;
}

export const readingOperations = {
  /** A reading as it was written down: inputs, results and what they were held against, nothing computed. */
  'reading.record': step<Reading>()(
    Reading.pick({ visitId: true, sheet: true, at: true, results: true }).extend({
      inputs: Reading.shape.inputs.default({}),
      conditions: Reading.shape.conditions.default({}),
      remark: z.string().max(2000).default(''),
      notTakenBecause: z.string().max(400).nullable().default(null),
    }),
  ),
  /** Begins a sheet at a place. Its results are computed here, never sent. */
  'reading.fill': step<Reading>()(filled.partial().extend({ visitId: id, sheet: z.string(), at: z.string() })),
  /** Fields are merged one by one; an empty one is taken away, and so is a limit that is null. */
  'reading.change': step<Reading>()(filled.partial().extend({ id, at: z.string().optional() })),
  'reading.remove': step<null>()(z.strictObject({ id })),
  'reading.previous': query<PreviousReading | null>()(
    z.strictObject({ visitId: id, sheet: z.string(), at: z.string() }),
  ),
  /** The machine's readings up to this visit, in series against its hours; none runs across a change of part. */
  'reading.series': query<GatheredSeries>()(z.strictObject({ visitId: id })),
  /** What the machine's limits are, as they were typed before; by the result's name. */
  'limit.remembered': query<Record<string, TypedLimit>>()(z.strictObject({ visitId: id, sheet: z.string() })),
  'limit.remember': step<null>()(
    z.strictObject({ visitId: id, sheet: z.string(), of: z.string(), limit: TypedLimit.nullable() }),
  ),
  'instrument.list': query<readonly Instrument[]>()(z.strictObject({})),
  'instrument.add': step<Instrument>()(
    Instrument.omit({ id: true }).partial().required({ name: true, resolution: true }).extend({ visitId: id }),
  ),
};
