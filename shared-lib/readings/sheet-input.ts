import type { Layout } from '../model/layout.ts';
import type { Reading } from '../model/reading.ts';
import type { Visit } from '../model/visit.ts';
import type { SheetInput } from '../sheets/compute.ts';

/** What a reading stands in: a sheet asks the visit and the machine for what the reading does not say itself. */
export interface Surroundings {
  readonly conditions: Visit['conditions'];
  readonly volts: Layout['volts'];
  /** The smallest step of the instrument it was read on. */
  readonly resolution: string | null;
}

type Filled = Pick<Reading, 'at' | 'inputs' | 'conditions' | 'notTakenBecause' | 'limits' | 'takenOver'>;

/** A reading as its sheet takes it. The reading's own conditions stand before the visit's, those before the machine's. */
export function sheetInputOf(reading: Filled, surroundings: Surroundings): SheetInput {
  const { conditions, volts, resolution } = surroundings;
  return {
    inputs: reading.inputs,
    conditions: { ...(volts === undefined ? {} : { system: `${volts} V` }), ...conditions, ...reading.conditions },
    at: reading.at,
    ...(reading.limits === undefined ? {} : { limits: reading.limits }),
    ...(reading.takenOver === undefined ? {} : { results: reading.takenOver }),
    ...(resolution === null ? {} : { instrument: { resolution } }),
    ...(reading.notTakenBecause === null ? {} : { notTakenBecause: reading.notTakenBecause }),
  };
}
