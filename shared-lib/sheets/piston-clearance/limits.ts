import type { Limit } from '../../verdict/limit.ts';
import { commonPractice } from '../sheet-kind.ts';

/** End gap in the unworn bore, by its diameter. */
export const endGap = (boreMm: number, ring: 'new' | 'worn'): Limit =>
  ring === 'new'
    ? commonPractice({ min: 0.003 * boreMm, max: 0.004 * boreMm })
    : commonPractice({ max: 0.01 * boreMm });
