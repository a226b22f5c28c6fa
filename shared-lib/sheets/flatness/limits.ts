import { commonPractice } from '../sheet-kind.ts';

/**
 * Iron heads and decks of several cylinders. US Army TM 5-4320-300-14 allows 0.003 in across and 0.006 in along.
 */
export const overall = commonPractice({ max: 0.1 });
export const local = commonPractice({ max: 0.05 });
/** What a cut takes beyond the flatness itself. Common practice, no source. */
export const cutBeyondMm = 0.05;
/** The span over which local flatness is judged, and the step over which steepness is shown. */
export const localSpanMm = 150;
export const stepMm = 100;
