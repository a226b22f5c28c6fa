import { commonPractice } from '../sheet-kind.ts';

/** Published windows of makers lie between 0.025 and 0.152 mm: the engine's own figure goes first. */
export const average = commonPractice({ min: 0.05, max: 0.13 });
export const tilt = commonPractice({ max: 0.03 });
/** US Army TM 10-3930-653-14&P allows 0.05 mm between neighbours and within one liner. */
export const step = commonPractice({ max: 0.05 });
