import { describe, expect, it } from 'vitest';
import type { Reading } from '../../../../shared-lib/model/reading.ts';
import { compareReadings } from '../../../../shared-lib/returning/compare-readings.ts';
import type { VisitThen } from '../../../../shared-lib/returning/visit-then.ts';
import { plainLayout } from '../../../support/ranking/a-finding.ts';

const reading = (id: string, value: string, differs: Partial<Reading> = {}): Reading => ({
  id,
  visitId: 'v',
  sheet: 'MS-27',
  sheetVersion: 1,
  at: 'ENG/LUB',
  inputs: {},
  conditions: {},
  remark: '',
  notTakenBecause: null,
  instrumentId: null,
  takenAtMs: 0,
  results: [
    {
      of: 'pressure',
      value,
      seen: null,
      limit: { min: '200 kPa', source: 'maker' },
      uncertainty: '5 kPa',
      uncertaintyFrom: null,
      verdict: 'within',
    },
  ],
  ...differs,
});

const visit = (id: string, trueHours: number | null, readings: Reading[], conditions: Record<string, string> = {}) =>
  ({
    id,
    date: '2026-01-01',
    trueHours,
    conditions,
    input: { readings, layout: plainLayout, units: 'metric' },
  }) as unknown as VisitThen;

const compared = (then: VisitThen[], now: VisitThen) => compareReadings(now, then, []);
const changeOf = (before: Record<string, string>, after: Record<string, string>) =>
  compared(
    [visit('then', 1000, [reading('a', '300 kPa')], before)],
    visit('now', 1200, [reading('b', '260 kPa')], after),
  )[0];

// The handbook's chapter 8; common practice, no source.
describe('a reading beside the last one of its sheet at its place', () => {
  it('is worse where its limit lies on the side it moved to', () => {
    const [line] = compared(
      [visit('then', 1000, [reading('a', '300 kPa')])],
      visit('now', 1200, [reading('b', '260 kPa')]),
    );
    expect(line).toMatchObject({ state: 'worse', readingId: 'b' });
    expect(line?.change.replaceAll(/\s/gu, ' ')).toBe('−40 kPa ± 10 kPa, −20 kPa per 100 h');
  });

  it('is the last of several, over a visit that did not take it', () => {
    const then = [
      visit('one', 800, [reading('old', '500 kPa')]),
      visit('two', 1000, [reading('a', '290 kPa'), reading('last', '300 kPa')]),
      visit('three', 1100, [reading('untaken', '100 kPa', { notTakenBecause: 'no gauge' })]),
    ];
    expect(compared(then, visit('now', 1200, [reading('b', '260 kPa')]))[0]?.change).toMatch(/40\skPa/u);
  });

  it.each([
    ['another sheet', { sheet: 'MS-25' }],
    ['another place', { at: 'ENG/HD.1' }],
    ['one that was not taken', { notTakenBecause: 'no gauge' }],
  ])('never stands beside %s', (_, differs) => {
    expect(
      compared(
        [visit('then', 1000, [reading('a', '300 kPa', differs)])],
        visit('now', 1200, [reading('b', '260 kPa')]),
      ),
    ).toEqual([]);
  });

  it.each([
    ['the same', { oilTemperature: '80 °C' }, { oilTemperature: '80 °C' }],
    ['10 °C apart', { oilTemperature: '80 °C' }, { oilTemperature: '90 °C' }],
    ['18 °F apart in two units', { oilTemperature: '80 °C' }, { oilTemperature: '194 °F' }],
    ['18 °F apart', { oilTemperature: '176 °F' }, { oilTemperature: '194 °F' }],
    ['one altitude in two units', { altitude: '1000 m' }, { altitude: '3281 ft' }],
    ['said only once', {}, { oilTemperature: '40 °C' }],
    ['left empty', { oilTemperature: ' ' }, { oilTemperature: '40 °C' }],
    ['a number beside a word', { oilTemperature: 'warm' }, { oilTemperature: '40 °C' }],
    ['of a kind that does not matter', { minutes: '10 min' }, { minutes: '20 min' }],
  ])('is compared where the conditions are %s', (_, before, after) => {
    expect(changeOf(before, after)?.state).toBe('worse');
  });

  it.each([
    ['11 °C apart', { oilTemperature: '80 °C' }, { oilTemperature: '91 °C' }],
    ['11 °C colder', { oilTemperature: '80 °C' }, { oilTemperature: '69 °C' }],
    ['far apart in two units', { oilTemperature: '80 °C' }, { oilTemperature: '80 °F' }],
    ['other words', { engine: 'idle' }, { engine: 'rated' }],
    ['another load', { load: '50 %' }, { load: '60 %' }],
    ['19 °F apart', { oilTemperature: '176 °F' }, { oilTemperature: '195 °F' }],
    ['another altitude in another unit', { altitude: '1000 m' }, { altitude: '4000 ft' }],
    ['another altitude', { altitude: '0 m' }, { altitude: '1500 m' }],
  ])('is not compared where the conditions are %s', (_, before, after) => {
    expect(changeOf(before, after)).toMatchObject({
      state: 'not-comparable',
      change: expect.stringMatching(/then, .* now$/),
    });
  });
});
