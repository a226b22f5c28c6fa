import { commonPractice } from '../sheet-kind.ts';

/** Stem in guide, stems of 8 to 10 mm. */
export const stemClearance = { exhaust: commonPractice({ max: 0.15 }), intake: commonPractice({ max: 0.1 }) } as const;
