import { expect, it } from 'vitest';
import { fallbacks } from '../../../../shared-lib/sheets/fallbacks.ts';
import { sheets } from '../../../../shared-lib/sheets/index.ts';

/**
 * The defaults as the handbook prints them, in the unit of the line; common practice, no source, but for carbon monoxide
 * (NIOSH: 35 ppm over a shift; 29 CFR 1910.1000 table Z-1: 50 ppm over 8 hours). Between a limit and its second edge the
 * handbook says "marginal".
 */
const printed = {
  'MS-01 charge': { min: 75 },
  'MS-01 charge by gravity': { min: 75 },
  'MS-01 spread between cells': { max: 0.05 },
  'MS-05 output': { min: 90 },
  'MS-05 ripple': { max: 0.5 },
  'MS-05 charging cable drop': { max: 0.2 },
  'MS-05 ground drop': { max: 0.2 },
  'MS-06 vacuum': { min: 2, max: 10 },
  'MS-07 fall': { max: 2 },
  'MS-08 margin': { min: 15, badBelow: 5 },
  'MS-10 spread': { max: 10, badAbove: 25 },
  'MS-11 leak': { max: 10, badAbove: 20 },
  'MS-12 wear': { max: 0.2 },
  'MS-12 taper': { max: 0.1 },
  'MS-12 out of round': { max: 0.05 },
  'MS-13 flatness': { max: 0.1 },
  'MS-13 overall': { max: 0.1 },
  'MS-13 local': { max: 0.05 },
  'MS-14 average': { min: 0.05, max: 0.13 },
  'MS-14 tilt': { max: 0.03 },
  'MS-14 step': { max: 0.05 },
  'MS-17 out of round': { max: 0.03 },
  'MS-17 taper': { max: 0.03 },
  'MS-17 end float': { min: 0.1, max: 0.4 },
  'MS-18 leak-back ratio': { max: 2, badAbove: 3 },
  'MS-18 opening spread': { max: 10 },
  'MS-21 play': { max: 14, badAbove: 25 },
  'MS-25 inlet vacuum': { max: 20 },
  'MS-26 glycol': { min: 30 },
  'MS-26 pH': { min: 7.5, max: 11 },
  'MS-28 elongation': { max: 3 },
  'MS-28 heel loss': { max: 10 },
  'MS-30 carbon monoxide': { max: 35, badAbove: 50 },
} as const;

it('every default limit of a sheet is the printed one, and there is no other', () => {
  const ours = sheets.flatMap(({ id, results }) =>
    Object.entries(results).flatMap(([of, { usualLimit }]) => {
      if (usualLimit === undefined) return [];
      const { source: _source, cites: _cites, ...edges } = usualLimit;
      return [[`${id} ${of}`, edges] as const];
    }),
  );
  expect(Object.fromEntries(ours)).toEqual(printed);
});

it('what a reading can be off by, where nobody says, is what the handbook’s quantity dictionary prints', () => {
  expect(fallbacks).toEqual({
    size: { absolute: 0.01 },
    clearance: { absolute: 0.02 },
    recession: { absolute: 0.05 },
    flatness: { absolute: 0.03 },
    crackLength: { absolute: 0.5 },
    drift: { absolute: 1 },
    pressure: { share: 0.02 },
    pressureHeld: { absolute: 2 },
    compression: { absolute: 0.5 },
    spread: { absolute: 2 },
    leakage: { absolute: 3 },
    ratio: { absolute: 0.1 },
    voltage: { absolute: 0.02 },
    voltageDrop: { absolute: 0.01 },
    current: { share: 0.02 },
    engineSpeed: { absolute: 10 },
    temperature: { absolute: 2 },
    glycol: { absolute: 3 },
    acidity: { absolute: 0.3 },
    levelChange: { share: 0.2 },
    leakRate: { share: 0.1 },
    deceleration: { absolute: 0.2 },
    creep: { absolute: 5 },
    angle: { absolute: 1 },
    elongation: { absolute: 0.2 },
    coverage: { absolute: 5 },
  });
});
