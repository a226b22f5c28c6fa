import { expect, it } from 'vitest';
import { costOf, minorDigits, sayMoney } from '../../../../shared-lib/choices/money.ts';
import type { CostLine } from '../../../../shared-lib/choices/records.ts';

const line = (amount: string, price: string): CostLine => ({ id: '', kind: 'parts', words: '', amount, price });

it('adds what binary fractions cannot: 0.1 and 0.2', () => {
  expect(costOf([line('1', '0.1'), line('1', '0.2')], { currency: 'EUR', taxPercent: null }).total).toBe('0.30');
});

it('rounds each line half up as it is printed, so that the column adds up', () => {
  // 3 × 0.335 = 1.005 exactly, which no binary fraction holds: printed 1.01.
  const cost = costOf([line('3', '0.335'), line('1.5', '85')], { currency: 'EUR', taxPercent: '21' });
  expect(cost).toEqual({ lines: ['1.01', '127.50'], net: '128.51', tax: '26.99', total: '155.50' });
});

it('an allowance comes off', () => {
  expect(costOf([line('1', '100'), line('1', '-0.005')], { currency: '', taxPercent: null }).lines).toEqual([
    '100.00',
    '-0.01',
  ]);
});

// ISO 4217 (list one): the yen has no minor unit, the Bahraini dinar three digits.
it.each([
  ['EUR', 2],
  ['JPY', 0],
  ['BHD', 3],
  ['', 2],
])('%s has %i digits', (currency, digits) => {
  expect(minorDigits(currency)).toBe(digits);
});

it('says money in groups of three', () => {
  expect(sayMoney('1234567.50', 'EUR')).toBe('1\u202f234\u202f567.50\u00a0EUR');
  expect(sayMoney('-40', '')).toBe('\u221240');
});
