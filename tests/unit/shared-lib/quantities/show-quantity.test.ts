import { describe, expect, it } from 'vitest';
import { readQuantity } from '../../../../shared-lib/quantities/read-quantity.ts';
import { showQuantity, showValue, thinGap, unitFor } from '../../../../shared-lib/quantities/show-quantity.ts';

/** A thin gap written as an underscore. */
const thin = (text: string) => text.replaceAll('_', thinGap);
const show = (typed: string, unit: string, system: 'metric' | 'us') =>
  showQuantity(readQuantity(typed, unit, 'measured'), system);

describe('a quantity for people', () => {
  it.each([
    ['14', 'mm', '14_mm'],
    ['0.380 V', 'V', '0.380_V'],
    ['6,5 mm', 'mm', '6.5_mm'],
    ['.5', 'mm', '0.5_mm'],
    ['23.5', '°', '23.5°'],
    ['104 °C', '°C', '104_°C'],
    ['-3', '°C', '\u22123_°C'],
    ['6260 h', 'h', '6_260_h'],
    ['18 mm per 30 min', 'mm per 10 min', '18_mm per 30 min'],
    ['II', '', 'II'],
    ['6.9', '', '6.9'],
    ['1 bar', 'kPa', '1_bar'],
  ])('keeps the digits typed in its own units: %s (%s)', (typed, unit, shown) => {
    expect(show(typed, unit, 'metric')).toBe(thin(shown));
  });

  it.each([
    ['14 mm', 'mm', '0.55_in'],
    ['0.17 mm', 'mm', '0.0067_in'],
    ['70 kPa', 'kPa', '10.2_psi'],
    ['100 °C', '°C', '212_°F'],
    ['18 mm per 30 min', 'mm per 10 min', '0.24_in per 10 min'],
    ['0.38 V', 'V', '0.38_V'],
    ['23.5', '°', '23.5°'],
  ])('%s (%s) reads in US units without digits it has not earned', (typed, unit, shown) => {
    expect(show(typed, unit, 'us')).toBe(thin(shown));
  });

  it.each([
    ['7/16 in', 'mm', 'us', '7/16_in'],
    ['7/16 in', 'mm', 'metric', '11_mm'],
    ['.0035"', 'mm', 'us', '0.0035_in'],
    ['.0035"', 'mm', 'metric', '0.089_mm'],
    ['15 psi', 'kPa', 'metric', '103_kPa'],
    ['212F', '°C', 'metric', '100.0_°C'],
  ] as const)('%s typed in US units, in %s, %s: %s', (typed, unit, system, shown) => {
    expect(show(typed, unit, system)).toBe(thin(shown));
  });

  it('shows what is not one number as it was typed', () => {
    expect(show('about 14 mm', 'mm', 'us')).toBe('about 14 mm');
    expect(show('1,234,567', 'mm', 'metric')).toBe('1,234,567');
  });

  it('never shows a negative zero', () => {
    expect(showValue(-0.0001, 'mm', 0.01, 'metric')).toBe(thin('0.00_mm'));
  });

  it('names the unit a person of the other system expects', () => {
    expect(unitFor('mm', 'us')).toBe('in');
    expect(unitFor('kPa', 'us')).toBe('psi');
    expect(unitFor('V', 'us')).toBe('V');
    expect(unitFor('in', 'metric')).toBe('mm');
    expect(unitFor('', 'us')).toBe('');
  });
});
