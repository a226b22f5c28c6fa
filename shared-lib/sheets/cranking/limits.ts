import type { Limit } from '../../verdict/limit.ts';
import { commonPractice } from '../sheet-kind.ts';

/** At the battery while cranking at about 20 °C: 9.6 V of 12, in proportion for others. */
export const leastCrankingVolts = (systemVolts: number): Limit => commonPractice({ min: 0.8 * systemVolts });
