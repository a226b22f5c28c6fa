import { describe, expect, test } from 'vitest';
import { CalibrationInput, MeasuredShape } from '../../../../shared-lib/calibration/input.ts';
import { bendBack, lensOf, straighten } from '../../../../shared-lib/calibration/lens.ts';
import { measureShape } from '../../../../shared-lib/calibration/measure.ts';
import { mapPlane } from '../../../../shared-lib/calibration/plane-mapping.ts';
import { fromLimits, propagate } from '../../../../shared-lib/calibration/propagate.ts';
import { gaussian, seeded } from '../../../reference/shared-lib/tracing/drawn-surface.ts';

const photo = { width: 2000, height: 1500 };

test('what is straightened is bent back to where it was; the middle stays', () => {
  for (const bend of [-0.05, -0.01, 0, 0.02, 0.06]) {
    const lens = lensOf(photo, bend);
    for (const at of [lens.middle, { x: 3, y: 5 }, { x: 1990, y: 20 }, { x: 700, y: 1400 }]) {
      const back = bendBack(lens, straighten(lens, at));
      expect(Math.hypot((back?.x ?? 0) - at.x, (back?.y ?? 0) - at.y)).toBeLessThan(1e-9);
    }
    expect(straighten(lens, lens.middle)).toEqual(lens.middle);
  }
});

/** A grid seen through a lens that bends by the very model of the fit, found to `noisePx`. */
const grid = (bend: number, noisePx: number, seed: number) => {
  const random = seeded(seed);
  const lens = lensOf(photo, bend);
  const points = Array.from({ length: 40 }, (_, k) => {
    const mm = { x: 16 * (k % 8), y: 16 * Math.floor(k / 8) };
    const w = 1 + 4e-4 * mm.x - 3e-4 * mm.y;
    const straight = { x: (300 + 9 * mm.x + 1.5 * mm.y) / w, y: (250 - 1.2 * mm.x + 9.5 * mm.y) / w };
    const px = bendBack(lens, straight) ?? straight;
    return { px: { x: px.x + noisePx * gaussian(random), y: px.y + noisePx * gaussian(random) }, mm };
  });
  return CalibrationInput.parse({
    method: 'known-points',
    points,
    photo,
    clickingPx: 0.1,
    lensShare: 0,
    lens: { bendU: 0.02 },
  });
};

test('the bend of the lens comes back from a grid that is seen through it', () => {
  for (const bend of [-0.03, 0, 0.025]) {
    expect(mapPlane(grid(bend, 0, 1)).bend).toBeCloseTo(bend, 2);
    expect(Math.abs((mapPlane(grid(bend, 0.05, 2)).bend ?? 1) - bend)).toBeLessThan(0.004);
  }
});

test('four or five points say nothing about the lens', () => {
  const { points, ...rest } = grid(0.02, 0, 1) as Extract<CalibrationInput, { method: 'known-points' }>;
  const corners = [0, 7, 39, 32].flatMap((k) => points[k] ?? []);
  expect(mapPlane({ ...rest, points: corners }).bend).toBeNull();
});

describe('shares of a size that come in through the points', () => {
  /** The law of propagation taken at its word: every coordinate moved, everything fitted anew (JCGM 100:2008, 5.1.3). */
  const byMoving = (input: CalibrationInput, size: (input: CalibrationInput) => number) => {
    if (input.method !== 'known-points') throw new Error('points only');
    const u = fromLimits(input.toleranceMm);
    const inputs = input.points.flatMap(({ px, mm }) => [
      { value: px.x, u: input.clickingPx },
      { value: px.y, u: input.clickingPx },
      { value: mm.x, u },
      { value: mm.y, u },
    ]);
    const { shares } = propagate((values) => {
      const at = (k: number): number => values[k] ?? 0;
      const points = input.points.map((_, i) => ({
        px: { x: at(4 * i), y: at(4 * i + 1) },
        mm: { x: at(4 * i + 2), y: at(4 * i + 3) },
      }));
      return size({ ...input, points });
    }, inputs);
    const every = (from: number) => Math.hypot(...shares.filter((_, k) => k % 4 === from || k % 4 === from + 1));
    return { clicking: every(0), tolerance: every(2) };
  };
  const line = MeasuredShape.parse({
    shape: 'line',
    points: [
      { x: 400, y: 900 },
      { x: 1500, y: 1200 },
    ],
  });

  test.each([
    ['a grid and its lens', { ...grid(0.01, 0.05, 3), toleranceMm: 0.1 }],
    [
      'a grid, no lens asked for',
      (({ lens: _, ...rest }) => ({ ...rest, toleranceMm: 0.1 }))(
        grid(0, 0.05, 4) as Extract<CalibrationInput, { method: 'known-points' }>,
      ),
    ],
    [
      'four points',
      {
        ...grid(0, 0, 5),
        points: [0, 7, 39, 32].flatMap(
          (k) => (grid(0, 0, 5) as Extract<CalibrationInput, { method: 'known-points' }>).points[k] ?? [],
        ),
        toleranceMm: 0.2,
      } as CalibrationInput,
    ],
  ])('%s: the linear fit gives what moving each coordinate gives', (_, input) => {
    const { shares } = measureShape(input, line);
    const moved = byMoving(input, (other) => measureShape(other, line).value);
    expect((shares['clicking-reference'] ?? 0) / moved.clicking).toBeCloseTo(1, 2);
    expect((shares['reference-tolerance'] ?? 0) / moved.tolerance).toBeCloseTo(1, 2);
  });
});
