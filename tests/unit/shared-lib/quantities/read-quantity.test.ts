import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type QuantityId, quantityKind } from '../../../../shared-lib/quantities/dictionary.ts';
import { readQuantity } from '../../../../shared-lib/quantities/read-quantity.ts';

const read = (typed: string, unit = 'mm') => readQuantity(typed, unit, 'measured');

describe('a quantity as typed', () => {
  // [typed, default unit, value, unit, resolution]
  it.each([
    ['14 mm', 'mm', 14, 'mm', 1],
    ['14', 'mm', 14, 'mm', 1],
    ['14mm', 'mm', 14, 'mm', 1],
    ['0.38 V', 'V', 0.38, 'V', 0.01],
    ['0,38 V', 'V', 0.38, 'V', 0.01],
    ['6,5 mm', 'mm', 6.5, 'mm', 0.1],
    ['1,4 cm', 'mm', 14, 'mm', 1],
    ['7/16 in', 'mm', 11.1125, 'mm', 1.5875],
    ['7/16', 'in', 0.4375, 'in', 0.0625],
    ['1½"', 'mm', 38.1, 'mm', 12.7],
    ['½ in', 'mm', 12.7, 'mm', 12.7],
    ['-3 °C', '°C', -3, '°C', 1],
    ['\u22123 °C', '°C', -3, '°C', 1],
    ['6 260 h', 'h', 6260, 'h', 1],
    ['6\u2009260 h', 'h', 6260, 'h', 1],
    ['350 um', 'mm', 0.35, 'mm', 0.001],
    ['15.5 MPa', 'kPa', 15500, 'kPa', 100],
    ['1 bar', 'kPa', 100, 'kPa', 100],
    ['80 ft-lb', 'N·m', 108.46543586651, 'N·m', 1.3558179483314],
    ['0.79 mΩ', 'mΩ', 0.79, 'mΩ', 0.01],
    ['0.79 m\u2126', 'mΩ', 0.79, 'mΩ', 0.01],
    ['23.5°', '°', 23.5, '°', 0.1],
    ['16.7 %', '%', 16.7, '%', 0.1],
    ['.5', 'mm', 0.5, 'mm', 0.1],
    ['5.', 'mm', 5, 'mm', 1],
  ])('%s, in %s when bare', (typed, bare, value, unit, resolution) => {
    const quantity = read(typed, bare);
    expect(quantity.typed).toBe(typed);
    expect(quantity.value).toBeCloseTo(value, 9);
    expect(quantity.unit).toBe(unit);
    expect(quantity.resolution).toBeCloseTo(resolution, 9);
  });

  it.each([
    ['18 mm per 30 min', 6],
    ['18 mm/30 min', 6],
    ['18 mm in 30 min', 6],
    ['42 mm per 10 min', 42],
    ['1 in per 10 min', 25.4],
    ['1.2 mm/min', 12],
    ['6 cm per h', 10],
  ])('%s is brought to millimetres per 10 minutes', (typed, value) => {
    expect(read(typed, 'mm per 10 min').value).toBeCloseTo(value, 9);
  });

  it('reads a volume in a stated time as a rate', () => {
    expect(read('35 mL per 25 min', 'mL/min').value).toBeCloseTo(1.4, 12);
    expect(read('2 L/h', 'mL/min').value).toBeCloseTo(33.3333333, 6);
  });

  it.each([
    ['I', 1],
    ['II', 2],
    ['III', 3],
  ])('counts leak class %s', (typed, value) => {
    expect(read(typed, '').value).toBe(value);
  });

  it.each([
    ['1,234,567 mm', 'two commas'],
    ['1.234,5 mm', 'a point and a comma'],
    ['1,250 mm', 'a comma that may part thousands'],
    ['27/26/24.5/27 bar', 'a list'],
    ['24/25 bar', 'a list of two'],
    ['about 14 mm', 'words before it'],
    ['14 mm or so', 'words after it'],
    ['14 furlongs', 'a unit we do not know'],
    ['5 kPa', 'a pressure for a length'],
    ['14-16 mm', 'a range'],
    ['1e5 mm', 'an exponent'],
    ['II', 'a class for a length'],
    ['', 'nothing'],
    ['mm', 'a unit alone'],
    ['NaN', 'no number'],
    ['Infinity mm', 'no number'],
  ])('keeps "%s" as typed and guesses nothing (%s)', (typed) => {
    const quantity = read(typed);
    expect(quantity.typed).toBe(typed);
    expect(quantity.value).toBeNull();
    expect(quantity.resolution).toBeNull();
    expect(quantity.uncertainty).toBeNull();
  });

  it('tells megapascal from millipascal by its capital, and does not read the one in doubt', () => {
    expect(read('1 mpa', 'kPa').value).toBeNull();
    expect(read('1 KPA', 'kPa').value).toBe(1);
  });

  it('never throws, and a value is always a finite number', () => {
    fc.assert(
      fc.property(fc.string(), fc.constantFrom('mm', '', 'kPa', '°C', 'mm per 10 min'), (typed, unit) => {
        const { value } = read(typed, unit);
        return value === null || Number.isFinite(value);
      }),
    );
  });

  it.each(['valueOf', 'constructor', '__proto__', 'toString'])('takes %s for a word, not for a number', (typed) => {
    expect(read(typed, '').value).toBeNull();
  });

  it('reads every plain decimal as it stands', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 999_999 }), fc.integer({ min: 0, max: 4 }), (digits, decimals) => {
        const text = (digits / 10 ** decimals).toFixed(decimals);
        return Math.abs((read(`${text} mm`).value ?? Number.NaN) - Number(text)) < 1e-9;
      }),
    );
  });
});

