import { expect, test } from 'vitest';
import { circlePoses } from '../../../../shared-lib/calibration/circle-poses.ts';
import { fitEllipse } from '../../../../shared-lib/calibration/ellipse.ts';
import { possibleEllipses } from '../../../../shared-lib/calibration/flatness.ts';
import { gaussian, seeded } from '../tracing/drawn-surface.ts';

const sight = { x: 2000, y: 1500 };
const focalPx = 3000;

/** A circle in space, seen through a pinhole: everything follows from where it lies. */
function seenCircle(random: () => number) {
  const tilt = ((5 + 60 * random()) * Math.PI) / 180;
  const way = 2 * Math.PI * random();
  const normal = [Math.sin(tilt) * Math.cos(way), Math.sin(tilt) * Math.sin(way), Math.cos(tilt)] as const;
  const middle = [60 * (random() - 0.5), 60 * (random() - 0.5), 300] as const;
  // Two axes square to the normal and to each other.
  const u = [Math.cos(tilt) * Math.cos(way), Math.cos(tilt) * Math.sin(way), -Math.sin(tilt)] as const;
  const v = [-Math.sin(way), Math.cos(way), 0] as const;
  const rim = Array.from({ length: 12 }, (_, k) => {
    const turn = (2 * Math.PI * k) / 12;
    const at = (i: 0 | 1 | 2): number => middle[i] + 25 * (Math.cos(turn) * u[i] + Math.sin(turn) * v[i]);
    return { x: sight.x + (focalPx * at(0)) / at(2), y: sight.y + (focalPx * at(1)) / at(2) };
  });
  return { normal, rim };
}

test('one of the two planes that an ellipse allows is the one that the circle lies in', () => {
  const random = seeded(31);
  for (let round = 0; round < 200; round += 1) {
    const { normal, rim } = seenCircle(random);
    const ellipse = fitEllipse(rim);
    if (!ellipse) throw new Error('no ellipse');
    const off = circlePoses(ellipse, sight, focalPx).map((pose) =>
      Math.hypot(...pose.map((value, i) => value - (normal[i] ?? 0))),
    );
    expect(Math.min(...off)).toBeLessThan(1e-6);
    // The other is another: nothing here may have been guessed from the plane.
    expect(Math.max(...off)).toBeGreaterThan(0.01);
  }
});

test('a circle seen squarely off the middle of the photo may lie squarely, or lean twice as far as it lies aside', () => {
  const aside = 600;
  const round = { centre: { x: sight.x + aside, y: sight.y }, semiMajor: 200, semiMinor: 200, angle: 0 };
  const tilts = circlePoses(round, sight, focalPx).map(([, , z]) => Math.acos(Math.min(1, z)));
  expect(Math.min(...tilts)).toBeCloseTo(0, 6);
  // Of the axis of its cone, which lies a little off the ray through the middle of a large circle: tan t = 0.2.
  expect(Math.max(...tilts)).toBeCloseTo(2 * Math.atan(aside / focalPx), 1);
});

test('a round rim that only clicking makes flat may be round: half of what is possible is rounder than it looks', () => {
  const random = seeded(32);
  const clickingPx = 2;
  const rim = Array.from({ length: 10 }, (_, k) => ({
    x: 500 + 150 * Math.cos((k * Math.PI) / 5) + clickingPx * gaussian(random),
    y: 500 + 150 * Math.sin((k * Math.PI) / 5) + clickingPx * gaussian(random),
  }));
  const ellipse = fitEllipse(rim);
  if (!ellipse) throw new Error('no ellipse');
  const ratios = possibleEllipses(ellipse, rim, clickingPx, 5).map(({ semiMajor, semiMinor }) => semiMinor / semiMajor);
  expect(ratios.toSorted((a, b) => b - a)).toEqual(ratios);
  expect(ratios[0]).toBeGreaterThan(0.995);
  // Ten clicks tell a flatness to 2 px root(2 / 10) over 150 px: 0.6 %, and so the ratio of the axes to twice that.
  expect(ratios[4]).toBeGreaterThan(1 - 0.05);
});

test('a flat rim is as flat as it looks, give or take the clicks', () => {
  const { rim } = seenCircle(() => 0.7);
  const ellipse = fitEllipse(rim);
  if (!ellipse) throw new Error('no ellipse');
  const ratios = possibleEllipses(ellipse, rim, 0.5, 5).map(({ semiMajor, semiMinor }) => semiMinor / semiMajor);
  const seen = ellipse.semiMinor / ellipse.semiMajor;
  for (const ratio of ratios) expect(Math.abs(ratio - seen)).toBeLessThan(0.01);
  expect(ratios[2]).toBeCloseTo(seen, 3);
});
