import { commonPractice } from '../sheet-kind.ts';

/** No visible drop, and no more than this fall of the gauge in ten minutes. */
export const fallIn10Minutes = commonPractice({ max: 2 });
/** A shorter test cannot show it. Common practice, no source. */
export const shortestMinutes = 10;
