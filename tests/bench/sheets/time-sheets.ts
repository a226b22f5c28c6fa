import { computeSheet } from '../../../shared-lib/sheets/compute.ts';
import { minimumZone } from '../../../shared-lib/sheets/flatness/minimum-zone.ts';
import type { Vector } from '../../../shared-lib/sheets/flatness/vectors.ts';
import { sheets } from '../../../shared-lib/sheets/index.ts';

/**
 * What the sheets cost: the minimum zone of 400 points (floor 50 ms) and each sheet filled with its usual values (floor
 * 5 ms each). Prints one JSON object; medians of many runs, because the machine is shared.
 */
const runs = 25;

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

function time(work: () => unknown): { medianMs: number; worstMs: number } {
  work();
  const taken = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return { medianMs: Number(median(taken).toFixed(3)), worstMs: Number(Math.max(...taken).toFixed(3)) };
}

let seed = 7;
const noise = (): number => {
  seed = (seed * 1103515245 + 12345) % 2147483648;
  return seed / 2147483648 - 0.5;
};
const grid = (height: (x: number, y: number) => number): Vector[] =>
  Array.from({ length: 400 }, (_, k): Vector => {
    const [x, y] = [(k % 20) * 30, Math.floor(k / 20) * 10];
    return [x, y, height(x, y)];
  });

const flatness = {
  'rough face': grid(() => 0.05 * noise()),
  'bowl, every point on the hull': grid((x, y) => 1e-6 * ((x - 285) ** 2 + (y - 95) ** 2)),
  'read by feelers, most alike': grid(() => Math.round(2 * noise()) * 0.05),
  'tilted and rough': grid((x, y) => 0.001 * x - 0.002 * y + 0.05 * noise()),
};

const usual = sheets.map((sheet) => {
  const inputs = Object.fromEntries(
    Object.entries(sheet.inputs).map(([id, spec]): [string, string] => {
      if (spec.kind === 'text') return [id, 'as it is'];
      if (spec.kind === 'choice') return [id, spec.answers[0] ?? ''];
      const [least, most] = spec.usual ?? spec.possible;
      const near = () => `${(least + most) / 2 + (most - least) * 0.01 * noise()} ± ${(most - least) * 0.001}`;
      if (spec.kind === 'number') return [id, near()];
      if (spec.kind === 'rows') {
        const row = () => Array.from({ length: spec.columns ?? 4 }, near).join(' / ');
        return [id, Array.from({ length: 5 }, row).join('; ')];
      }
      return [id, Array.from({ length: 6 }, near).join(' / ')];
    }),
  );
  return [
    sheet.name,
    time(() => computeSheet(sheet, { inputs, conditions: { system: '12 V', altitude: '300 m' } })),
  ] as const;
});

process.stdout.write(
  `${JSON.stringify(
    {
      'minimum zone of 400 points': Object.fromEntries(
        Object.entries(flatness).map(([name, points]) => [name, time(() => minimumZone(points))]),
      ),
      'each sheet, every field typed with ±': Object.fromEntries(usual),
    },
    null,
    2,
  )}\n`,
);
