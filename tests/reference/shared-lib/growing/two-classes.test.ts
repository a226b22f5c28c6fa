import { expect, test } from 'vitest';
import { twoClasses } from '../../../../shared-lib/growing/two-classes.ts';
import { cvReady } from '../calibration/opencv.ts';
import { gaussian, seeded } from '../tracing/drawn-surface.ts';

test('values are parted where Otsu parts them (OpenCV, whole numbers)', async () => {
  const { cv } = await cvReady();
  const random = seeded(6);
  for (const [low, high, share] of [
    [40, 120, 0.5],
    [60, 150, 0.1],
    [30, 200, 0.8],
  ] as const) {
    const values = Array.from({ length: 900 }, () =>
      Math.min(255, Math.max(0, Math.round((random() < share ? high : low) + 12 * gaussian(random)))),
    );
    const picture = cv.matFromArray(30, 30, cv.CV_8UC1, values);
    const binary = new cv.Mat();
    const theirs = cv.threshold(picture, binary, 0, 255, cv.THRESH_BINARY + cv.THRESH_OTSU);
    for (const mat of [picture, binary]) mat.delete();
    const ours = twoClasses(values);
    // Theirs is the last of the lower class; ours lies between the classes.
    const above = values.filter((value) => value > Number(theirs)).length;
    expect(values.filter((value) => value > (ours?.level ?? 0)).length, `${low} and ${high}`).toBe(above);
  }
}, 60_000);

test('few values have no classes; one hump lies less far apart than two', () => {
  expect(twoClasses([1, 2, 3])).toBeNull();
  const random = seeded(7);
  const one = Array.from({ length: 600 }, () => Math.abs(gaussian(random)));
  const two = one.map((value, at) => value + (at % 8 === 0 ? 8 : 0));
  expect(twoClasses(one)?.apart).toBeLessThan(3.1);
  expect(twoClasses(two)?.apart).toBeGreaterThan(5);
});
