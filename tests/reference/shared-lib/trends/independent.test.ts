import fc from 'fast-check';
import jstat from 'jstat';
import { linearRegression } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { bandAt, fitLine, type Point } from '../../../../shared-lib/trends/line.ts';
import { studentT } from '../../../../shared-lib/trends/student-t.ts';
import { hoursToLimit, trendOf } from '../../../../shared-lib/trends/trend.ts';
import { whenReached } from '../../../../shared-lib/trends/when-reached.ts';

const { studentt } = jstat;

const series = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 8000 }), fc.integer({ min: -500, max: 500 })), {
    minLength: 3,
    maxLength: 25,
  })
  .filter((all) => new Set(all.map(([x]) => x)).size > 2)
  .map((all) => all.map(([x, noise]): Point => ({ x, y: 0.02 * x + noise / 50 })));

describe('against libraries of statistics', () => {
  it('t is jStat’s, from 1 to 200 degrees', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), fc.double({ min: 0.55, max: 0.999, noNaN: true }), (df, p) => {
        expect(Math.abs(studentT(p, df) / studentt.inv(p, df) - 1)).toBeLessThan(1e-7);
      }),
    );
  });

  it('the line is simple-statistics’ line', () => {
    fc.assert(
      fc.property(series, (points) => {
        const ours = fitLine(points);
        const theirs = linearRegression(points.map(({ x, y }) => [x, y]));
        expect(ours?.slope).toBeCloseTo(theirs.m, 9);
        expect(ours?.intercept).toBeCloseTo(theirs.b, 6);
      }),
    );
  });

  it('at both ends of the interval the band of the line just touches the limit, by the definition of Fieller’s set', () => {
    fc.assert(
      fc.property(series, fc.integer({ min: 100, max: 400 }), (points, level) => {
        const line = fitLine(points);
        if (line === null || line.residualSd === null || line.residualSd < 1e-9) return;
        const reached = whenReached(line, level);
        const t = studentt.inv(0.975, line.count - 2);
        const differs = Math.abs(line.slope) > t * (line.slopeSd ?? Number.NaN);
        if (reached.state === 'cannot be told') {
          expect(Math.abs(line.slope)).toBeLessThanOrEqual(t * (line.slopeSd ?? Number.NaN) * (1 + 1e-9));
          return;
        }
        expect(differs).toBe(true);
        expect(reached.from).toBeLessThanOrEqual(reached.at);
        expect(reached.to).toBeGreaterThanOrEqual(reached.at);
        for (const end of [reached.from, reached.to]) {
          const share = 1 / line.count + (end - line.meanX) ** 2 / line.squaresX;
          const half = t * (line.residualSd ?? 0) * Math.sqrt(share);
          const middle = line.meanY + line.slope * (end - line.meanX);
          expect(Math.abs(Math.abs(level - middle) - half)).toBeLessThan(1e-6 * Math.max(1, half));
        }
      }),
    );
  });

  it('the interval holds the truth about 95 times in 100', () => {
    let [held, told] = [0, 0];
    let seed = 12345;
    const uniform = () => {
      seed = (seed * 1103515245 + 12345) % 2147483648;
      return (seed + 0.5) / 2147483648;
    };
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    for (let turn = 0; turn < 4000; turn += 1) {
      const line = fitLine([0, 100, 200, 300, 400, 500].map((x) => ({ x, y: 10 + 0.04 * x + normal() })));
      const reached = line === null ? null : whenReached(line, 40);
      if (reached?.state !== 'told') continue;
      told += 1;
      if (reached.from <= 750 && reached.to >= 750) held += 1;
    }
    expect(told).toBeGreaterThan(3900);
    expect(held / told).toBeGreaterThan(0.935);
    expect(held / told).toBeLessThan(0.965);
  });
});

describe('hours to a limit', () => {
  // Worked in the handbook; common practice, no source: slope 0.0438 mm/h, 251 h to 40 mm from the last reading.
  const drift = [
    { hours: 4120, value: 12 },
    { hours: 4300, value: 18 },
    { hours: 4510, value: 29 },
  ];

  it('three readings of drift give the handbook’s slope, and cannot tell when', () => {
    const trend = trendOf(drift);
    expect(trend.perHour).toBeCloseTo(0.0438, 4);
    expect((40 - 29) / (trend.perHour ?? Number.NaN)).toBeCloseTo(251, 0);
    expect(hoursToLimit(trend, { max: 40 })).toEqual({
      state: 'cannot be told',
      why: 'cannot be told from 3 readings',
    });
  });

  it('a long steady series tells, with both ends', () => {
    const trend = trendOf(
      [0, 100, 200, 300, 400, 500].map((hours, i) => ({ hours, value: 10 + 0.04 * hours + (i % 2) * 0.2 })),
    );
    const told = hoursToLimit(trend, { max: 40 });
    expect(told.state).toBe('told');
    if (told.state !== 'told') return;
    expect(told.from).toBeLessThan(told.hours);
    expect(told.to).toBeGreaterThan(told.hours);
    expect(told.hours).toBeGreaterThan(230);
    expect(told.hours).toBeLessThan(270);
  });

  it('never across a change of part', () => {
    const trend = trendOf([...drift, { hours: 4600, value: 2 }, { hours: 4700, value: 3 }], [4550]);
    expect(trend.leftOut).toBe(3);
    expect(trend.perHour).toBeCloseTo(0.01, 12);
    expect(trend.growing).toBeNull();
    expect(hoursToLimit(trend, { max: 40 })).toEqual({
      state: 'cannot be told',
      why: 'cannot be told from 2 readings',
    });
  });

  it.each([
    [[], 'cannot be told from 0 readings'],
    [[{ hours: 10, value: 1 }], 'cannot be told from 1 reading'],
  ])('%j: %s', (readings, why) => {
    expect(hoursToLimit(trendOf(readings), { max: 40 })).toEqual({ state: 'cannot be told', why });
  });

  it('past the limit and moving away are said', () => {
    const falling = [0, 100, 200, 300].map((hours, i) => ({ hours, value: 30 - 0.05 * hours + (i % 2) * 0.01 }));
    expect(hoursToLimit(trendOf(falling), { max: 40 }).state).toBe('moves away');
    expect(hoursToLimit(trendOf(falling), { max: 10 }).state).toBe('past it');
    expect(hoursToLimit(trendOf(falling), { min: 5 }).state).toBe('told');
  });

  it('a flat series grows at no confidence', () => {
    const flat = [0, 100, 200, 300, 400].map((hours, i) => ({ hours, value: 5 + (i % 2) * 0.2 }));
    expect(trendOf(flat).growing).toBe(false);
  });

  it('its band is narrowest at the mean and even on both sides', () => {
    fc.assert(
      fc.property(series, fc.double({ min: 1, max: 3000, noNaN: true }), (points, away) => {
        const line = fitLine(points);
        if (line === null) return;
        const [left, middle, right] = [line.meanX - away, line.meanX, line.meanX + away].map(
          (x) => bandAt(line, x).ofLine ?? 0,
        );
        expect(left).toBeCloseTo(right ?? Number.NaN, 8);
        expect(middle).toBeLessThanOrEqual(left ?? Number.NaN);
      }),
    );
  });
});
