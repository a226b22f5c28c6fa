import type { Limit } from '../../verdict/limit.ts';
import { commonPractice } from '../sheet-kind.ts';

export const outOfRound = commonPractice({ max: 0.03 });
export const taper = commonPractice({ max: 0.03 });
export const endFloat = commonPractice({ min: 0.1, max: 0.4 });
/** New shells, by the journal's diameter; a used bearing is judged by the maker's figure. */
export const newClearance = (journalMm: number): Limit =>
  commonPractice({ min: 0.0008 * journalMm, max: 0.001 * journalMm });
/** What grinding takes off to clean a journal up. Common practice, no source. */
export const cleanUpMm = 0.02;
