import { commonPractice } from '../sheet-kind.ts';

/** No visible drop, and no more than this: in ten minutes, and over the whole of a longer test. Common practice, no source. */
export const mostFallKpa = 2;
export const fallIn10Minutes = commonPractice({ max: mostFallKpa });
/** A shorter test cannot show it. Common practice, no source. */
export const shortestMinutes = 10;
