import { join } from 'node:path';
import { expect, it } from 'vitest';
import { openTestRecorder } from '../../support/test-recorder.ts';

const demo = join(import.meta.dirname, '../../../assets/demo');

// The sums were added up by hand from the files' lines: each line rounded to the cent, 20 % on their sum.
it.each([
  ['1-loader-tractor.json', 'V1', { 'nothing now': '0.00', 'make safe': '220.80', 'mend what was found': '1705.80' }],
  [
    '1-loader-tractor.json',
    'V2',
    { 'strap only': '81.00', 'loader and steering, gauges later': '1358.40', 'mend what was found': '1695.60' },
  ],
  [
    '2-lift-truck.json',
    'V1',
    { 'head only': '2572.80', 'head, radiator and coolant': '3213.36', 'mend what was found': '4636.56' },
  ],
] as const)('%s %s: what its choices come to', async (file, visit, sums) => {
  const { recorder, call } = openTestRecorder();
  recorder.offer({ token: file, path: join(demo, file), for: 'read' });
  const { visits } = await call('scenario.apply', { token: file });
  const { choices, decisions, money } = await call('choices.get', { visitId: visits[visit] ?? '' });
  expect(money).toEqual({ currency: 'EUR', taxPercent: '20' });
  expect(Object.fromEntries(choices.map(({ name, cost }) => [name, cost.total]))).toEqual(sums);
  // What the owner took, he was told the price of.
  const taken = choices.find(({ chosen }) => chosen);
  const told = decisions.find(({ choiceId }) => choiceId === taken?.id)?.statement.replaceAll(/\s/gu, ' ') ?? '';
  const isPriced = taken !== undefined && taken.costs.length > 0;
  expect(told.includes('It comes to')).toBe(isPriced);
});
