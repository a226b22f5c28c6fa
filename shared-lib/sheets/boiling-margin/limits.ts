import { commonPractice } from '../sheet-kind.ts';

export const margin = commonPractice({ min: 15, badBelow: 5 });
