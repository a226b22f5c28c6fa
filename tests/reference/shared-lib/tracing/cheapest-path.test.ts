import { createRequire } from 'node:module';
import type loadHighsType from 'highs';
import { expect, test } from 'vitest';
import { cheapestPath } from '../../../../shared-lib/tracing/cheapest-path.ts';
import { seeded } from './drawn-surface.ts';

const loadHighs: typeof loadHighsType.default = createRequire(import.meta.url)('highs');
const highs = await loadHighs();

interface Grid {
  readonly cost: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** The definition once more: the mean of both pixels, five to go straight and seven across a corner, rounded down. */
const stepCost = ({ cost, width }: Grid, from: number, to: number): number => {
  const isStraight = from % width === to % width || Math.floor(from / width) === Math.floor(to / width);
  return Math.floor((((cost[from] ?? 0) + (cost[to] ?? 0)) * (isStraight ? 5 : 7)) / 2);
};

const neighbours = ({ width, height }: Grid, at: number): number[] => {
  const [x, y] = [at % width, Math.floor(at / width)];
  return [-1, 0, 1].flatMap((dy) =>
    [-1, 0, 1].flatMap((dx) => {
      const isInside = x + dx >= 0 && x + dx < width && y + dy >= 0 && y + dy < height;
      return isInside && (dx !== 0 || dy !== 0) ? [at + dy * width + dx] : [];
    }),
  );
};

/** The independent answer: the farthest apart two pixels can be pulled with no step stretched (HiGHS, linear programming). */
const leastCost = (grid: Grid, start: number, end: number): number => {
  const rows = Array.from(grid.cost.keys()).flatMap((at) =>
    neighbours(grid, at).map((to) => ` s${at}_${to}: d${to} - d${at} <= ${stepCost(grid, at, to)}`),
  );
  const problem = `Maximize\n obj: d${end}\nSubject To\n${rows.join('\n')}\nBounds\n d${start} = 0\nEnd`;
  return Math.round(highs.solve(problem).ObjectiveValue);
};

test('the way costs what linear programming says the cheapest costs, and is one way', () => {
  const random = seeded(11);
  for (let round = 0; round < 25; round += 1) {
    const [width, height] = [4 + Math.floor(7 * random()), 4 + Math.floor(7 * random())];
    // Mostly dear, with cheap lines: as a photo has it.
    const cost = Uint8Array.from({ length: width * height }, () =>
      random() < 0.3 ? 14 : 1 + Math.floor(255 * random()),
    );
    const grid = { cost, width, height };
    const start = Math.floor(random() * cost.length);
    const end = (start + 1 + Math.floor(random() * (cost.length - 1))) % cost.length;
    const path = cheapestPath(cost, width, height, start, end) ?? new Int32Array();
    expect(path[0]).toBe(start);
    expect(path.at(-1)).toBe(end);
    let sum = 0;
    for (let i = 1; i < path.length; i += 1) {
      const [from = -1, to = -1] = [path[i - 1], path[i]];
      expect(neighbours(grid, from)).toContain(to);
      sum += stepCost(grid, from, to);
    }
    expect(sum, `${width} x ${height} from ${start} to ${end}`).toBe(leastCost(grid, start, end));
  }
});
