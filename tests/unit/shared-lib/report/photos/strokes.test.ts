import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { PrintedPoint } from '../../../../../shared-lib/report/model.ts';
import { beside, simplify } from '../../../../../shared-lib/report/photos/beside.ts';
import { offsetMm, strokesFor } from '../../../../../shared-lib/report/photos/strokes.ts';

const plain = { scale: 1, dashed: false };

function distance([x, y]: PrintedPoint, [ax, ay]: PrintedPoint, [bx, by]: PrintedPoint): number {
  const length = Math.hypot(bx - ax, by - ay);
  return Math.abs((bx - ax) * (ay - y) - (ax - x) * (by - ay)) / length;
}

test('a line stands beside what it marks, above it on paper, by the drawn offset', () => {
  const [line] = strokesFor(
    'line',
    [
      [10, 20],
      [40, 20],
    ],
    plain,
  );
  expect(line?.points).toEqual([
    [10, 20 - offsetMm],
    [40, 20 - offsetMm],
  ]);
});

test('drawn either way, the line stands on the same side', () => {
  const there = beside(
    [
      [10, 20],
      [40, 25],
    ],
    3,
  ).line;
  const back = beside(
    [
      [40, 25],
      [10, 20],
    ],
    3,
  ).line.toReversed();
  for (const [index, [x, y]] of there.entries()) {
    expect(x).toBeCloseTo(back[index]?.[0] ?? Number.NaN, 9);
    expect(y).toBeCloseTo(back[index]?.[1] ?? Number.NaN, 9);
  }
});

test('its ticks run from beyond the line to just past the true ends', () => {
  const [, start] = strokesFor(
    'path',
    [
      [10, 20],
      [25, 20],
      [40, 20],
    ],
    plain,
  );
  expect(start?.points[0]).toEqual([10, 20 - 1.45 * offsetMm]);
  expect(start?.points[1]?.[1]).toBeGreaterThan(20);
  expect(start?.points[1]?.[1]).toBeLessThan(20 + offsetMm / 4);
});

test('an area is a closed outline of its own points; a point is a ring round it', () => {
  const square: PrintedPoint[] = [
    [0, 0],
    [10, 0],
    [10, 10],
    [0, 10],
  ];
  expect(strokesFor('area', square, plain)).toEqual([{ points: square, closed: true, dashed: false }]);
  const [ring] = strokesFor('point', [[5, 5]], plain);
  expect(ring?.closed).toBe(true);
  const radii = ring?.points.map(([x, y]) => Math.hypot(x - 5, y - 5)) ?? [];
  expect(Math.max(...radii) - Math.min(...radii)).toBeLessThan(1e-9);
});

test('a suspected mark is dashed, its ticks and heads stay whole', () => {
  const [line, ...rest] = strokesFor(
    'span',
    [
      [0, 0],
      [30, 0],
    ],
    { scale: 1, dashed: true },
  );
  expect(line?.dashed).toBe(true);
  expect(rest.map(({ dashed }) => dashed)).toEqual([false, false, false, false]);
});

test('an arrow points at what it marks', () => {
  const [shaft, head] = strokesFor(
    'arrow',
    [
      [0, 0],
      [20, 0],
    ],
    plain,
  );
  expect(shaft?.points.at(-1)).toEqual([20, 0]);
  expect(head?.points[1]).toEqual([20, 0]);
});

const point = fc.tuple(fc.double({ min: 0, max: 180, noNaN: true }), fc.double({ min: 0, max: 120, noNaN: true }));

test('whatever is drawn, no stroke has a coordinate that is not a number', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('point', 'line', 'path', 'area', 'arrow', 'span' as const),
      fc.array(point, { minLength: 1, maxLength: 60 }),
      (shape, points) => {
        const drawn = strokesFor(shape, points, plain).flatMap(({ points: of }) => of.flat());
        return drawn.length > 0 && drawn.every(Number.isFinite);
      },
    ),
  );
});

// Ramer-Douglas-Peucker's own promise: no left-out point is farther than the tolerance from the kept line.
test('simplifying keeps within its tolerance and keeps the ends', () => {
  fc.assert(
    fc.property(fc.array(point, { minLength: 3, maxLength: 80 }), (points) => {
      const kept = simplify(points, 2);
      expect(kept[0]).toEqual(points[0]);
      expect(kept.at(-1)).toEqual(points.at(-1));
      let at = 0;
      for (const each of points) {
        if (kept[at + 1] !== undefined && each === kept[at + 1]) at += 1;
        const [from, to] = [kept[at], kept[at + 1]];
        if (from && to && (from[0] !== to[0] || from[1] !== to[1]))
          expect(distance(each, from, to)).toBeLessThan(2.0001);
      }
    }),
  );
});
