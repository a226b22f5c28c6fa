import type { Limit } from '../../verdict/limit.ts';
import { commonPractice } from '../sheet-kind.ts';

/** Opens within a tenth of its rating. TM 5-3895-359-14&P: a cap of 7 psi opens between 6.25 and 7.5 psi. */
export const opens = (ratingKpa: number): Limit => commonPractice({ min: 0.9 * ratingKpa, max: 1.1 * ratingKpa });
export const holds = (ratingKpa: number): Limit => commonPractice({ min: 0.8 * ratingKpa });
export const vacuum = commonPractice({ min: 2, max: 10 });
