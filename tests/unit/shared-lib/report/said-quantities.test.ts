import { expect, it } from 'vitest';
import { quantityKind } from '../../../../shared-lib/quantities/dictionary.ts';
import { readQuantity } from '../../../../shared-lib/quantities/read-quantity.ts';
import { unitFor } from '../../../../shared-lib/quantities/show-quantity.ts';
import { sayQuantities } from '../../../../shared-lib/report/quantity-words.ts';
import { sayTyped, showResult } from '../../../../shared-lib/report/reading-words.ts';

const said = (id: string, typed: string, units: 'metric' | 'us' = 'metric'): string => {
  const kind = quantityKind(id);
  const quantity = readQuantity(typed, unitFor(kind?.unit ?? '', units), 'measured', kind);
  const [words = ''] = sayQuantities({ quantities: { [id]: quantity } }, units);
  return words.replaceAll('\u202f', ' ');
};

// What each can be off by: the handbook's quantity dictionary (8.1). Inches and degrees: NIST SP 811, appendix B.
it.each([
  ['width', '5 mm', 'metric', 'Width 5 mm (± 0.2 mm)'],
  ['depth', '14 mm', 'metric', 'Depth 14 mm (± 0.1 mm)'],
  ['length', '36 mm', 'metric', 'Length 36 mm (± 0.5 mm)'],
  ['drift', '42 mm per 10 min', 'metric', 'Drift 42 mm per 10 min (± 1 mm per 10 min)'],
  // One millimetre in ten minutes is three in thirty.
  ['drift', '18 mm per 30 min', 'metric', 'Drift 18 mm per 30 min (± 3 mm per 30 min)'],
  // 0.5 mm ÷ 25.4 mm = 0.0197 in.
  ['length', '1.5 in', 'us', 'Length 1.5 in (± 0.02 in)'],
  // 2 K are 3.6 °F: a difference takes no offset along.
  ['temperature', '212 °F', 'us', 'Temperature 212 °F (± 3.6 °F)'],
] as const)('%s %s in %s units: what it can be off by is never rounded to nothing', (id, typed, units, expected) => {
  expect(said(id, typed, units)).toBe(expected);
});

// 0.51 US gallons of 231 cubic inches are 1.93 L (NIST SP 811, appendix B: 3.785412 L).
it('a result keeps its two unsure figures in another unit', () => {
  expect(showResult('0.51 gal', '0.051 gal', 'metric').replaceAll('\u202f', ' ')).toMatch(/^1\.93 ± ?0\.19 L$/);
});

it('numbers stand after their field, words after a colon', () => {
  const labels = {
    radius: { label: 'Radius' },
    surface: { label: 'Surface' },
    cap: { label: 'Cap opens at, measured' },
  };
  expect(sayTyped({ radius: '200 mm', arc: '82 mm' }, labels)).toBe('radius 200 mm, arc 82 mm');
  expect(sayTyped({ surface: 'dry concrete', radius: '−2 °C' }, labels)).toBe('surface: dry concrete; radius: −2 °C');
  expect(sayTyped({ cap: '91 kPa' }, labels)).toBe('cap opens at, measured: 91 kPa');
});
