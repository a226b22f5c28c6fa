import { expect, it } from 'vitest';
import type { PointPair } from '../../../../shared-lib/calibration/homography.ts';
import { registerByHand } from '../../../../shared-lib/comparison/register.ts';
import { spreadPairs } from '../../../../shared-lib/comparison/spread-pairs.ts';

const shifted = (x: number, y: number): PointPair => ({ from: { x, y }, to: { x: x + 40, y: y - 25 } });

it('of a hundred spots a few that hold the whole of them, none on top of another', () => {
  const pairs = Array.from({ length: 100 }, (_, k) => shifted(100 + (k % 10) * 140, 80 + Math.floor(k / 10) * 95));
  const few = spreadPairs(registerByHand(pairs));
  expect(few.length).toBeGreaterThanOrEqual(8);
  expect(few.length).toBeLessThanOrEqual(12);
  const xs = few.map(({ to }) => to.x);
  expect(Math.max(...xs) - Math.min(...xs)).toBeGreaterThan(0.7 * 9 * 140);
  for (const [i, a] of few.entries())
    for (const b of few.slice(i + 1)) expect(Math.hypot(a.to.x - b.to.x, a.to.y - b.to.y)).toBeGreaterThan(100);
});

it('spots crowded into one corner still give as many as a perspective needs', () => {
  const crowd = Array.from({ length: 20 }, (_, k) => shifted(500 + (k % 5) * 3, 500 + Math.floor(k / 5) * 3));
  const few = spreadPairs(registerByHand([...crowd, shifted(1500, 900)]));
  expect(few.length).toBeGreaterThanOrEqual(4);
});
