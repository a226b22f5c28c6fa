import { beforeAll, expect, test } from 'vitest';
import { cardFaces } from '../../../../shared-lib/calibration/card/face.ts';
import { findCard } from '../../../../shared-lib/calibration/card/find-card.ts';
import { fitEllipse } from '../../../../shared-lib/calibration/ellipse.ts';
import { fitHomography, type PointPair, project } from '../../../../shared-lib/calibration/homography.ts';
import { registerByHand } from '../../../../shared-lib/comparison/register.ts';
import { drawView } from '../../../support/calibration/card-view.ts';
import { gaussian, seeded } from '../tracing/drawn-surface.ts';
import { cvReady } from './opencv.ts';

/** OpenCV compiled for JavaScript, an independent implementation. */
let cv: Awaited<ReturnType<typeof cvReady>>['cv'];
beforeAll(async () => {
  cv = (await cvReady()).cv;
}, 60_000);

const theirs = (pairs: readonly PointPair[]): number[] => {
  const flat = (points: readonly { x: number; y: number }[]) => points.flatMap(({ x, y }) => [x, y]);
  const from = cv.matFromArray(pairs.length, 1, cv.CV_64FC2, flat(pairs.map((pair) => pair.from)));
  const to = cv.matFromArray(pairs.length, 1, cv.CV_64FC2, flat(pairs.map((pair) => pair.to)));
  const found = cv.findHomography(from, to, 0);
  const values = [...found.data64F];
  for (const mat of [from, to, found]) mat.delete();
  return values;
};

/** A plane seen by a random camera: an exact mapping from pixels to millimetres. */
const randomPairs = (random: () => number, count: number, noisePx: number): PointPair[] => {
  const h = [
    0.2 + 0.05 * random(),
    0.03 * random(),
    -90,
    -0.02 * random(),
    0.19 + 0.05 * random(),
    -55,
    1e-4 * random(),
    5e-5 * random(),
    1,
  ] as const;
  return Array.from({ length: count }, (_, i) => {
    // Spread over a grid, so that no three lie on one line.
    const from = { x: 300 + (i % 3) * 500 + 150 * random(), y: 200 + Math.floor(i / 3) * 400 + 150 * random() };
    const to = project(h, from) ?? from;
    return { from: { x: from.x + noisePx * gaussian(random), y: from.y + noisePx * gaussian(random) }, to };
  });
};

test('homographies of clean points agree to 1e-6, six points and nine', () => {
  const random = seeded(11);
  for (let round = 0; round < 40; round += 1) {
    const pairs = randomPairs(random, round % 2 === 0 ? 9 : 6, 0);
    const ours = fitHomography(pairs);
    const other = theirs(pairs) as unknown as Parameters<typeof project>[0];
    for (const at of [...pairs.map(({ from }) => from), { x: 900, y: 700 }, { x: 1900, y: 250 }]) {
      const [mine, their] = [project(ours, at), project(other, at)];
      // Coordinates reach about 300 mm; OpenCV rounds its points to single precision.
      expect(Math.abs((mine?.x ?? 0) - (their?.x ?? 9))).toBeLessThan(300e-6);
      expect(Math.abs((mine?.y ?? 0) - (their?.y ?? 9))).toBeLessThan(300e-6);
    }
  }
});

test('homographies of noisy points map to the same place within what a click is worth', () => {
  const random = seeded(12);
  for (let round = 0; round < 40; round += 1) {
    const pairs = randomPairs(random, 9, 1);
    const ours = project(fitHomography(pairs), { x: 900, y: 700 });
    const other = project(theirs(pairs) as unknown as Parameters<typeof project>[0], { x: 900, y: 700 });
    // One pixel is about 0.2 mm here; both fits are noise of the same clicks, weighed in different planes.
    expect(Math.hypot((ours?.x ?? 0) - (other?.x ?? 9), (ours?.y ?? 0) - (other?.y ?? 9))).toBeLessThan(0.05);
  }
});

test('ellipses of clean points agree to 1e-6', () => {
  const random = seeded(13);
  for (let round = 0; round < 40; round += 1) {
    const [a, b, angle] = [200 + 100 * random(), 60 + 100 * random(), Math.PI * (random() - 0.5)];
    const [cx, cy] = [500 + 300 * random(), 400 + 300 * random()];
    const points = Array.from({ length: 24 }, (_, k) => {
      const t = (2 * Math.PI * k) / 24;
      const [u, v] = [a * Math.cos(t), b * Math.sin(t)];
      return { x: cx + u * Math.cos(angle) - v * Math.sin(angle), y: cy + u * Math.sin(angle) + v * Math.cos(angle) };
    });
    const ours = fitEllipse(points);
    const mat = cv.matFromArray(
      24,
      1,
      cv.CV_32FC2,
      points.flatMap(({ x, y }) => [x, y]),
    );
    const box = cv.fitEllipse(mat);
    mat.delete();
    // On exact points every method gives the same ellipse. Theirs is single precision: 1e-6 of the picture's size.
    const scale = 1e-6 * 1000;
    expect(Math.abs((ours?.centre.x ?? 0) - box.center.x)).toBeLessThan(scale);
    expect(Math.abs((ours?.centre.y ?? 0) - box.center.y)).toBeLessThan(scale);
    expect(Math.abs((ours?.semiMajor ?? 0) - Math.max(box.size.width, box.size.height) / 2)).toBeLessThan(scale);
    expect(Math.abs((ours?.semiMinor ?? 0) - Math.min(box.size.width, box.size.height) / 2)).toBeLessThan(scale);
    // And against what was drawn, in full precision.
    expect(Math.abs((ours?.semiMajor ?? 0) / a - 1)).toBeLessThan(1e-6);
    expect(Math.abs((ours?.semiMinor ?? 0) / b - 1)).toBeLessThan(1e-6);
  }
});

