import { commonPractice } from '../sheet-kind.ts';

/**
 * Charge of a rested 12 V flooded battery by its voltage at 80 °F (27 °C): per cent by volts, lowest first.
 * Source: state-of-charge table in wide public use, as US Army TM 5-4210-230-14&P table 2 for the gravities.
 */
export const chargeByVolts = [
  [11.89, 0],
  [12.06, 25],
  [12.24, 50],
  [12.45, 75],
  [12.65, 100],
] as const;

/** The handbook's rounded table, common practice, no source. */
export const handbookChargeByVolts = [
  [11.9, 0],
  [12.05, 25],
  [12.25, 50],
  [12.45, 75],
  [12.65, 100],
] as const;

/** Charge by specific gravity at 80 °F (27 °C). Source: US Army TM 5-4210-230-14&P table 2. */
export const chargeByGravity = [
  [1.12, 0],
  [1.155, 25],
  [1.19, 50],
  [1.225, 75],
  [1.265, 100],
] as const;

/** A battery under this is charged before it is tested further. */
export const charge = commonPractice({ min: 75 });

/** US Army TM 5-3740-214-14 allows 0.050 between cells; TM 9-6140-200-14 only 0.025: the maker's figure goes first. */
export const cellSpread = commonPractice({ max: 0.05 });
