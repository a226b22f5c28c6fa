import { z } from 'zod';
import { Reading } from '../model/reading.ts';
import { step } from './operation.ts';

const id = z.string();

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
  'reading.remove': step<null>()(z.strictObject({ id })),
};
