import { describe, expect, it } from 'vitest';
import { bandAt, fitLine, fitThroughOrigin, type Point } from '../../../../shared-lib/trends/line.ts';
import { studentT } from '../../../../shared-lib/trends/student-t.ts';

/** NIST StRD, linear regression, data set Norris (36 points; ozone monitors), with its certified values. */
const norris: readonly Point[] = pairs(
  [
    0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777, 558.2, 0.4, 0.6, 775.5, 666.9, 338, 447.5, 11.6,
    556, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999, 779, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5,
  ],
  [
    0.1, 338.8, 118.1, 888, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8,
    557.7, 228.3, 998, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2,
  ],
);
const noInt1: readonly Point[] = pairs(
  [60, 61, 62, 63, 64, 65, 66, 67, 68, 69, 70],
  [130, 131, 132, 133, 134, 135, 136, 137, 138, 139, 140],
);
/** From memory. */
const noInt2: readonly Point[] = pairs([4, 5, 6], [3, 4, 4]);

function pairs(xs: readonly number[], ys: readonly number[]): readonly Point[] {
  return xs.map((x, index) => ({ x, y: ys[index] ?? Number.NaN }));
}

/** At least nine digits of a certified value. */
function nineDigits(actual: number | null | undefined, certified: number): void {
  expect(Math.abs((actual ?? Number.NaN) / certified - 1)).toBeLessThan(5e-10);
}

describe('NIST StRD certified values, to nine digits and more', () => {
  const line = fitLine(norris);

  it('Norris: slope and intercept with their standard deviations', () => {
    nineDigits(line?.slope, 1.00211681802045);
    nineDigits(line?.intercept, -0.262323073774029);
    nineDigits(line?.interceptSd, 0.232818234301152);
    // Certified; from memory.
    nineDigits(line?.slopeSd, 0.429796848199937e-3);
  });

  it('Norris: residuals and F', () => {
    nineDigits(line?.residualSd, 0.884796396144373);
    nineDigits(line?.residualSquares, 26.6173985294224);
    if (line === null) throw new Error('no line');
    nineDigits((line.slope ** 2 * line.squaresX) / (line.residualSd ?? Number.NaN) ** 2, 5436385.54079785);
  });

  it('Norris: half-widths of the band at 500, recomputed with statistics libraries', () => {
    const band = line === null ? null : bandAt(line, 500);
    expect(Math.abs((band?.ofLine ?? Number.NaN) - 0.307889)).toBeLessThanOrEqual(2e-6);
    expect(Math.abs((band?.ofReading ?? Number.NaN) - 1.824292)).toBeLessThanOrEqual(2e-6);
  });

  it('NoInt1: through the origin', () => {
    const origin = fitThroughOrigin(noInt1);
    nineDigits(origin?.slope, 2.07438016528926);
    nineDigits(origin?.residualSd, 3.56753034006338);
    // Certified; from memory.
    nineDigits(origin?.slopeSd, 0.165289256198347e-1);
  });

  it('NoInt2: through the origin, from memory', () => {
    const origin = fitThroughOrigin(noInt2);
    nineDigits(origin?.slope, 0.727272727272727);
    nineDigits(origin?.slopeSd, 0.420827318078432e-1);
    nineDigits(origin?.residualSd, 0.369274472937998);
  });

  it('a cooling curve: slope of 95 % half-width 0.08593', () => {
    const small = fitLine(pairs([0, 1, 2, 3, 4, 5], [100, 98.9, 98.1, 96.8, 96.1, 95]));
    expect(Math.abs(studentT(0.975, 4) * (small?.slopeSd ?? Number.NaN) - 0.08593)).toBeLessThanOrEqual(2e-5);
  });
});

describe('Student’s t', () => {
  // NIST/SEMATECH e-Handbook 1.3.6.7.2, as printed; the last row by scipy and jStat.
  it.each([
    [0.975, 1, 12.706, 0.0006],
    [0.975, 4, 2.776, 0.0006],
    [0.975, 30, 2.042, 0.0006],
    [0.95, 5, 2.015, 0.0006],
    [0.995, 10, 3.169, 0.0006],
    [0.975, 34, 2.032245, 2e-6],
  ])('p %d with %d degrees is %d', (p, df, expected, tolerance) => {
    expect(Math.abs(studentT(p, df) - expected)).toBeLessThanOrEqual(tolerance);
  });
});
