import { describe, expect, it } from 'vitest';
import { readQuantity } from '../../../shared-lib/quantities/read-quantity.ts';
import { convert, convertDifference, unitNamed } from '../../../shared-lib/quantities/units.ts';

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
