import { expect, test } from 'vitest';
import { measureShape } from '../../../../shared-lib/calibration/measure.ts';
import { seeded } from '../tracing/drawn-surface.ts';
import { type SimulatedPhoto, simulate, simulateCard } from './simulated-photos.ts';

/**
 * Two standard uncertainties of a normal quantity hold 95.45 % (GUM G.1.3). Over 2,000 photos the share that is found
 * scatters by 0.5 %, so 93 to 97 % is what an honest uncertainty gives, and neither a bold nor a timid one.
 */
const photos = 2000;

const heldPercent = (draw: (random: () => number) => SimulatedPhoto, seed: number, count = photos): number => {
  const random = seeded(seed);
  let held = 0;
  for (let i = 0; i < count; i += 1) {
    const { calibration, shape, trueMm, lens } = draw(random);
    const { value, expanded } = measureShape(calibration, shape);
    if (Math.abs(value * lens - trueMm) <= (expanded ?? 0)) held += 1;
  }
  return (100 * held) / count;
};

test.each([
  ['known-points', 21],
  ['known-length', 22],
] as const)(
  '%s: the k = 2 interval holds the true length in 93 to 97 of 100 photos',
  (method, seed) => {
    const percent = heldPercent((random) => simulate(method, random), seed);
    expect(percent).toBeGreaterThanOrEqual(93);
    expect(percent).toBeLessThanOrEqual(97);
  },
  300_000,
);

test('known-circle: it holds it at least as often; which side is nearer is one of two, so the interval is a wide one', () => {
  expect(heldPercent((random) => simulate('known-circle', random), 23)).toBeGreaterThanOrEqual(93);
}, 300_000);

test.each([
  ['a finger', 1.2, 24, photos],
  // Then what is left is the card itself: paper, print and lens.
  ['a tracer', 0.1, 25, photos / 2],
] as const)(
  'a calibration card, a bent lens, marks set by %s: the k = 2 interval holds the true length in 93 to 97 of 100 photos',
  (_, clickingPx, seed, count) => {
    const percent = heldPercent((random) => simulateCard(random, clickingPx), seed, count);
    expect(percent).toBeGreaterThanOrEqual(93);
    expect(percent).toBeLessThanOrEqual(97);
  },
  300_000,
);
