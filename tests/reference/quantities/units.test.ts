import { describe, expect, it } from 'vitest';
import { readQuantity } from '../../../shared-lib/quantities/read-quantity.ts';
import { convert, convertDifference, unitNamed, units } from '../../../shared-lib/quantities/units.ts';

function converted(value: number, from: string, to: string): number | null {
  const [a, b] = [unitNamed(from), unitNamed(to)];
  if (a === null || b === null) throw new Error(`unknown unit ${from} or ${to}`);
  return convert(value, a, b);
}

/**
 * NIST SP 811 (2008), appendix B, and the exact definitions it rests on: inch 25.4 mm, pound 0.45359237 kg, standard gravity
 * 9.80665 m/s2, US gallon 231 in3. [value, from, expected, to, tolerance of the printed digits]
 */
const published: readonly [number, string, number, string, number][] = [
  [1, 'psi', 6.894757293, 'kPa', 1e-8],
  [1, 'bar', 14.5037738, 'psi', 1e-7],
  [1, 'inHg', 3.386389, 'kPa', 1e-6],
  [1, 'lbf·in', 0.112984829, 'N·m', 1e-9],
  [1, 'lbf·ft', 1.3558179483, 'N·m', 1e-10],
  [1, 'fl oz', 29.5735295625, 'mL', 1e-9],
  [1, 'gal', 3.785411784, 'L', 1e-12],
  [1, 'gal', 4, 'qt', 1e-12],
  [212, '°F', 100, '°C', 1e-12],
  [32, '°F', 0, '°C', 1e-12],
  [-40, '°F', -40, '°C', 1e-12],
  [0.001, 'in', 25.4, 'µm', 1e-12],
  [101.325, 'kPa', 14.69594878, 'psi', 1e-8],
  [1, 'ft', 304.8, 'mm', 1e-10],
  [1, 'lb', 0.45359237, 'kg', 1e-15],
  [1, 'mph', 1.609344, 'km/h', 1e-15],
  [1, 'in²', 645.16, 'mm²', 1e-10],
];

describe('units by NIST SP 811', () => {
  it.each(published)('%f %s is %f %s', (value, from, expected, to, tolerance) => {
    expect(Math.abs((converted(value, from, to) ?? Number.NaN) - expected)).toBeLessThanOrEqual(tolerance);
  });

  it.each(published)('%f %s and back is the same', (value, from, _expected, to) => {
    expect(converted(converted(value, from, to) ?? Number.NaN, to, from)).toBeCloseTo(value, 10);
  });

  it('gives a difference of 10 °C as 18 °F, without the offset of the scale', () => {
    const [celsius, fahrenheit] = [unitNamed('°C'), unitNamed('°F')];
    if (celsius === null || fahrenheit === null) throw new Error('units');
    expect(convertDifference(10, celsius, fahrenheit)).toBeCloseTo(18, 12);
  });

  it('never converts a pressure into a length', () => {
    expect(converted(1, 'kPa', 'mm')).toBeNull();
  });
});

/**
 * Every other unit in the first one of its kind: SI prefixes (SI brochure, table 7), minutes and hours (table 8), and from
 * NIST SP 811 the exact inch, foot, mile, pound, gallon of 231 in3 (4 qt, 128 fl oz), psi and inch of mercury.
 */
const inTheFirst: Readonly<Record<string, readonly [number, string]>> = {
  µm: [0.001, 'mm'],
  cm: [10, 'mm'],
  m: [1000, 'mm'],
  in: [25.4, 'mm'],
  ft: [304.8, 'mm'],
  'cm²': [100, 'mm²'],
  'in²': [645.16, 'mm²'],
  L: [1000, 'mL'],
  'fl oz': [29.5735295625, 'mL'],
  qt: [946.352946, 'mL'],
  gal: [3785.411784, 'mL'],
  Pa: [0.001, 'kPa'],
  MPa: [1000, 'kPa'],
  bar: [100, 'kPa'],
  mbar: [0.1, 'kPa'],
  psi: [6.894757293168, 'kPa'],
  inHg: [3.38638864, 'kPa'],
  '°F': [-17.2222222222, '°C'],
  min: [60, 's'],
  h: [3600, 's'],
  lbf·ft: [1.3558179483, 'N·m'],
  lbf·in: [0.1129848290276, 'N·m'],
  mV: [0.001, 'V'],
  Ω: [1000, 'mΩ'],
  mph: [1.609344, 'km/h'],
  'ft/s²': [0.3048, 'm/s²'],
  lb: [0.45359237, 'kg'],
  'mL/h': [0.0166666666667, 'mL/min'],
  'L/min': [1000, 'mL/min'],
  'gal/min': [3785.411784, 'mL/min'],
  'fl oz/min': [29.5735295625, 'mL/min'],
  'fl oz/h': [0.492892159375, 'mL/min'],
  'in per 10 min': [25.4, 'mm per 10 min'],
  'in per 100 h': [25.4, 'mm per 100 h'],
};

describe('every unit', () => {
  it.each(Object.entries(inTheFirst))('1 %s is %j', (symbol, [value, first]) => {
    expect((converted(1, symbol, first) ?? Number.NaN) / value).toBeCloseTo(1, 7);
  });

  it('is one of these, or the first of its kind', () => {
    const firsts = new Set(units.map(({ dimension }) => units.find((unit) => unit.dimension === dimension)?.symbol));
    expect(units.map(({ symbol }) => symbol).filter((symbol) => !firsts.has(symbol))).toEqual(Object.keys(inTheFirst));
    for (const [, first] of Object.values(inTheFirst)) expect(firsts).toContain(first);
  });

  it.each(units.flatMap((unit) => [unit.symbol, ...(unit.typed ?? [])].map((typed) => [typed, unit.symbol])))(
    '%s is read as %s',
    (typed, symbol) => {
      expect(unitNamed(typed)?.symbol).toBe(symbol);
    },
  );
});

describe('typed quantities come out as the standard converts them', () => {
  it.each([
    ['7/16 in', 'mm', 11.1125],
    ['.0035"', 'mm', 0.0889],
    ['212F', '°C', 100],
    ['15 psi', 'kPa', 103.4213594],
    ['1 1/2"', 'mm', 38.1],
    ['1 gal', 'mL', 3785.411784],
  ])('%s in %s is %f', (typed, unit, expected) => {
    expect(readQuantity(typed, unit, 'measured').value).toBeCloseTo(expected, 6);
  });
});
