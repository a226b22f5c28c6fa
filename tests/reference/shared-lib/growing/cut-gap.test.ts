import { polygonHull } from 'd3-polygon';
import { expect, test } from 'vitest';
import { polygonArea } from '../../../../shared-lib/geometry/plane.ts';
import { cutGap } from '../../../../shared-lib/growing/cut-gap.ts';
import { rollDisc } from '../../../../shared-lib/growing/rolling-disc.ts';
import { seeded } from '../tracing/drawn-surface.ts';

const size = { width: 240, height: 240 };
const radius = 90;

/** Points strewn at random in a circle, as pixels by index. */
function forest(seed: number, count: number): number[] {
  const random = seeded(seed);
  const points = new Set<number>();
  while (points.size < count) {
    const [x, y] = [random() * size.width, random() * size.height];
    if (Math.hypot(x - 119.5, y - 119.5) < radius) points.add(Math.round(y) * size.width + Math.round(x));
  }
  return [...points];
}

test('random points in a circle: disc and gap give its area back, as the estimate of Ripley and Rasson does', () => {
  const truth = Math.PI * radius ** 2;
  const [ours, bare, theirs]: number[][] = [[], [], []];
  for (let seed = 1; seed <= 12; seed += 1) {
    const points = forest(seed, 250);
    const isSet = new Uint8Array(size.width * size.height);
    for (const at of points) isSet[at] = 1;
    const reach = 16;
    const { within } = rollDisc(isSet, size, reach, points[0] ?? 0);
    const gap = cutGap(points, within, size, reach)?.mean ?? 0;
    bare?.push(within.filter((own) => own > 0).length / truth);
    ours?.push(within.filter((own) => own > -gap).length / truth);
    // Their unbiased estimate for a convex domain: the hull's area over 1 - corners / points.
    const hull = polygonHull(points.map((at) => [at % size.width, Math.floor(at / size.width)])) ?? [];
    const area = polygonArea(hull.map(([x, y]) => ({ x, y })));
    theirs?.push(area / (1 - hull.length / points.length) / truth);
  }
  const mean = (values: readonly number[] = []): number =>
    values.reduce((sum, value) => sum + value, 0) / values.length;
  expect(mean(bare)).toBeLessThan(0.92);
  expect(Math.abs(mean(theirs) - 1)).toBeLessThan(0.03);
  expect(Math.abs(mean(ours) - mean(theirs))).toBeLessThan(0.03);
}, 60_000);

test('a patch too small to cut has no gap', () => {
  const points = [size.width * 100 + 100, size.width * 103 + 104];
  const isSet = new Uint8Array(size.width * size.height);
  for (const at of points) isSet[at] = 1;
  expect(cutGap(points, rollDisc(isSet, size, 10, points[0] ?? 0).within, size, 10)).toBeNull();
});
