import { commonPractice } from '../sheet-kind.ts';

/** Diesel. Rules in print disagree (lowest at least 75 % of highest; 10 %; 25 psi): the one used is printed. */
export const spread = commonPractice({ max: 10, badAbove: 25 });
/** Cranking speeds must agree this well, or the cylinders were not tested alike. Common practice, no source. */
export const mostSpeedSpreadShare = 0.1;
/** Coolant at least this warm. Common practice, no source. */
export const warmC = 70;
