/**
 * The tracer on photographs with known cracks: `npm run bench -- tracing`. Exact and rough clicks, one corrective click, the
 * large pictures, every source traced with settings chosen on the other sources alone, and what a trace takes beside a
 * bare pass over the same pixels.
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
  /** Processor time of this thread: the machine may be busy with others. */
  readonly cpuMs: number;
  readonly farthest: XY;
}

export function traceCase(
  grey: GreyImage,
  points: readonly XY[],
  settings: TraceSettings = traceSettings,
): { trace: Trace; cpuMs: number } {
  const began = process.threadCpuUsage();
  const trace = traceLine(cropGrey(grey, traceBox(points, grey)), { points }, settings);
  const { user, system } = process.threadCpuUsage(began);
  return { trace, cpuMs: (user + system) / 1000 };
}

export function rowOf(
  id: string,
  grey: GreyImage,
  points: readonly XY[],
  truth: readonly XY[],
  settings?: TraceSettings,
): Row {
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
  [190, 210].flatMap((rodPx) => [0.04, 0.06].map((lineCost) => ({ straightPenalty, rodPx, lineCost }))),
);

const thirdSlowest = (values: readonly number[]): number => values.toSorted((a, b) => b - a)[2] ?? Number.NaN;

/** Time on this thread, quiet or not: five turns each, the quickest of both counted. */
function timeBesideFloor(name: string, pictures: readonly { grey: GreyImage; points: readonly XY[] }[]): void {
  const times = pictures.map(({ grey, points }) => {
    let oursMs = Number.POSITIVE_INFINITY;
    let floorMs = Number.POSITIVE_INFINITY;
    const box = cropGrey(grey, traceBox(points, grey));
    for (let round = 0; round < 5; round += 1) {
      oursMs = Math.min(oursMs, traceCase(grey, points).cpuMs);
      floorMs = Math.min(floorMs, barePassMs(box.data));
    }
    return { oursMs, floorMs };
  });
  const ours = times.map(({ oursMs }) => oursMs);
  // Of medians: a single pass may be shorter than the clock's tick.
  const ratio = median(ours) / median(times.map(({ floorMs }) => floorMs));
  console.log(
    `${name}: median ${median(ours).toFixed(0)} ms, third slowest ${thirdSlowest(ours).toFixed(0)}, slowest ${Math.max(...ours).toFixed(0)} ms of this thread; against thirteen bare multiplications a pixel ${ratio.toFixed(1)} x`,
  );
}

/** The floor: every pixel's weighted sum of thirteen neighbours, once. Several times over, as the clock is coarse. */
function barePassMs(data: Float32Array): number {
  const sums = new Float32Array(data.length);
  const began = process.threadCpuUsage();
  for (let turn = 0; turn < 10; turn += 1) {
    for (let i = 6; i < data.length - 6; i += 1) {
      let sum = 0;
      for (let k = -6; k <= 6; k += 1) sum += 0.077 * (data[i + k] as number);
      sums[i] = sum;
    }
  }
  const { user, system } = process.threadCpuUsage(began);
  return (user + system) / 10_000;
}

/** Every source traced with the settings that were best on all the other sources. */
function leaveOneSourceOut(cases: readonly CrackCase[]): Row[] {
  const results = variants.map((variant) =>
    cases.map(({ id, grey, exact, truth }) => rowOf(id, grey, exact, truth, { ...traceSettings, ...variant })),
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
  const exact = cases.map(({ id, grey, exact: clicks, truth }) => rowOf(id, grey, clicks, truth));
  console.log(summary('exact clicks', exact));
  for (const source of new Set(cases.map((crack) => crack.source))) {
    console.log(`  ${source}: ${within(exact.filter((_, i) => cases[i]?.source === source)).toFixed(1)} %`);
  }
  console.log(
    summary(
      'rough clicks',
      cases.map(({ id, grey, rough, truth }) => rowOf(id, grey, rough, truth)),
    ),
  );
  const corrected = cases.map(({ id, grey, exact: [start, end], truth }, index) => {
    const first = exact[index];
    return first && first.meanPx > 2 ? rowOf(id, grey, [start, first.farthest, end], truth) : first;
  });
  console.log(
    summary(
      'one corrective click',
      corrected.filter((one) => one !== undefined),
    ),
  );
  timeBesideFloor(
    'time a trace',
    cases.map(({ grey, exact: points }) => ({ grey, points })),
  );
  const large: Row[] = [];
  for await (const { file, grey, traces } of readLarge()) {
    timeBesideFloor(
      `time a trace in ${file}`,
      traces.map(({ clicks }) => ({ grey, points: clicks })),
    );
    for (const { id, clicks, truth } of traces) large.push(rowOf(`${file} ${id}`, grey, clicks, truth));
  }
  console.log(summary('large pictures', large));
  console.log('leaving one source out:');
  console.log(summary('leaving one source out', leaveOneSourceOut(cases)));
}

if (import.meta.main) await evaluate();