test('ellipses of noisy points are the same within what the noise is worth', () => {
  const random = seeded(14);
  const noisePx = 1;
  for (let round = 0; round < 40; round += 1) {
    const [a, b, angle] = [260 + 60 * random(), 150 + 60 * random(), Math.PI * (random() - 0.5)];
    const points = Array.from({ length: 24 }, (_, k) => {
      const t = (2 * Math.PI * k) / 24;
      const [u, v] = [a * Math.cos(t), b * Math.sin(t)];
      return {
        x: 800 + u * Math.cos(angle) - v * Math.sin(angle) + noisePx * gaussian(random),
        y: 600 + u * Math.sin(angle) + v * Math.cos(angle) + noisePx * gaussian(random),
      };
    });
    const ours = fitEllipse(points);
    const mat = cv.matFromArray(
      24,
      1,
      cv.CV_32FC2,
      points.flatMap(({ x, y }) => [x, y]),
    );
    const box = cv.fitEllipse(mat);
    mat.delete();
    // The mean of 24 points scatters by a fifth of a pixel; both fits are of the same points and lie nearer than that.
    expect(Math.hypot((ours?.centre.x ?? 0) - box.center.x, (ours?.centre.y ?? 0) - box.center.y)).toBeLessThan(0.2);
    const [wide, narrow] = [Math.max(box.size.width, box.size.height), Math.min(box.size.width, box.size.height)];
    expect(Math.abs((ours?.semiMajor ?? 0) - wide / 2)).toBeLessThan(0.4);
    expect(Math.abs((ours?.semiMinor ?? 0) - narrow / 2)).toBeLessThan(0.4);
  }
});

test('a photo laid over another by six clean points lands where theirs does, to 1e-6; by noisy ones, within a click', () => {
  const random = seeded(15);
  for (let round = 0; round < 40; round += 1) {
    for (const [noisePx, most] of [
      [0, 300e-6],
      [1, 0.3],
    ] as const) {
      const pairs = randomPairs(random, 9, noisePx);
      const ours = registerByHand(pairs).toLater;
      const other = theirs(pairs) as unknown as Parameters<typeof project>[0];
      for (const at of [
        { x: 900, y: 700 },
        { x: 500, y: 400 },
      ]) {
        const [mine, their] = [project(ours, at), project(other, at)];
        expect(Math.hypot((mine?.x ?? 0) - (their?.x ?? 9), (mine?.y ?? 0) - (their?.y ?? 9))).toBeLessThan(most);
      }
    }
  }
});

test('the plane of a found card is theirs: their fit of the same points puts the card where ours does', () => {
  const [face] = cardFaces;
  if (!face) throw new Error('no face');
  const photo = { width: 1400, height: 1050 };
  const view = { photo, face, tiltDegrees: 40, fill: 0.5, blurPx: 1, noise: 3, shade: 1, barrel: 0 };
  const behind = { width: 2, height: 2, left: 0, top: 0, data: Float32Array.from([120, 132, 126, 118]) };
  const { image, see } = drawView(view, behind, seeded(16));
  const points = findCard(image)?.points ?? [];
  expect(points.length).toBeGreaterThan(35);
  const pairs = points.map(({ px, mm }) => ({ from: mm, to: px }));
  const [ours, other] = [fitHomography(pairs), theirs(pairs) as unknown as Parameters<typeof project>[0]];
  for (const mm of [
    { x: 0, y: 0 },
    { x: 144, y: 0 },
    { x: 144, y: 96 },
    { x: 0, y: 96 },
  ]) {
    const [mine, their, truth] = [project(ours, mm), project(other, mm), see(mm)];
    expect(Math.hypot((mine?.x ?? 0) - (their?.x ?? 9), (mine?.y ?? 0) - (their?.y ?? 9))).toBeLessThan(0.02);
    expect(Math.hypot((mine?.x ?? 0) - truth.x, (mine?.y ?? 0) - truth.y)).toBeLessThan(0.15);
  }
});
