import { expect, test } from 'vitest';
import { growthBetween, sayGrowth } from '../../../../shared-lib/comparison/growth.ts';

/** `expanded` as it is shown, k = 2. */
const at = (value: number, expanded: number, hours: number | null) => ({ value, u: expanded / 2, hours });

test('a crack that grew is said with its uncertainty and per 100 hours', () => {
  const growth = growthBetween(at(23, 0.6, 6000), at(36.4, 0.8, 6200));
  // 13.4 mm in 200 h; the uncertainties 0.6 and 0.8 combine to 1.0 (GUM 5.1.2).
  expect(growth).toMatchObject({ state: 'grown' });
  expect(sayGrowth(growth, 'mm')).toBe('Grown by 13.4 \u00b1 1.0 mm, 6.7 \u00b1 0.5 mm per 100 h.');
});

test('a change inside its uncertainty is no change that can be told', () => {
  const growth = growthBetween(at(23, 0.6, 6000), at(23.9, 0.8, 6200));
  expect(growth.state).toBe('no-change-told');
  expect(sayGrowth(growth, 'mm')).toContain('No change that can be told');
});

test('a crack that got smaller is asked about', () => {
  const growth = growthBetween(at(23, 0.3, null), at(20, 0.4, null));
  expect(growth.state).toBe('smaller');
  expect(sayGrowth(growth, 'mm')).toBe('Smaller by 3.0 \u00b1 0.5 mm: is it the same one?');
});

test('without hours, or with hours that did not pass, there is no rate', () => {
  for (const hours of [null, 6000, 5900]) {
    expect(growthBetween(at(23, 0.3, 6000), at(30, 0.4, hours))).toMatchObject({ state: 'grown', per100Hours: null });
  }
  // Hours of today alone are none that passed between.
  expect(growthBetween(at(23, 0.3, null), at(30, 0.4, 6000))).toMatchObject({ state: 'grown', per100Hours: null });
});

test.each([Number.NaN, Number.POSITIVE_INFINITY])('a size that is %f is never compared', (value) => {
  expect(growthBetween(at(23, 0.3, 1), at(value, 0.4, 2)).state).toBe('not-comparable');
  expect(growthBetween(at(23, value, 1), at(24, 0.4, 2)).state).toBe('not-comparable');
});
