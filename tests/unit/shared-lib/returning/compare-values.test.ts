import { describe, expect, it } from 'vitest';
import { type Comparison, compareValues } from '../../../../shared-lib/returning/compare-values.ts';

const flat = (text: string) => text.replaceAll(/\s/gu, ' ');
const mm = (value: number, uncertainty: number | null = 0.5, unit = 'mm') => ({ value, uncertainty, unit });
const compared = (differs: Partial<Comparison> = {}) => {
  const { change, state } = compareValues({
    what: 'length',
    bad: 'higher',
    was: mm(22),
    now: mm(31),
    hours: 210,
    units: 'metric',
    shown: ({ value, unit }) => `${value} ${unit}`,
    ...differs,
  });
  return [flat(change), state];
};

// The handbook's chapter 8 and its worked example of crack growth, 22 to 31 mm over 210 h: 4.3 mm in 100 h. Common practice.
describe('a number then and now', () => {
  it('changes by its difference, off by the sum of both, and by so much in 100 hours', () => {
    expect(compared()).toEqual(['+9 mm ± 1 mm, 4.3 mm per 100 h', 'worse']);
    expect(compared({ was: mm(22, 0.2), now: mm(31, 1.1) })[0]).toBe('+9 mm ± 1 mm, 4.3 mm per 100 h');
  });

  it('is no change that can be told up to what both can be off by together, and one beyond it', () => {
    expect(compared({ now: mm(23) })).toEqual(['no change that can be told (+1 mm ± 1 mm)', 'no-change-told']);
    expect(compared({ now: mm(21) })[1]).toBe('no-change-told');
    expect(compared({ now: mm(23.01) })[1]).toBe('worse');
    expect(compared({ now: mm(20.99) })[1]).toBe('better');
    // 0.3 − 0.1 and 0.2 are one number, whatever binary arithmetic makes of them.
    expect(compared({ was: mm(0.1, 0.1), now: mm(0.3, 0.1) })[1]).toBe('no-change-told');
  });

  it.each([
    ['higher', 31, 'worse'],
    ['higher', 13, 'better'],
    ['lower', 31, 'better'],
    ['lower', 13, 'worse'],
    ['either', 31, 'changed'],
    ['either', 13, 'changed'],
    ['neither', 31, 'changed'],
  ] as const)('where %s is bad, 22 to %d mm is %s', (bad, value, state) => {
    expect(compared({ bad, now: mm(value) })[1]).toBe(state);
  });

  it('a fall has its sign, in 100 hours too', () => {
    expect(compared({ now: mm(13) })[0]).toBe('−9 mm ± 1 mm, −4.3 mm per 100 h');
  });

  it.each([null, 0, -5])('without hours that passed (%s) there is no rate', (hours) => {
    expect(compared({ hours })[0]).toBe('+9 mm ± 1 mm');
  });

  it('in other units, or off by nobody knows what, is not compared', () => {
    expect(compared({ now: mm(31, 0.5, 'in') })).toEqual([
      'not comparable: written in different units',
      'not-comparable',
    ]);
    for (const unsaid of [{ was: mm(22, null) }, { now: mm(31, null) }])
      expect(compared(unsaid)).toEqual(['not comparable: nothing says what it can be off by', 'not-comparable']);
  });

  it('in a shop of inches and degrees Fahrenheit is said in them, a difference without the offset', () => {
    expect(compared({ units: 'us', was: mm(0), now: mm(25.4) })[0]).toMatch(/^\+1\.00 in ± 0\.04 in/);
    const warmer = { was: mm(80, 2, '°C'), now: mm(90, 2, '°C'), hours: null, bad: 'higher' as const };
    expect(compared({ ...warmer, units: 'us' })[0]).toMatch(/^\+18 °F ± 7 °F/);
  });
});
