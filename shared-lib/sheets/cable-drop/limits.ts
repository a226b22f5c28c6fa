import type { Limit } from '../../verdict/limit.ts';
import { commonPractice } from '../sheet-kind.ts';

/**
 * Most volts lost while cranking a 12 V engine; twice that for 24 V. Common practice, no source. US Army
 * TM 5-3820-256-24-4 is stricter on ground: 0.2 V for the whole side, and nothing at a joint.
 */
export const mostVoltsAt12V = {
  'clamp or lug': 0.05,
  cable: 0.2,
  'switch or solenoid contact': 0.3,
  'engine-to-frame strap': 0.1,
  'positive side, whole': 0.5,
  'ground side, whole': 0.3,
} as const;

export type Leg = keyof typeof mostVoltsAt12V;
export const legs = Object.keys(mostVoltsAt12V) as readonly Leg[];

export const mostDrop = (leg: Leg, systemVolts: number): Limit =>
  commonPractice({ max: (mostVoltsAt12V[leg] * systemVolts) / 12 });

/** More than this unexplained at 12 V, and a leg was missed or the readings belong to different crankings. */
export const mostResidualAt12V = 0.1;
