import { join, resolve } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { greyOf, readUprightPixels } from '../../../../electron/recorder/measuring/pixels.ts';
import { type Homography, type PointPair, project } from '../../../../shared-lib/calibration/homography.ts';
import { registerPairs } from '../../../../shared-lib/comparison/check-pairs.ts';
import { suggestRegistration } from '../../../../shared-lib/comparison/register.ts';
import { fitSimilarity } from '../../../../shared-lib/comparison/similarity.ts';
import { spreadPairs } from '../../../../shared-lib/comparison/spread-pairs.ts';
import type { GreyImage } from '../../../../shared-lib/tracing/grey.ts';
import { cvReady } from '../calibration/opencv.ts';
import { gaussian, seeded } from '../tracing/drawn-surface.ts';
import { seenAnew } from './seen-anew.ts';

/** OpenCV compiled for JavaScript, an independent implementation: its own corners (ORB), matching and RANSAC. */
let cv: Awaited<ReturnType<typeof cvReady>>['cv'];
beforeAll(async () => {
  cv = (await cvReady()).cv;
}, 60_000);

const photos = resolve(import.meta.dirname, '../../../../assets/demo/photos');
const photo = async (name: string) => greyOf(await readUprightPixels(join(photos, name)));

/** What the types of that library leave out. */
interface Vector<T> {
  size(): number;
  get(at: number): T;
  delete(): void;
}
interface Found {
  readonly queryIdx: number;
  readonly trainIdx: number;
}
type Mat = InstanceType<typeof cv.Mat>;
interface Untyped {
  readonly ORB: new (
    most: number,
  ) => {
    detectAndCompute(picture: Mat, mask: Mat, points: Vector<{ pt: { x: number; y: number } }>, codes: Mat): void;
    delete(): void;
  };
  readonly BFMatcher: new (
    norm: number,
    isMutual: boolean,
  ) => {
    match(a: Mat, b: Mat, matches: Vector<Found>): void;
    delete(): void;
  };
  readonly KeyPointVector: new () => Vector<{ pt: { x: number; y: number } }>;
  readonly DMatchVector: new () => Vector<Found>;
}
const untyped = (): Untyped => cv as unknown as Untyped;

const featuresOf = ({ width, height, data }: GreyImage) => {
  const mat = cv.matFromArray(height, width, cv.CV_8UC1, [...Uint8Array.from(data)]);
  const [points, codes, mask] = [new (untyped().KeyPointVector)(), new cv.Mat(), new cv.Mat()];
  const orb = new (untyped().ORB)(3000);
  orb.detectAndCompute(mat, mask, points, codes);
  const at = Array.from({ length: points.size() }, (_, k) => points.get(k).pt);
  for (const each of [mat, points, mask, orb]) each.delete();
  return { at, codes };
};

/** How the first photo lies under the second, by the other library alone. */
const theirRegistration = (before: GreyImage, after: GreyImage): Homography => {
  const [one, other] = [featuresOf(before), featuresOf(after)];
  const matcher = new (untyped().BFMatcher)(cv.NORM_HAMMING, true);
  const matches = new (untyped().DMatchVector)();
  matcher.match(one.codes, other.codes, matches);
  const flat = (pick: (match: Found) => { x: number; y: number } | undefined) =>
    Array.from({ length: matches.size() }, (_, k) => pick(matches.get(k))).flatMap((at) => [at?.x ?? 0, at?.y ?? 0]);
  const count = matches.size();
  const from = cv.matFromArray(
    count,
    1,
    cv.CV_32FC2,
    flat(({ queryIdx }) => one.at[queryIdx]),
  );
  const to = cv.matFromArray(
    count,
    1,
    cv.CV_32FC2,
    flat(({ trainIdx }) => other.at[trainIdx]),
  );
  const found = cv.findHomography(from, to, cv.RANSAC, 3);
  const values = [...found.data64F] as unknown as Homography;
  for (const each of [one.codes, other.codes, matcher, matches, from, to, found]) each.delete();
  return values;
};

const apart = (a: Homography, b: Homography, at: { x: number; y: number }): number => {
  const [p, q] = [project(a, at), project(b, at)];
  return Math.hypot((p?.x ?? 1e9) - (q?.x ?? -1e9), (p?.y ?? 1e9) - (q?.y ?? -1e9));
};

test('a photo and the same seen at a lean: both libraries find the same mapping, and it is the true one', async () => {
  const truth: Homography = [1.02, 0.08, -30, -0.05, 0.97, 60, 6e-5, -3e-5, 1];
  const before = await photo('block-deck.jpg');
  const after = seenAnew(before, truth, seeded(43));
  const ours = suggestRegistration(before, after, seeded(41));
  if (ours.state !== 'registered') throw new Error(ours.state);
  const theirs = theirRegistration(before, after);
  const few = registerPairs(spreadPairs(ours), { earlier: before, later: after });
  for (const at of [
    { x: 500, y: 400 },
    { x: 1100, y: 400 },
    { x: 1100, y: 900 },
    { x: 500, y: 900 },
  ]) {
    expect(apart(ours.toLater, theirs, at)).toBeLessThan(2);
    expect(apart(theirs, truth, at)).toBeLessThan(2);
    // The few that a person is asked to check say the same.
    expect(apart(few.toLater, truth, at)).toBeLessThan(3);
  }
}, 120_000);

test('noisy points turned and scaled: the least squares of both agree', () => {
  const random = seeded(42);
  for (let round = 0; round < 20; round += 1) {
    const angle = 6 * random();
    const [a, b] = [1.2 * Math.cos(angle), 1.2 * Math.sin(angle)];
    const pairs: PointPair[] = Array.from({ length: 12 }, () => {
      const from = { x: 1000 * random(), y: 800 * random() };
      return {
        from,
        to: {
          x: a * from.x - b * from.y + 90 + gaussian(random),
          y: b * from.x + a * from.y - 40 + gaussian(random),
        },
      };
    });
    const ours = fitSimilarity(pairs) ?? [];
    // u = a x - b y + s, v = b x + a y + t: four unknowns, solved by the singular value decomposition.
    const rows = pairs.flatMap(({ from: { x, y } }) => [x, -y, 1, 0, y, x, 0, 1]);
    const right = pairs.flatMap(({ to: { x, y } }) => [x, y]);
    const [left, wanted] = [cv.matFromArray(24, 4, cv.CV_64F, rows), cv.matFromArray(24, 1, cv.CV_64F, right)];
    const found = new cv.Mat();
    cv.solve(left, wanted, found, cv.DECOMP_SVD);
    const [p = 0, q = 0, s = 0, t = 0] = found.data64F;
    for (const mat of [left, wanted, found]) mat.delete();
    const theirs = [p, -q, s, q, p, t];
    for (const [i, value] of theirs.entries()) {
      expect(Math.abs((ours[i] ?? 0) - value)).toBeLessThan(i % 3 === 2 ? 1e-6 : 1e-9);
    }
  }
});
