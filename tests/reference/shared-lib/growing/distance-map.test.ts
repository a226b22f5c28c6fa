import { expect, test } from 'vitest';
import { distanceMap } from '../../../../shared-lib/growing/distance-map.ts';
import { cvReady } from '../calibration/opencv.ts';
import { seeded } from '../tracing/drawn-surface.ts';

test('distances to the nearest pixel that is set are those of OpenCV (precise mask)', async () => {
  const { cv } = await cvReady();
  const random = seeded(4);
  const [width, height] = [97, 61];
  for (const share of [0.002, 0.05, 0.6]) {
    const isSet = Uint8Array.from({ length: width * height }, () => (random() < share ? 1 : 0));
    isSet[width * 30 + 40] = 1;
    const free = cv.matFromArray(
      height,
      width,
      cv.CV_8UC1,
      Array.from(isSet, (set) => (set ? 0 : 255)),
    );
    const theirs = new cv.Mat();
    cv.distanceTransform(free, theirs, cv.DIST_L2, cv.DIST_MASK_PRECISE);
    const ours = distanceMap(isSet, width, height);
    const most = Math.max(...ours.map((own, at) => Math.abs(own - (theirs.data32F[at] ?? Number.NaN))));
    free.delete();
    theirs.delete();
    expect(most, `share ${share}`).toBeLessThan(0.001);
  }
}, 60_000);

test('where nothing is set nothing is near', () => {
  expect([...distanceMap(new Uint8Array(6), 3, 2)]).toEqual(new Array(6).fill(Number.POSITIVE_INFINITY));
});
