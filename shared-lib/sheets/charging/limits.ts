import type { Limit } from '../../verdict/limit.ts';
import { commonPractice } from '../sheet-kind.ts';
import { lookUp } from '../standards/lookup.ts';

/** At the battery, mid speed: 13.8 to 14.7 V of 12, 27.6 to 28.8 V of 24; others in proportion to the nearer. */
export const regulated = (systemVolts: number): Limit =>
  commonPractice({
    min: (13.8 * systemVolts) / 12,
    max: systemVolts > 12 ? (28.8 * systemVolts) / 24 : (14.7 * systemVolts) / 12,
  });
export const outputShare = commonPractice({ min: 90 });
export const ripple = commonPractice({ max: 0.5 });
export const cableLoss = commonPractice({ max: 0.2 });

/** Over this at 25 °C a 12 V battery gasses. Common practice, no source. */
export const gassingAt12V = 15;

/**
 * Band of the regulated voltage of a 24 V system by the battery's temperature in °F.
 * Source: US Army TM 9-6115-464-12, table 4-5; the rows seen are 0, 40, 80 and 120 °F, straight lines between.
 */
const bandLowBy24V = [
  [0, 29.2],
  [40, 28.64],
  [80, 28],
  [120, 27.32],
] as const;
const bandHighBy24V = [
  [0, 30.12],
  [40, 29.36],
  [80, 28.6],
  [120, 28.04],
] as const;

export const publishedBand = (temperatureC: number, systemVolts: number): { low: number; high: number } => {
  const fahrenheit = temperatureC * 1.8 + 32;
  return {
    low: (lookUp(bandLowBy24V, fahrenheit) * systemVolts) / 24,
    high: (lookUp(bandHighBy24V, fahrenheit) * systemVolts) / 24,
  };
};

/** What the set point moves for each kelvin away from 25 °C, 12 V. Common practice; the Army table has −14.9 mV. */
export const handbookSlopeAt12V = -0.02;
