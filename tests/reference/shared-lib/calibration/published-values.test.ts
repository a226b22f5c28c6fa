import { describe, expect, test } from 'vitest';
import { fitEllipse } from '../../../../shared-lib/calibration/ellipse.ts';
import {
  directHomography,
  fitHomography,
  type PointPair,
  project,
} from '../../../../shared-lib/calibration/homography.ts';
import { fromLimits, propagate } from '../../../../shared-lib/calibration/propagate.ts';
import type { XY } from '../../../../shared-lib/geometry/spaces.ts';

const xy = ([x, y]: readonly [number, number]): XY => ({ x, y });
const pairsOf = (
  from: readonly (readonly [number, number])[],
  to: readonly (readonly [number, number])[],
): PointPair[] => from.map((point, i) => ({ from: xy(point), to: xy(to[i] ?? [0, 0]) }));

describe('homography', () => {
  const four = pairsOf(
    [
      [412, 318],
      [1604, 402],
      [1498, 1190],
      [296, 1012],
    ],
    [
      [0, 0],
      [200, 0],
      [200, 125],
      [0, 125],
    ],
  );

  // Source: normalised DLT recomputed with ml-matrix; OpenCV getPerspectiveTransform agrees to 1e-13.
  test('four points give the published matrix to 1e-8', () => {
    const expected = [
      0.198927230815, 0.0332500846896, -92.5315460271, -0.0135667843725, 0.192519130619, -55.6315683755,
      0.000112494681215, 4.75867227828e-5,
    ];
    const found = directHomography(four);
    for (const [i, value] of expected.entries()) expect(Math.abs((found[i] ?? 0) / value - 1)).toBeLessThan(1e-8);
    const mapped = project(found, { x: 1200, y: 900 });
    expect(mapped?.x).toBeCloseTo(149.51857, 4);
    expect(mapped?.y).toBeCloseTo(86.05336, 4);
  });

  // Source: the same; six noisy points, DLT and OpenCV's refined fit differ by 0.0004 mm.
  test('six noisy points map as the published fit does, to a thousandth', () => {
    const found = fitHomography(
      pairsOf(
        [
          [100, 100],
          [700, 120],
          [680, 560],
          [90, 520],
          [400, 110],
          [395, 545],
        ],
        [
          [1.0421, 2.1525],
          [116.6556, 1.5605],
          [115.7514, 89.6579],
          [3.1169, 88.6572],
          [59.7488, 1.8867],
          [62.1544, 90.0496],
        ],
      ),
    );
    const mapped = project(found, { x: 400, y: 300 });
    expect(Math.abs((mapped?.x ?? 0) - 61.2191)).toBeLessThan(0.001);
    expect(Math.abs((mapped?.y ?? 0) - 40.603)).toBeLessThan(0.001);
  });
});

// Source: Gander, Golub and Strebel's eight points; direct fit by Halir and Flusser with ml-matrix and numpy.
test('the ellipse of the eight points of the literature', () => {
  const points = (
    [
      [1, 7],
      [2, 6],
      [5, 8],
      [7, 7],
      [9, 5],
      [3, 7],
      [6, 2],
      [8, 4],
    ] as const
  ).map(xy);
  const found = fitEllipse(points);
  const values = [found?.centre.x, found?.centre.y, found?.semiMajor, found?.semiMinor, found?.angle];
  for (const [i, value] of [5.063878, 5.069753, 3.775664, 2.642334, -0.38612].entries()) {
    expect(Math.abs((values[i] ?? 0) - value)).toBeLessThan(2e-6);
  }
});

/** JCGM 100:2008 (GUM), annex H.1, seen through public copies: end-gauge calibration. Lengths in nm. */
describe('end gauge of the GUM, H.1', () => {
  const reference = { value: 50.000623e6, u: 25, degrees: 18 };
  const difference = { value: 215, u: 9.7, degrees: 25.6 };
  const alpha = { value: 11.5e-6, u: fromLimits(2e-6) };
  const theta = { value: -0.1, u: 0.41 };
  const alphaDifference = { value: 0, u: 0.58e-6, degrees: 50 };
  const thetaDifference = { value: 0, u: 0.029, degrees: 2 };
  const found = propagate(
    ([ls = 0, d = 0, a = 0, t = 0, da = 0, dt = 0]) => ls + d - ls * (da * t + a * dt),
    [reference, difference, alpha, theta, alphaDifference, thetaDifference],
  );

  test('the length is 50.000 838 mm', () => {
    expect((found.value / 1e6).toFixed(6)).toBe('50.000838');
  });
  test('its combined standard uncertainty is 32 nm', () => {
    expect(Math.round(found.u)).toBe(32);
  });
  test('it has 16 effective degrees of freedom, cut to the whole number', () => {
    expect(Math.floor(found.degrees)).toBe(16);
  });
  test('with k = 2.92 the expanded uncertainty is 93 nm', () => {
    // H.1.6 multiplies the rounded 32 nm.
    expect(Math.round(2.92 * Math.round(found.u))).toBe(93);
  });
  test('the difference has u = 9.7 nm, and 25.6 degrees of freedom', () => {
    const d = propagate(
      ([repeat = 0, random = 0, systematic = 0]) => repeat + random + systematic,
      [
        { value: 0, u: 5.8, degrees: 24 },
        { value: 0, u: 3.9, degrees: 5 },
        { value: 0, u: 6.7, degrees: 8 },
      ],
    );
    expect(d.u.toFixed(1)).toBe('9.7');
    expect(Math.abs(d.degrees - 25.6)).toBeLessThan(0.3);
  });
});

// Source: GUM 5.1.2 and 4.3.7, recomputed.
test('a product and a rectangular limit', () => {
  const z = propagate(
    ([x = 0, y = 0]) => x * y,
    [
      { value: 12, u: 0.1 },
      { value: 5, u: 0.05 },
    ],
  );
  expect(Math.abs(z.u - 0.78102)).toBeLessThan(1e-5);
  expect(fromLimits(0.05).toFixed(6)).toBe('0.028868');
});
