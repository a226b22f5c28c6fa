import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { greyOf, readUprightPixels } from '../../../../electron/recorder/measuring/pixels.ts';
import { type Homography, type PointPair, project } from '../../../../shared-lib/calibration/homography.ts';
import { carryPoints, registerByHand, suggestRegistration } from '../../../../shared-lib/comparison/register.ts';
import { fitSimilarity } from '../../../../shared-lib/comparison/similarity.ts';
import { cvReady } from '../calibration/opencv.ts';
import { drawBare, gaussian, seeded } from '../tracing/drawn-surface.ts';
import { seenAnew } from './seen-anew.ts';

const photos = resolve(import.meta.dirname, '../../../../assets/demo/photos');
const readPhoto = async (name: string) => greyOf(await readUprightPixels(join(photos, name)));

const leans: readonly (readonly [string, Homography])[] = [
  ['a shift', [1, 0, 60, 0, 1, -40, 0, 0, 1]],
  ['a turn of 20 degrees', [0.9397, -0.342, 300, 0.342, 0.9397, -200, 0, 0, 1]],
  ['nearer by a quarter', [1.25, 0, -200, 0, 1.25, -150, 0, 0, 1]],
  ['a lean', [1.02, 0.08, -30, -0.05, 0.97, 60, 6e-5, -3e-5, 1]],
];

describe('suggested from corners found in both', () => {
  test.each(leans)(
    '%s is found to under two pixels',
    async (_, h) => {
      const random = seeded(31);
      const before = await readPhoto('block-deck.jpg');
      const found = suggestRegistration(before, seenAnew(before, h, random), random);
      if (found.state !== 'registered') throw new Error(found.state);
      for (const at of [
        { x: 500, y: 400 },
        { x: 1100, y: 400 },
        { x: 1100, y: 900 },
        { x: 500, y: 900 },
      ]) {
        const [mine, truth] = [project(found.toLater, at), project(h, at)];
        expect(Math.hypot((mine?.x ?? 0) - (truth?.x ?? 99), (mine?.y ?? 0) - (truth?.y ?? 99))).toBeLessThan(2);
      }
    },
    60_000,
  );

  test('the same weld half a year apart, from another side: known places land where they are', async () => {
    const [spring, autumn] = [await readPhoto('tower-weld-spring.jpg'), await readPhoto('tower-weld-autumn.jpg')];
    const found = suggestRegistration(spring, autumn, seeded(32));
    if (found.state !== 'registered') throw new Error(found.state);
    const places = (name: string) =>
      (JSON.parse(readFileSync(join(photos, name), 'utf8')) as { features: Record<string, { px: [number, number] }> })
        .features;
    const [then, now] = [places('tower-weld-spring.truth.json'), places('tower-weld-autumn.truth.json')];
    // The weld, the plate and the rule are not one plane: a hundredth of the picture's width is what one mapping can do.
    for (const name of ['rule 30 mm', 'rule 50 mm', 'rule 70 mm']) {
      const [from, to] = [then[name]?.px, now[name]?.px];
      if (!from || !to) throw new Error(name);
      const there = project(found.toLater, { x: from[0], y: from[1] });
      expect(Math.hypot((there?.x ?? 0) - to[0], (there?.y ?? 0) - to[1]), name).toBeLessThan(17);
    }
  }, 60_000);

  test.each([
    ['block-deck.jpg', 'head-fire-face.jpg'],
    ['piston-skirt.jpg', 'tower-weld-spring.jpg'],
    ['block-deck.jpg', 'tower-weld-autumn.jpg'],
  ])(
    '%s and %s have nothing in common',
    async (a, b) => {
      expect(suggestRegistration(await readPhoto(a), await readPhoto(b), seeded(33)).state).toBe('nothing-in-common');
    },
    60_000,
  );

  test('two surfaces of one kind have nothing in common', () => {
    for (const surface of ['machined', 'rust', 'oil-film'] as const) {
      expect(suggestRegistration(drawBare(surface, 1), drawBare(surface, 2), seeded(34)).state, surface).toBe(
        'nothing-in-common',
      );
    }
  }, 60_000);
});

describe('by hand', () => {
  const random = seeded(35);
  const clicks = (count: number, noisePx: number, h: Homography): PointPair[] =>
    Array.from({ length: count }, (_, i) => {
      const from = {
        x: 300 + (i % 3) * 400 + 90 * random(),
        y: 200 + Math.floor(i / 3) * 300 + (i % 2) * 150 + 90 * random(),
      };
      const to = project(h, from) ?? from;
      return { from, to: { x: to.x + noisePx * gaussian(random), y: to.y + noisePx * gaussian(random) } };
    });

  test.each(leans)('%s comes back from six clean points, and old marks are carried over', (_, h) => {
    const found = registerByHand(clicks(6, 0, h));
    expect(found.rmsPx).toBeLessThan(1e-6);
    const [carried, lost] = carryPoints(
      found,
      [
        { x: 700, y: 500 },
        { x: -9000, y: 0 },
      ],
      { width: 4000, height: 3000 },
    );
    const truth = project(h, { x: 700, y: 500 });
    expect(Math.abs((carried?.x ?? 0) - (truth?.x ?? 9))).toBeLessThan(1e-5);
    expect(lost).toBeNull();
  });

  /** OpenCV compiled for JavaScript, an independent implementation. */
  let cv: Awaited<ReturnType<typeof cvReady>>['cv'];
  beforeAll(async () => {
    cv = (await cvReady()).cv;
  }, 60_000);

  test('three points of a similarity give the mapping that OpenCV gives', () => {
    for (let round = 0; round < 20; round += 1) {
      const angle = 6 * random();
      const [a, b] = [1.3 * Math.cos(angle), 1.3 * Math.sin(angle)];
      const pairs = clicks(3, 0, [a, -b, 100 * random(), b, a, 50, 0, 0, 1]);
      const ours = fitSimilarity(pairs) ?? [];
      const flat = (pick: 'from' | 'to') =>
        cv.matFromArray(
          3,
          1,
          cv.CV_32FC2,
          pairs.flatMap((pair) => [pair[pick].x, pair[pick].y]),
        );
      const [from, to] = [flat('from'), flat('to')];
      const found = cv.getAffineTransform(from, to);
      const theirs = [...found.data64F];
      for (const mat of [from, to, found]) mat.delete();
      // Their points are single precision: up to a thousand pixels, so 2e-3 px of the shift is 2e-6.
      for (const [i, value] of theirs.entries())
        expect(Math.abs((ours[i] ?? 0) - value)).toBeLessThan(i % 3 === 2 ? 2e-3 : 2e-6);
    }
  });

  test('one point is too few, swapped points are refused', () => {
    const pairs = clicks(4, 0, leans[0]?.[1] ?? [1, 0, 0, 0, 1, 0, 0, 0, 1]);
    expect(() => registerByHand(pairs.slice(0, 1))).toThrow(/calibration-too-few-points/);
    const square = [
      [0, 0],
      [500, 0],
      [500, 400],
      [0, 400],
    ].map(([x = 0, y = 0]) => ({ x, y }));
    const swapped = [0, 2, 1, 3].map((k, i) => ({
      from: square[i] ?? { x: 0, y: 0 },
      to: square[k] ?? { x: 0, y: 0 },
    }));
    expect(() => registerByHand(swapped)).toThrow(/calibration-points-crossing/);
  });
});
