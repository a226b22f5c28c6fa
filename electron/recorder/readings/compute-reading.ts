import type { Reading, ResultLine } from '../../../shared-lib/model/reading.ts';
import { outcomeOf } from '../../../shared-lib/readings/outcome-of.ts';
import type { Surroundings } from '../../../shared-lib/readings/sheet-input.ts';
import { toResultLines } from '../../../shared-lib/sheets/compute.ts';
import type { ReadableDb } from '../database/connection.ts';
import { Memory } from '../memory.ts';
import { issuedSince } from '../reports/queries.ts';
import { instrumentById } from './queries.ts';

export interface Computed {
  readonly sheetVersion: number;
  readonly results: ResultLine[];
}

/** A surface of many points is recomputed with each look at its visit; the same numbers give the same lines. */
const remembered = new Memory<{ readonly computed: Computed | null }>(500);

/** Null for a reading that no sheet computes. */
export const computeReading = (
  db: ReadableDb,
  reading: Reading,
  { conditions, volts }: Omit<Surroundings, 'resolution'>,
): Computed | null => {
  const resolution =
    reading.instrumentId === null ? null : (instrumentById(db, reading.instrumentId)?.resolution ?? null);
  const { sheet, sheetVersion, at, inputs, notTakenBecause, limits, takenOver } = reading;
  const asked = JSON.stringify([
    sheet,
    sheetVersion === 0,
    at,
    inputs,
    reading.conditions,
    notTakenBecause,
    limits,
    takenOver,
    conditions,
    volts,
    resolution,
  ]);
  return remembered.get(asked, () => {
    const outcome = outcomeOf(reading, { conditions, volts, resolution });
    return { computed: outcome && { sheetVersion: outcome.version, results: toResultLines(outcome) } };
  }).computed;
};

/**
 * A reading as it is shown: a draft's results are computed anew, an issued one keeps what was issued. Where the other
 * version says something else, it stands beside.
 */
export const readingNow = (db: ReadableDb, reading: Reading, around: Omit<Surroundings, 'resolution'>): Reading => {
  const now = computeReading(db, reading, around);
  if (now === null || JSON.stringify(now.results) === JSON.stringify(reading.results)) return reading;
  if (issuedSince(db, reading.visitId, reading.takenAtMs)) return { ...reading, otherwise: now };
  const { sheetVersion, results } = reading;
  return { ...reading, ...now, otherwise: { sheetVersion, results } };
};
