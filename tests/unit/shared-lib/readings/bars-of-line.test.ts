import { describe, expect, it } from 'vitest';
import type { ResultLine } from '../../../../shared-lib/model/reading.ts';
import { barsOfLine } from '../../../../shared-lib/readings/bars-of-line.ts';
import { barLimitX, barWidth, drawLimitBar } from '../../../../shared-lib/readings/limit-bar-drawing.ts';

const line = (
  value: string,
  limit: Omit<NonNullable<ResultLine['limit']>, 'source'>,
  uncertainty = '2 kPa',
): ResultLine => ({
  of: 'opens',
  value,
  seen: null,
  limit: { ...limit, source: 'maker' },
  uncertainty,
  uncertaintyFrom: null,
  verdict: 'beyond',
});

describe('the bars of a written result', () => {
  it('are on one scale whatever unit the limit was typed in: 15 psi are 103.42 kPa (NIST SP 811)', () => {
    const [bar] = barsOfLine(line('110 kPa', { max: '15 psi' }), false);
    expect(bar?.value).toBeCloseTo(110 / 103.421, 4);
  });

  it('are one for each cylinder', () => {
    expect(
      barsOfLine(line('24/23.8/16.5 bar', { min: '20 bar' }, '1 bar'), false).map(({ value }) => value > 1),
    ).toEqual([false, false, true]);
  });

  it('are none where the limit measures something else, or nothing was measured', () => {
    expect(barsOfLine(line('110 kPa', { max: '3 mm' }), false)).toEqual([]);
    expect(barsOfLine({ ...line('', { max: '3 mm' }), value: null }, false)).toEqual([]);
  });
});

describe('a bar as drawn', () => {
  const bar = (value: number) => ({ value, bracket: [value - 0.1, value + 0.1] as const, watchFrom: null });

  it('crosses the limit when it is beyond, and shows the limit through it', () => {
    const beyond = drawLimitBar(bar(1.2), 'beyond', false);
    expect(beyond.value.width).toBeGreaterThan(barLimitX);
    expect(beyond.strokes.find(({ pen }) => pen === 'gap')?.segments[0]?.[0]).toBe(barLimitX);
    const within = drawLimitBar(bar(0.8), 'within', false);
    expect(within.value.width).toBeLessThan(barLimitX);
    expect(within.strokes.map(({ pen }) => pen)).not.toContain('gap');
  });

  it('is cut where there is no more room, and says so with two slashes', () => {
    const cut = drawLimitBar(bar(9), 'beyond', false);
    expect(cut.value.width).toBeLessThan(barWidth);
    expect(cut.strokes.find(({ pen }) => pen === 'cut')?.segments).toHaveLength(2);
  });
});
