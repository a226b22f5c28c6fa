import type { Limit } from '../../verdict/limit.ts';

/**
 * Air people breathe, parts per million. Source: 29 CFR 1910.1000 table Z-1: 50 ppm as a mean over 8 hours; NIOSH
 * recommends 35 ppm over a shift and never more than 200 ppm.
 */
export const breathed: Limit = {
  max: 35,
  badAbove: 50,
  source: 'common-practice',
  cites: 'NIOSH recommends 35 ppm over a shift; 29 CFR 1910.1000 table Z-1 allows 50 ppm over 8 hours',
};
export const ceilingPpm = 200;
