import { expect, test } from 'vitest';
import { traceLine } from '../../../../shared-lib/tracing/trace.ts';
import { lengthOf, lineDistance } from '../../../bench/tracing/line-distance.ts';
import { drawBare, drawCrack, gaussian, type Surface, seeded } from './drawn-surface.ts';

const surfaces: readonly Surface[] = ['machined', 'rust', 'oil-film'];
const seeds = [1, 2, 3, 4];

test.each(surfaces)(
  'a drawn crack on %s is followed within 2 px, with exact and with rough clicks',
  (surface) => {
    for (const seed of seeds) {
      const { grey, truth } = drawCrack(surface, seed, 2, 45);
      const random = seeded(seed + 100);
      const first = truth[0];
      const last = truth.at(-1);
      if (!first || !last) throw new Error('no line was drawn');
      const shake = (point: { x: number; y: number }) => ({
        x: point.x + 3 * gaussian(random),
        y: point.y + 3 * gaussian(random),
      });
      const exact = traceLine(grey, { points: [first, last] });
      const rough = traceLine(grey, { points: [shake(first), shake(last)] });
      expect(lineDistance(truth, exact.centre).meanPx, `seed ${seed}, exact`).toBeLessThan(2);
      expect(lineDistance(truth, rough.centre).meanPx, `seed ${seed}, rough`).toBeLessThan(2);
      expect(Math.abs(exact.lengthPx / lengthOf(truth) - 1), `seed ${seed}, length`).toBeLessThan(0.06);
    }
  },
  60_000,
);

test('the width of a drawn crack is read where it is wide enough to have one', () => {
  for (const widthPx of [3, 5, 7]) {
    const { grey, truth } = drawCrack('oil-film', 7, widthPx, 70);
    const [first, last] = [truth[0], truth.at(-1)];
    if (!first || !last) throw new Error('no line was drawn');
    const widths = traceLine(grey, { points: [first, last] }).centre.flatMap((point) => point.widthPx ?? []);
    const median = widths.sort((a, b) => a - b)[widths.length >> 1];
    expect(Math.abs((median ?? 0) - widthPx), `${widthPx} px wide`).toBeLessThan(0.6);
  }
});

test.each(surfaces)('where there is no crack on %s, the trace says that it is not sure', (surface) => {
  for (const seed of seeds) {
    const trace = traceLine(drawBare(surface, seed), {
      points: [
        { x: 30, y: 60 },
        { x: 290, y: 240 },
      ],
    });
    expect(trace.unsure, `seed ${seed}`).toBe(true);
  }
});

test('a scribble keeps the trace near it', () => {
  const { grey, truth } = drawCrack('machined', 5, 2, 45);
  const [first, last] = [truth[0], truth.at(-1)];
  if (!first || !last) throw new Error('no line was drawn');
  const scribble = truth.filter((_, index) => index % 12 === 0).map(({ x, y }) => ({ x: x + 4, y: y - 4 }));
  const trace = traceLine(grey, { points: [first, last], scribble });
  expect(lineDistance(truth, trace.centre).meanPx).toBeLessThan(1);
});

test('a way point is passed through', () => {
  const { grey, truth } = drawCrack('rust', 6, 2, 45);
  const [first, last] = [truth[0], truth.at(-1)];
  if (!first || !last) throw new Error('no line was drawn');
  const via = truth[truth.length >> 1] ?? first;
  const trace = traceLine(grey, { points: [first, via, last] });
  const nearest = Math.min(...trace.centre.map(({ x, y }) => Math.hypot(x - via.x, y - via.y)));
  expect(nearest).toBeLessThan(2);
});
