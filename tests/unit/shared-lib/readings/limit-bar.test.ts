import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limitBar } from '../../../../shared-lib/readings/limit-bar.ts';
import { judge } from '../../../../shared-lib/verdict/judge.ts';

describe('a value on the scale of its limit', () => {
  it('stands as far along as it uses up of an upper limit', () => {
    expect(limitBar(0.34, 0.01, { max: 0.3 })?.value).toBeCloseTo(0.34 / 0.3, 12);
    expect(limitBar(0.02, 0.01, { max: 0.05 })?.bracket?.map((each) => Number(each.toFixed(9)))).toEqual([0.2, 0.6]);
  });

  it('crosses the line when it falls below a lower limit', () => {
    expect(limitBar(24, 2, { min: 40 })?.value).toBeCloseTo(1.4, 12);
    expect(limitBar(50, 2, { min: 40 })?.value).toBeLessThan(1);
  });

  it('is drawn on the nearer side of a limit with two', () => {
    expect(limitBar(88, 1, { min: 81, max: 99 })?.value).toBeCloseTo(2 / 9, 12);
    expect(limitBar(80, 1, { min: 81, max: 99 })?.value).toBeGreaterThan(1);
  });

  it('has the line where beyond begins, and marks where the middle zone does', () => {
    const bar = limitBar(18.3, 1, { max: 14, badAbove: 25 });
    expect(bar?.value).toBeLessThan(1);
    expect(bar?.watchFrom).toBeCloseTo(14 / 25, 12);
  });

  it('leaves room for what is good beside a wide middle zone', () => {
    const bar = limitBar(12.6, 2, { min: 15, badBelow: 5 });
    expect(bar?.watchFrom).toBeCloseTo(0.5, 12);
    expect(bar?.value).toBeCloseTo(0.62, 12);
  });

  it('is not drawn without a limit, or without a number', () => {
    expect(limitBar(1, 0.1, null)).toBeNull();
    expect(limitBar(Number.NaN, 0.1, { max: 1 })).toBeNull();
  });

  it('is past the line exactly when the verdict could be beyond', () => {
    const number = fc.double({ min: -500, max: 500, noNaN: true });
    fc.assert(
      fc.property(
        number,
        number,
        fc.double({ min: 1e-3, max: 5, noNaN: true }),
        fc.boolean(),
        (value, edge, off, upper) => {
          const limit = upper ? { max: edge } : { min: edge };
          const bar = limitBar(value, off, limit);
          const verdict = judge(value, off, limit);
          if (verdict === 'beyond') expect(bar?.value).toBeGreaterThan(1);
          if (verdict === 'within') expect(bar?.value).toBeLessThanOrEqual(1);
        },
      ),
    );
  });
});
