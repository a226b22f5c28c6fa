import { describe, expect, test } from 'vitest';
import type { XY } from '../../../../shared-lib/geometry/spaces.ts';
import { hasCracks, readCracks } from '../../../bench/tracing/crack-set.ts';
import { traceCase } from '../../../bench/tracing/evaluate.ts';
import { lineDistance } from '../../../bench/tracing/line-distance.ts';

const minutes = 5 * 60_000;

/** 60 photographs with a true line; where they are absent this says so instead of passing. */
describe.skipIf(!hasCracks)('photographed cracks (skipped where ../shared/data/cracks is absent)', () => {
  type Crack = Awaited<ReturnType<typeof readCracks>>[number];
  const reading = hasCracks ? readCracks() : Promise.resolve([]);
  const traceAll = async (clicksOf: (one: Crack) => readonly XY[]) =>
    (await reading).map((one) => {
      const { trace: found } = traceCase(one.grey, clicksOf(one));
      return { one, found, ...lineDistance(one.truth, found.centre) };
    });
  const results = { exact: traceAll(({ exact }) => exact), rough: traceAll(({ rough }) => rough) };

  // Source: the reference tracers beside the photographs; the best of them keeps 90.0 % within 2 px, 2.31 px in the mean.
  test.each([
    ['exact', 2.31],
    ['rough', 2.35],
  ] as const)(
    'with %s clicks 95 of 100 lie within 2 px, and what is missed is doubted',
    async (kind, bestMeanPx) => {
      const traced = await results[kind];
      const misses = traced.filter(({ meanPx }) => meanPx > 2);
      expect(1 - misses.length / traced.length).toBeGreaterThanOrEqual(0.95);
      expect(traced.reduce((sum, { meanPx }) => sum + meanPx, 0) / traced.length).toBeLessThan(bestMeanPx);
      expect(misses.filter(({ found }) => !found.unsure).map(({ one }) => one.id)).toEqual([]);
      // Doubt that is everywhere says nothing.
      const hits = traced.filter(({ meanPx }) => meanPx <= 2);
      expect(hits.filter(({ found }) => found.unsure).length / hits.length).toBeLessThan(0.22);
    },
    minutes,
  );

  test(
    'one corrective click, on the point of the truth farthest off, mends every miss',
    async () => {
      for (const { one, meanPx, farthest } of await results.exact) {
        if (meanPx <= 2) continue;
        const [start, end] = one.exact;
        const { trace: mended } = traceCase(one.grey, [start, farthest, end]);
        expect(lineDistance(one.truth, mended.centre).meanPx, one.id).toBeLessThanOrEqual(2);
      }
    },
    minutes,
  );
});
