import type { Reading } from '../model/reading.ts';
import { computeSheet, type SheetOutcome } from '../sheets/compute.ts';
import { sheetOf } from '../sheets/index.ts';
import { type Surroundings, sheetInputOf } from './sheet-input.ts';

/**
 * What its sheet says of a reading now.
 *
 * @returns null for a reading that was written down as it was (version 0), or whose sheet is not known here
 */
export function outcomeOf(reading: Omit<Reading, 'id' | 'visitId'>, surroundings: Surroundings): SheetOutcome | null {
  if (reading.sheetVersion === 0) return null;
  const sheet = sheetOf(reading.sheet);
  return sheet === null ? null : computeSheet(sheet, sheetInputOf(reading, surroundings));
}
