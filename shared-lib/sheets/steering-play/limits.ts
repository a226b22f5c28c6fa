import { commonPractice } from '../sheet-kind.ts';

/**
 * Used heavy road vehicles may have 2 in at a rim of 16 in up to 2¾ in at 22 in, about 14° for all (49 CFR 570.60). For
 * farm and earth-moving machines the maker's figure goes first.
 */
export const play = commonPractice({ max: 14, badAbove: 25 });
