import { commonPractice } from '../sheet-kind.ts';

/** FAA AC 43.13-1B rejects aircraft cylinders under 60/80 (25 %); figures depend on the tester's orifice. */
export const leak = commonPractice({ max: 10, badAbove: 20 });
