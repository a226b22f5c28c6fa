import { expect, test } from 'vitest';
import { seeded } from '../tracing/drawn-surface.ts';
import { heldByClass } from './held.ts';
import { type SimulatedPhoto, simulate, simulateCard } from './simulated-photos.ts';

/**
 * Two standard uncertainties of a normal quantity hold 95.45 % (GUM G.1.3), and so does what is stated where the errors
 * are not normal. Over 2,000 photos the share that is found scatters by 0.5 %, so 93 to 97 % is what an honest uncertainty
 * gives, and neither a bold nor a timid one.
 */
const photos = 2000;

type Draw = (random: () => number) => SimulatedPhoto;
const ways: readonly [string, Draw, number, number][] = [
  ['known points', (random) => simulate('known-points', random), 21, photos],
  ['a known length', (random) => simulate('known-length', random), 22, photos],
  ['a known circle', (random) => simulate('known-circle', random), 23, photos],
  ['a calibration card, a bent lens, marks set by a finger', (random) => simulateCard(random, 1.2), 24, photos],
  // Then what is left is the card itself: paper, print and lens.
  ['a calibration card, a bent lens, marks set by a tracer', (random) => simulateCard(random, 0.1), 25, photos / 2],
];

test.each(ways)(
  '%s: the interval holds the true length in 93 to 97 of 100 photos, and falls apart in no class of them',
  (_, draw, seed, count) => {
    const random = seeded(seed);
    const { all, classes } = heldByClass(() => draw(random), count);
    expect(all.percent).toBeGreaterThanOrEqual(93);
    expect(all.percent).toBeLessThanOrEqual(97);
    expect(classes.size).toBeGreaterThanOrEqual(3);
    // Whoever can't see the tilt states one interval for small and large ones: more than 95 % of these, less of those.
    for (const [name, { percent }] of classes) expect(percent, name).toBeGreaterThanOrEqual(88);
  },
  300_000,
);
