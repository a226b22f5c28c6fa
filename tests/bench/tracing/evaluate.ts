/**
 * The tracer on photographs with known cracks: `node tests/bench/tracing/evaluate.ts`. Exact and rough clicks, one
 * corrective click, the large pictures, and every source traced with settings chosen on the other sources alone.
 */
import type { XY } from '../../../shared-lib/geometry/spaces.ts';
import { cropGrey, type GreyImage } from '../../../shared-lib/tracing/grey.ts';
import { type TraceSettings, traceSettings } from '../../../shared-lib/tracing/settings.ts';
import { type Trace, traceBox, traceLine } from '../../../shared-lib/tracing/trace.ts';
import { type CrackCase, hasCracks, readCracks, readLarge } from './crack-set.ts';
import { lineDistance } from './line-distance.ts';

interface Row {
  readonly id: string;
  readonly meanPx: number;
  readonly unsure: boolean;
  /** Processor time of this process: the machine may be busy with others. */
  readonly cpuMs: number;
  readonly farthest: XY;
}

export function traceCase(
  grey: GreyImage,
  points: readonly XY[],
  settings: TraceSettings = traceSettings,
): { trace: Trace; cpuMs: number } {
  const began = process.cpuUsage();
  const trace = traceLine(cropGrey(grey, traceBox(points, grey)), { points }, settings);
  const { user, system } = process.cpuUsage(began);
  return { trace, cpuMs: (user + system) / 1000 };
}

function row(id: string, grey: GreyImage, points: readonly XY[], truth: readonly XY[], settings?: TraceSettings): Row {
  const { trace, cpuMs } = traceCase(grey, points, settings);
  return { id, cpuMs, unsure: trace.unsure, ...lineDistance(truth, trace.centre) };
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
const within = (rows: readonly Row[]): number => (100 * rows.filter(({ meanPx }) => meanPx <= 2).length) / rows.length;

export function summary(name: string, rows: readonly Row[]): string {
  const misses = rows.filter(({ meanPx }) => meanPx > 2);
  const hits = rows.filter(({ meanPx }) => meanPx <= 2);
  const mean = rows.reduce((sum, { meanPx }) => sum + meanPx, 0) / rows.length;
  return [
    `${name}: ${rows.length} cases, within 2 px ${within(rows).toFixed(1)} %, mean ${mean.toFixed(2)} px, median ${median(rows.map(({ meanPx }) => meanPx)).toFixed(2)} px`,
    `misses flagged unsure ${misses.filter(({ unsure }) => unsure).length} of ${misses.length}, hits flagged ${hits.filter(({ unsure }) => unsure).length} of ${hits.length}`,
    `median ${median(rows.map(({ cpuMs }) => cpuMs)).toFixed(0)} ms of processor, most ${Math.max(...rows.map(({ cpuMs }) => cpuMs)).toFixed(0)} ms`,
    ...misses.map(({ id, meanPx, unsure }) => `  ${id} ${meanPx.toFixed(1)} px${unsure ? ', flagged' : ''}`),
  ].join('\n  ');
}

const variants: readonly Partial<TraceSettings>[] = [0.85, 0.9, 0.95].flatMap((straightPenalty) =>
  [170, 210].flatMap((rodPx) => [0.04, 0.06].map((lineCost) => ({ straightPenalty, rodPx, lineCost }))),
);

/** Every source traced with the settings that were best on all the other sources. */
function leaveOneSourceOut(cases: readonly CrackCase[]): Row[] {
  const results = variants.map((variant) =>
    cases.map(({ id, grey, exact, truth }) => row(id, grey, exact, truth, { ...traceSettings, ...variant })),
  );
  const scoreOn = (rows: readonly Row[], chosen: (index: number) => boolean): number => {
    const some = rows.filter((_, index) => chosen(index));
    return within(some) - some.reduce((sum, { meanPx }) => sum + Math.min(20, meanPx), 0) / some.length;
  };
  return [...new Set(cases.map(({ source }) => source))].flatMap((source) => {
    const others = (index: number): boolean => cases[index]?.source !== source;
    const scores = results.map((rows) => scoreOn(rows, others));
    const best = scores.indexOf(Math.max(...scores));
    console.log(`  without ${source}: ${JSON.stringify(variants[best])}`);
    return (results[best] ?? []).filter((_, index) => !others(index));
  });
}

async function evaluate(): Promise<void> {
  if (!hasCracks) {
    console.log('Skipped: the photographs of cracks are not here (../shared/data/cracks).');
    return;
  }
  const cases = await readCracks();
  for (const { grey, exact } of cases.slice(0, 3)) traceCase(grey, exact);
  const exact = cases.map(({ id, grey, exact: clicks, truth }) => row(id, grey, clicks, truth));
  console.log(summary('exact clicks', exact));
  for (const source of new Set(cases.map((crack) => crack.source))) {
    console.log(`  ${source}: ${within(exact.filter((_, i) => cases[i]?.source === source)).toFixed(1)} %`);
  }
  console.log(
    summary(
      'rough clicks',
      cases.map(({ id, grey, rough, truth }) => row(id, grey, rough, truth)),
    ),
  );
  const corrected = cases.map(({ id, grey, exact: [start, end], truth }, index) => {
    const first = exact[index];
    return first && first.meanPx > 2 ? row(id, grey, [start, first.farthest, end], truth) : first;
  });
  console.log(
    summary(
      'one corrective click',
      corrected.filter((one) => one !== undefined),
    ),
  );
  const large: Row[] = [];
  for await (const { file, grey, traces } of readLarge()) {
    for (const { id, clicks, truth } of traces) large.push(row(`${file} ${id}`, grey, clicks, truth));
  }
  console.log(summary('large pictures', large));
  console.log('leaving one source out:');
  console.log(summary('leaving one source out', leaveOneSourceOut(cases)));
}

if (import.meta.main) await evaluate();
