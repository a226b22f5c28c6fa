import { commonPractice } from '../sheet-kind.ts';

/** Under this the inhibitor protects too little. US Army TM 5-3820-245-14&P says 30 %, another 33 %. */
export const glycol = commonPractice({ min: 30 });
export const acidity = commonPractice({ min: 7.5, max: 11 });
/** Stronger mixtures freeze warmer again. US Army and Navy training texts: about 60 %. */
export const mostUsefulGlycol = 60;

/**
 * Freezing point by ethylene glycol, per cent by volume.
 * Source: US Army TM 5-3895-382-24 coolant page; at 50 % −37 °C by three further sources; at 60 % sources lie between −52
 * and −57 °C. Between the rows straight lines; ±2 °C up to half, ±4 °C above.
 */
export const freezesAtC = [
  [0, 0],
  [30, -15],
  [40, -24],
  [50, -37],
  [60, -54],
] as const;
