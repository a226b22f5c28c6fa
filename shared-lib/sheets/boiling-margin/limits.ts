import { commonPractice } from '../sheet-kind.ts';

export const margin = commonPractice({ min: 15, badBelow: 5 });

/** Stronger than this no published boiling point checks the formula. */
export const mostCheckedGlycol = 70;
