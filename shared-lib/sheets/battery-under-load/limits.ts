/**
 * Least voltage of a 12 V battery after 15 s at half its cold-cranking rating, by the battery's temperature in °F.
 * Source: US Army TM 5-4210-230-14&P table 5.
 */
export const leastVoltsByFahrenheit = [
  [0, 8.5],
  [10, 8.7],
  [20, 8.9],
  [30, 9.1],
  [40, 9.3],
  [50, 9.4],
  [60, 9.5],
  [70, 9.6],
] as const;

/** The handbook's straight line, common practice, no source. */
export const handbookLeastVolts = (temperatureC: number): number => 9.6 - 0.028 * Math.max(0, 21 - temperatureC);
