import type { ReadInputs } from '../read-inputs.ts';
import { type CheckProblem, type ComputedLine, sheet } from '../sheet-kind.ts';
import { cutBeyondMm, localSpanMm, stepMm } from './limits.ts';
import { type MinimumZone, minimumZone } from './minimum-zone.ts';
import { flatnessSheet } from './sheet.ts';
import type { Vector } from './vectors.ts';

type Given = ReadInputs<keyof typeof flatnessSheet.inputs | keyof typeof flatnessSheet.conditions>;

function pointsOf(given: Given): readonly Vector[] | null {
  const rows = given.rows('points');
  if (rows !== null) return rows.map(([x = 0, y = 0, z = 0]): Vector => [x, y, z]);
  const [along, across, heights] = [given.list('x'), given.list('y'), given.rows('heights')];
  if (along === null || across === null || heights === null) return null;
  return heights.flatMap((row, j) =>
    row.map((height, i): Vector => [along[i] ?? Number.NaN, across[j] ?? Number.NaN, height]),
  );
}

export const flatness = sheet(
  flatnessSheet,
  (given) => {
    const lines: ComputedLine<keyof typeof flatnessSheet.results>[] = [];
    const says: string[] = [];
    const points = pointsOf(given);
    const zone = points === null ? null : minimumZone(points);
    if (zone !== null) {
      const off = given.uncertainty('points') ?? given.uncertainty('heights');
      lines.push({
        of: 'flatness',
        value: zone.width,
        crossCheck: {
          value: zone.leastSquares.peakToValley,
          formula: 'highest less lowest distance from the least-squares plane',
        },
        // Of the points that hold the zone the weights of each plane sum to one, so their squares sum to two at most.
        ...said(off, Math.SQRT2),
      });
      const steepest = points === null ? null : steepestStep(points, zone);
      if (steepest !== null) lines.push({ of: 'steepest in 100 mm', value: steepest });
    } else if (points !== null) says.push('Flatness needs three points or more that do not lie on one line.');
    const heights = given.rows('heights');
    if (heights !== null) {
      const [first, last] = [heights[0], heights.at(-1)];
      const [a, b, c, d] = [first?.[0], first?.at(-1), last?.[0], last?.at(-1)];
      if (heights.length > 1 && a !== undefined && b !== undefined && c !== undefined && d !== undefined) {
        lines.push({ of: 'twist', value: (a + d) / 2 - (b + c) / 2 });
      }
    }
    const straightedge = given.list('straightedge');
    const overall = straightedge === null ? null : Math.max(...straightedge);
    if (overall !== null) lines.push({ of: 'overall', value: overall, ...said(given.uncertainty('straightedge'), 1) });
    const local = given.list('local');
    if (local !== null) lines.push({ of: 'local', value: Math.max(...local), ...said(given.uncertainty('local'), 1) });
    const thickness = given.number('thickness');
    const flat = zone?.width ?? overall;
    if (thickness !== null && flat !== null) {
      lines.push({ of: 'thickness after a skim', value: thickness - (flat + cutBeyondMm) });
      says.push('After a skim check nozzle protrusion, valve depth and the gasket’s grade.');
    }
    return {
      lines,
      says,
      ...(given.word('clamped') === 'clamped' ? { void: 'the part was clamped' } : {}),
      ...(zone === null || points === null
        ? {}
        : {
            picture: {
              kind: 'surface',
              zoneMm: zone.width,
              points: points.map(([xMm, yMm], index) => ({ xMm, yMm, heightMm: zone.heights[index] ?? 0 })),
            },
          }),
    };
  },
  (given) => {
    const problems: CheckProblem[] = [];
    const [along, across, heights] = [given.list('x'), given.list('y'), given.rows('heights')];
    if (heights !== null && along !== null && heights.some((row) => row.length !== along.length)) {
      problems.push({
        input: 'heights',
        weight: 'impossible',
        what: `Each row needs ${along.length} heights, one for each place along.`,
      });
    } else if (heights !== null && across !== null && heights.length !== across.length) {
      problems.push({
        input: 'heights',
        weight: 'impossible',
        what: `There must be ${across.length} rows of heights, one for each place across.`,
      });
    }
    return problems;
  },
);

/** What was typed with ±, as far as it moves the line. */
const said = (off: number | null, times: number) =>
  off === null ? {} : { uncertainty: { value: off * times, from: 'what each reading can be off by' } };

/** The largest slope between points within reach of a straightedge of 150 mm, as a height in 100 mm. */
function steepestStep(points: readonly Vector[], { heights }: MinimumZone): number | null {
  let steepest: number | null = null;
  for (const [i, [x, y]] of points.entries()) {
    for (let j = i + 1; j < points.length; j += 1) {
      const [otherX, otherY] = points[j] ?? [x, y];
      const apart = Math.hypot(otherX - x, otherY - y);
      if (apart === 0 || apart > localSpanMm) continue;
      const step = (Math.abs((heights[j] ?? 0) - (heights[i] ?? 0)) / apart) * stepMm;
      if (steepest === null || step > steepest) steepest = step;
    }
  }
  return steepest;
}
