import { commonPractice } from '../sheet-kind.ts';

/** Machines up to 25 km/h; ISO 3450 for new earth-moving machines, local law on roads. */
export const deceleration = commonPractice({ min: 2.5, badBelow: 1.5 });
export const slowKmh = 25;
/** Creep is looked for over this time, on the steepest slope used. Common practice, no source. */
export const parkingMinutes = 5;
export const standardGravity = 9.80665;
