import Flatten from '@flatten-js/core';
import { expect, test } from 'vitest';
import type { XY } from '../../../../shared-lib/geometry/spaces.ts';
import { coveredShare } from '../../../../shared-lib/growing/coverage.ts';
import { seeded } from '../tracing/drawn-surface.ts';
import { wavyRing } from './drawn-patch.ts';

const square = (from: number, to: number): XY[] => [
  { x: from, y: from },
  { x: to, y: from },
  { x: to, y: to },
  { x: from, y: to },
];

test('a quarter covered is a quarter; what overlaps counts once; what lies beyond the zone does not count', () => {
  expect(coveredShare([square(0, 5)], square(0, 10))).toBeCloseTo(0.25, 4);
  expect(coveredShare([square(0, 5), square(0, 5)], square(0, 10))).toBeCloseTo(0.25, 4);
  expect(coveredShare([square(-5, 5)], square(0, 10))).toBeCloseTo(0.25, 4);
  expect(coveredShare([square(20, 30)], square(0, 10))).toBe(0);
  expect(
    coveredShare(
      [square(0, 5)],
      [
        { x: 0, y: 0 },
        { x: 5, y: 0 },
      ],
    ),
  ).toBeNull();
});

test('wavy outlines in a wavy zone cover what their intersection has (flatten-js, exact to a ten-thousandth)', () => {
  const random = seeded(9);
  const polygon = (ring: readonly XY[]) => {
    const made = new Flatten.Polygon(ring.map(({ x, y }) => Flatten.point(x, y)));
    if (!made.isValid()) throw new Error('the ring crosses itself');
    // Boolean operations want both rings turned alike.
    if ([...made.faces][0]?.orientation() !== Flatten.ORIENTATION.CCW) made.reverse();
    return made;
  };
  for (let round = 0; round < 6; round += 1) {
    const zone = wavyRing(random, { x: 200, y: 180 }, 100);
    const patch = wavyRing(random, { x: 200 + 60 * random(), y: 180 }, 70);
    const both = Flatten.BooleanOperations.intersect(polygon(patch), polygon(zone));
    const theirs = Math.abs(both.area()) / Math.abs(polygon(zone).area());
    expect(Math.abs((coveredShare([patch], zone) ?? 0) - theirs), `round ${round}`).toBeLessThan(1e-4);
  }
});
