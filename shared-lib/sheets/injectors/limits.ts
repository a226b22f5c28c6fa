import type { Limit } from '../../verdict/limit.ts';
import { commonPractice } from '../sheet-kind.ts';

export const leakBackRatio = commonPractice({ max: 2, badAbove: 3 });
export const opening = (setBar: number): Limit => commonPractice({ min: setBar - 8, max: setBar + 8 });
export const openingSpread = commonPractice({ max: 10 });
/** The seat stays dry so long, 10 to 20 bar below opening. Common practice, no source. */
export const drySeconds = 10;
