import { commonPractice } from '../sheet-kind.ts';

/** Suction at the inlet of a gear pump. */
export const inletVacuum = commonPractice({ max: 20 });
