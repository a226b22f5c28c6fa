import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judge } from '../../../../shared-lib/verdict/judge.ts';
import { limitProblem } from '../../../../shared-lib/verdict/limit.ts';
import { worstVerdict } from '../../../../shared-lib/verdict/worst.ts';

/**
 * The rule after ISO 14253-1 and JCGM 106: within when better than the edge by U, the edge of that counting as within;
 * beyond when worse by more than U; between a limit's two edges watch, clear of both by U.
 */
describe('the rule, each edge from both sides', () => {
  it.each([
    // value, U, limit, verdict
    [0.1, 0.1, { max: 0.2 }, 'within'],
    [0.1000001, 0.1, { max: 0.2 }, 'too close to tell'],
    [0.3, 0.1, { max: 0.2 }, 'too close to tell'],
    [0.3000001, 0.1, { max: 0.2 }, 'beyond'],
    [33, 3, { min: 30 }, 'within'],
    [32.99, 3, { min: 30 }, 'too close to tell'],
    [27, 3, { min: 30 }, 'too close to tell'],
    [26.99, 3, { min: 30 }, 'beyond'],
    [5, 0, { max: 5 }, 'within'],
    [5.001, 0, { max: 5 }, 'beyond'],
    // Two edges: steering play in degrees, 14 and 25, ± 1.
    [13, 1, { max: 14, badAbove: 25 }, 'within'],
    [13.01, 1, { max: 14, badAbove: 25 }, 'too close to tell'],
    [15, 1, { max: 14, badAbove: 25 }, 'too close to tell'],
    [15.01, 1, { max: 14, badAbove: 25 }, 'watch'],
    [24, 1, { max: 14, badAbove: 25 }, 'watch'],
    [24.01, 1, { max: 14, badAbove: 25 }, 'too close to tell'],
    [26, 1, { max: 14, badAbove: 25 }, 'too close to tell'],
    [26.01, 1, { max: 14, badAbove: 25 }, 'beyond'],
    // Downwards: margin to boiling, 15 and 5, ± 2.
    [17, 2, { min: 15, badBelow: 5 }, 'within'],
    [12.9, 2, { min: 15, badBelow: 5 }, 'watch'],
    [7, 2, { min: 15, badBelow: 5 }, 'watch'],
    [2.9, 2, { min: 15, badBelow: 5 }, 'beyond'],
    // Both sides: the worse one speaks.
    [6.9, 0.3, { min: 7.5, max: 11 }, 'beyond'],
    [8.2, 0.3, { min: 7.5, max: 11 }, 'within'],
    [11.1, 0.3, { min: 7.5, max: 11 }, 'too close to tell'],
    [88, 1.76, { min: 81, max: 99 }, 'within'],
  ] as const)('%d ± %d against %j is %s', (value, uncertainty, limit, verdict) => {
    expect(judge(value, uncertainty, limit)).toBe(verdict);
  });

  it('binary arithmetic does not move an edge', () => {
    // 0.3 − 0.1 is a little under 0.2 in binary, 0.7 + 0.1 a little under 0.8.
    expect(judge(0.2, 0.1, { max: 0.3 })).toBe('within');
    expect(judge(0.8, 0.1, { max: 0.7 })).toBe('too close to tell');
    expect(judge(-0.2, 0.1, { min: -0.3 })).toBe('within');
  });

  it('what is not known never looks good', () => {
    expect(judge(Number.NaN, 1, { max: 2 })).toBe('recorded only');
    expect(judge(1, null, { max: 2 })).toBe('recorded only');
    expect(judge(1, Number.NaN, { max: 2 })).toBe('recorded only');
    expect(judge(1, -1, { max: 2 })).toBe('recorded only');
    expect(judge(1, 0, null)).toBe('recorded only');
    expect(judge(1, 0, {})).toBe('recorded only');
    expect(judge(1, 0, { min: 3, max: 2 })).toBe('recorded only');
  });
});

const goodness = { beyond: 0, 'too close to tell': 1, watch: 1, within: 2, 'recorded only': -1 } as const;
const size = fc.integer({ min: -2000, max: 2000 }).map((value) => value / 16);
const off = fc.integer({ min: 0, max: 400 }).map((value) => value / 16);
const zone = fc
  .tuple(
    size,
    fc.integer({ min: 0, max: 600 }).map((value) => value / 16),
  )
  .map(([max, more]) => ({ max, badAbove: max + more }));

describe('whatever the numbers', () => {
  it('a worse value never gets a better verdict', () => {
    fc.assert(
      fc.property(size, off, off, zone, (value, more, u, limit) => {
        expect(goodness[judge(value + more, u, limit)]).toBeLessThanOrEqual(goodness[judge(value, u, limit)]);
      }),
    );
  });

  it('more doubt never turns into certainty, either way', () => {
    fc.assert(
      fc.property(size, off, off, size, (value, u, more, max) => {
        const [sure, unsure] = [judge(value, u, { max }), judge(value, u + more, { max })];
        if (unsure !== 'too close to tell') expect(sure).toBe(unsure);
      }),
    );
  });

  it('least and most are mirror images', () => {
    fc.assert(
      fc.property(size, off, zone, (value, u, { max, badAbove }) => {
        expect(judge(-value, u, { min: -max, badBelow: -badAbove })).toBe(judge(value, u, { max, badAbove }));
      }),
    );
  });

  it('the unit makes no difference', () => {
    fc.assert(
      fc.property(
        size,
        off,
        zone,
        fc.constantFrom(2, 25.4, 0.145, 6.894757293168361),
        (value, u, { max, badAbove }, factor) => {
          expect(judge(value * factor, u * factor, { max: max * factor, badAbove: badAbove * factor })).toBe(
            judge(value, u, { max, badAbove }),
          );
        },
      ),
    );
  });
});

describe('a sheet shows its worst line', () => {
  it.each([
    [['within', 'beyond', 'watch'], 'beyond'],
    [['within', 'shown'], 'shown'],
    [['within', 'watch', 'too close to tell'], 'watch'],
    [['within', 'recorded only'], 'within'],
    [['recorded only', 'recorded only'], 'recorded only'],
    [['within', 'void'], 'void'],
    [['not found by this test', 'too close to tell'], 'too close to tell'],
    [[], 'not taken'],
  ] as const)('%j: %s', (lines, verdict) => expect(worstVerdict(lines)).toBe(verdict));
});

describe('a limit that cannot be', () => {
  it.each([
    [{}, 'the limit has no number'],
    [{ min: 3, max: 2 }, 'the least allowed is more than the most allowed'],
    [{ max: 3, badAbove: 2 }, 'the upper edge of the middle zone lies below the most allowed'],
    [{ min: 3, badBelow: 4 }, 'the lower edge of the middle zone lies above the least allowed'],
    [{ max: Number.NaN }, 'an edge of the limit is not a number'],
    [{ min: 2, max: 3 }, null],
  ])('%j: %s', (limit, problem) => expect(limitProblem(limit)).toBe(problem));
});