describe('uncertainty', () => {
  const kinds: readonly [QuantityId, string, 'measured' | 'photo' | 'estimate' | 'owner-reported', number | null][] = [
    // The handbook's quantity dictionary (8.1); common practice, no source.
    ['length', '14 mm', 'photo', 1],
    ['length', '14 mm', 'measured', 0.5],
    ['length', '14 mm', 'estimate', null],
    ['length', '14 mm', 'owner-reported', null],
    ['drop', '0.38 V', 'measured', 0.01],
    ['play', '18.3 °', 'measured', 1],
    ['play', '0.8 mm', 'measured', 0.2],
    ['leak', '20 mL/min', 'measured', 2],
    ['pH', '6.9', 'measured', 0.3],
    ['deceleration', '1.23 m/s²', 'measured', 0.2],
    ['resistance', '0.79 mΩ', 'measured', null],
  ];
  it.each(kinds)('%s %s, %s: %s', (id, typed, origin, expected) => {
    const kind = quantityKind(id);
    expect(readQuantity(typed, kind?.unit ?? '', origin, kind).uncertainty).toBe(expected);
  });

  it('takes what stands after ± before any fallback, in the typed unit', () => {
    const kind = quantityKind('length');
    expect(readQuantity('14 ± 2 mm', 'mm', 'measured', kind)).toMatchObject({ value: 14, uncertainty: 2 });
    expect(readQuantity('14 mm ± 0.2', 'mm', 'measured', kind)).toMatchObject({ value: 14, uncertainty: 0.2 });
    expect(readQuantity('1 ± 0.1 in', 'mm', 'measured', kind)).toMatchObject({ value: 25.4, uncertainty: 2.54 });
    expect(readQuantity('14 mm ± 1 in', 'mm', 'measured', kind).value).toBeNull();
  });

  it('keeps the other unit of a question that has two', () => {
    const kind = quantityKind('play');
    expect(readQuantity('1/32 in', '°', 'measured', kind)).toMatchObject({ value: 0.79375, unit: 'mm' });
  });

  it('takes the typed unit where the question has none of its own', () => {
    const kind = quantityKind('true');
    expect(readQuantity('310 kPa', '', 'measured', kind)).toMatchObject({ value: 310, unit: 'kPa' });
  });

  it('does not take a length for a count', () => {
    const kind = quantityKind('count');
    expect(readQuantity('14 mm', '', 'measured', kind).value).toBeNull();
    expect(readQuantity('14', '', 'measured', kind)).toMatchObject({ value: 14, uncertainty: 0 });
  });

  it('converts a temperature difference without an offset', () => {
    const kind = quantityKind('temperatureDifference');
    expect(readQuantity('18 °F', '°C', 'measured', kind).value).toBeCloseTo(10, 12);
  });
});
