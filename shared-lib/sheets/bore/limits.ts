import { commonPractice } from '../sheet-kind.ts';

/** For bores of about 100 mm; US Army TM 9-2815-260-24 allows one engine family 0.05 for taper and for out-of-round. */
export const wear = commonPractice({ max: 0.2 });
export const taper = commonPractice({ max: 0.1 });
export const outOfRound = commonPractice({ max: 0.05 });
/** What honing takes off the diameter to clean it up. Common practice, no source. */
export const cleanUpMm = 0.05;
