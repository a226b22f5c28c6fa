import jStat from 'jstat';
import { describe, expect, test } from 'vitest';
import { expandedUncertainty } from '../../../../shared-lib/calibration/expand.ts';

const parts = (normalU: number, half: number, ...errors: number[]) => ({
  normalU,
  half,
  oneOf: errors.map((error) => ({ error, weight: 1 })),
});
const held = 0.9545;

describe('half the width that holds 95.45 %', () => {
  // Source: GUM G.1.3 for the normal one, 4.3.7 for limits; the two-sided ones follow from them by symmetry.
  test.each([
    ['all normal: k = 2', parts(0.3, 0), 0.6],
    ['limits alone: their share of 95.45 %', parts(0, 2), held * 2],
    ['limits beside something that is as good as nothing', parts(1e-6, 2), held * 2],
    ['narrow limits beside a normal part: k = 2 of both', parts(1, 0.2), 2 * Math.hypot(1, 0.2 / Math.sqrt(3))],
    ['one side or the other, nothing else: no more than that', parts(0, 0, 3, -3), 3],
    ['one side or the other, far outweighing the rest: one tail is left', parts(0.1, 0, 3, -3), 3 + 0.1 * 1.69],
    ['one side or the other, far outweighed: k = 2 of both', parts(1, 0, 0.05, -0.05), 2 * Math.hypot(1, 0.05)],
  ])('%s', (_, given, expected) => expect(expandedUncertainty(given)).toBeCloseTo(expected, 3));

  test('what is off to one side only moves the whole interval', () => {
    // The far tail counts for nothing: 95.45 % of a normal quantity lies below 1.690 of it.
    expect(expandedUncertainty(parts(0.1, 0, 5))).toBeCloseTo(5 + 0.1 * jStat.normal.inv(held, 0, 1), 4);
  });

  test('the likelier of two counts for more', () => {
    const oneOf = [
      { error: 0, weight: 99 },
      { error: 10, weight: 1 },
    ];
    // 99 of 100 around 0, so those have to hold 95.45 / 99 themselves.
    const within = jStat.normal.inv(0.5 + held / 0.99 / 2, 0, 1);
    expect(expandedUncertainty({ normalU: 0.1, half: 0, oneOf })).toBeCloseTo(0.1 * within, 4);
  });
});

test('limits and a normal part of like size: as an independent sum over both gives', () => {
  const [sigma, half] = [0.5, 1.2];
  // By jStat, summed over the limits.
  const inside = (w: number): number => {
    let sum = 0;
    for (let k = 0; k < 2000; k += 1) {
      const at = half * ((2 * (k + 0.5)) / 2000 - 1);
      sum += jStat.normal.cdf(w - at, 0, sigma) - jStat.normal.cdf(-w - at, 0, sigma);
    }
    return sum / 2000;
  };
  expect(inside(expandedUncertainty(parts(sigma, half)))).toBeCloseTo(held, 4);
});

test('a part that is no number makes none', () => {
  for (const bad of [parts(Number.NaN, 0), parts(1, Number.POSITIVE_INFINITY), parts(1, 0, Number.NaN)])
    expect(expandedUncertainty(bad)).toBeNaN();
});
