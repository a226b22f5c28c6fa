import Flatten from '@flatten-js/core';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { offsetCurve } from '../../../../shared-lib/geometry/offset-curve.ts';
import type { XY } from '../../../../shared-lib/geometry/spaces.ts';

/** Distance by an independent library, @flatten-js/core 1.6.15. */
function awayFrom(line: readonly XY[], at: XY): number {
  const spot = new Flatten.Point(at.x, at.y);
  const each = line.slice(1).map((to, index) => {
    const from = line[index] ?? to;
    return spot.distanceTo(new Flatten.Segment(new Flatten.Point(from.x, from.y), new Flatten.Point(to.x, to.y)))[0];
  });
  return Math.min(...each);
}

/** A line that always goes to the right, as a crack is drawn: bends of up to a right angle, steps of 2 to 60 px. */
const crack = fc
  .array(fc.record({ step: fc.integer({ min: 2, max: 60 }), slope: fc.double({ min: -0.7, max: 0.7, noNaN: true }) }), {
    minLength: 1,
    maxLength: 30,
  })
  .map((steps) => {
    let at = { x: 0, y: 0 };
    return [at, ...steps.map(({ step, slope }) => (at = { x: at.x + step, y: at.y + step * slope }))];
  });

describe('a line beside a crack', () => {
  test('lies above a crack drawn to the right, below one drawn to the left', () => {
    expect(
      offsetCurve(
        [
          { x: 0, y: 0 },
          { x: 50, y: 0 },
        ],
        11,
      ),
    ).toEqual([
      { x: 0, y: -11 },
      { x: 50, y: -11 },
    ]);
    const back = offsetCurve(
      [
        { x: 50, y: 0 },
        { x: 0, y: 0 },
      ],
      11,
    );
    expect(back.map(({ y }) => y)).toEqual([11, 11]);
  });

  test('meets an inner corner in one point', () => {
    // By hand: walking right, then up; the left side is the inner one, so the corner is at (100 - 10, -10).
    const bend = offsetCurve(
      [
        { x: 0, y: 0 },
        { x: 100, y: 0 },
        { x: 100, y: -100 },
      ],
      10,
    );
    expect(bend).toHaveLength(3);
    expect(bend[1]?.x).toBeCloseTo(90, 9);
    expect(bend[1]?.y).toBeCloseTo(-10, 9);
  });

  test('rounds an outer corner at the offset', () => {
    const corner = { x: 100, y: 0 };
    const bend = offsetCurve([{ x: 0, y: 0 }, corner, { x: 100, y: 100 }], 10);
    expect(bend.length).toBeGreaterThan(4);
    for (const { x, y } of bend.slice(1, -1)) expect(Math.hypot(x - corner.x, y - corner.y)).toBeCloseTo(10, 9);
  });

  test('never comes nearer than 0.98 of the offset, and every point of it belongs to the line', () => {
    fc.assert(
      fc.property(crack, (line) => {
        const beside = offsetCurve(line, 11);
        for (const [index, at] of beside.entries()) {
          const away = awayFrom(line, at);
          // The ends stay square to their own leg, even where a bend leans over them.
          const isEnd = index === 0 || index === beside.length - 1;
          if (!isEnd) expect(away).toBeGreaterThanOrEqual(11 * 0.98 - 1e-6);
          expect(away).toBeLessThanOrEqual(11 / Math.cos(Math.PI / 8) + 1e-6);
        }
      }),
    );
  });

  test('keeps both ends where they are square to the crack, even in a tight coil', () => {
    const coil = Array.from({ length: 60 }, (_, step) => ({ x: 6 * Math.cos(step / 3), y: 6 * Math.sin(step / 3) }));
    const beside = offsetCurve(coil, 11);
    const first = beside[0];
    expect(first && Math.hypot(first.x - 6, first.y)).toBeCloseTo(11, 6);
    expect(beside.length).toBeGreaterThanOrEqual(2);
  });

  test('a repeated point changes nothing', () => {
    const line = [
      { x: 0, y: 0 },
      { x: 10, y: 4 },
      { x: 30, y: 0 },
    ];
    expect(
      offsetCurve(
        line.flatMap((at) => [at, at]),
        11,
      ),
    ).toEqual(offsetCurve(line, 11));
  });
});
