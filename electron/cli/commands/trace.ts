import { resolve } from 'node:path';
import type { Command } from 'commander';
import type { XY } from '../../../shared-lib/geometry/spaces.ts';
import { doubtText } from '../../../shared-lib/tracing/doubt-words.ts';
import { tracerVersion } from '../../../shared-lib/tracing/settings.ts';
import { Measurer } from '../../recorder/measuring/measurer.ts';
import { answer, run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';
import { readPoint } from '../read-point.ts';

interface Options {
  readonly via: readonly XY[];
  readonly scribble: readonly XY[];
  readonly json: boolean;
}

const rounded = (value: number, step: number): number => Math.round(value / step) * step;
const clean = (value: number): number => Number(rounded(value, 0.001).toFixed(3));
const gather = (text: string, before: readonly XY[]): readonly XY[] => [...before, readPoint(text)];

export const addTrace = (program: Command): void => {
  program
    .command('trace')
    .description('follows a crack between two clicks; everything in pixels of the upright image')
    .argument('<image>', 'a photo')
    .argument('<x1,y1>', 'where the crack begins', readPoint)
    .argument('<x2,y2>', 'where it ends', readPoint)
    .option('--via <x,y>', 'a way point; may be given several times, in order', gather, [])
    .option('--scribble <x,y>', 'a point of a rough line to stay near; several times, in order', gather, [])
    .option('--json', 'as JSON', false)
    .action((image: string, start: XY, end: XY, { via, scribble, json }: Options) =>
      run(json, async () => {
        const measurer = new Measurer();
        try {
          const request = { points: [start, ...via, end], ...(scribble.length > 1 ? { scribble } : {}) };
          const { trace, photo, tracingMs } = await measurer.run({ kind: 'trace', path: resolve(image), request });
          const widths = trace.centre
            .flatMap(({ widthPx }) => (widthPx === null ? [] : [widthPx]))
            .sort((a, b) => a - b);
          const value = {
            image: photo,
            tracer: tracerVersion,
            tracingMs: Math.round(tracingMs),
            unsure: trace.unsure,
            doubts: trace.doubts,
            lengthPx: clean(trace.lengthPx),
            medianWidthPx: widths.length === 0 ? null : clean(widths[widths.length >> 1] as number),
            confidence: clean(
              trace.centre.reduce((sum, point) => sum + point.confidence, 0) / Math.max(1, trace.centre.length),
            ),
            centre: trace.centre.map(({ x, y }) => [clean(x), clean(y)]),
            widthPx: trace.centre.map(({ widthPx }) => (widthPx === null ? null : clean(widthPx))),
            pointConfidence: trace.centre.map(({ confidence }) => clean(confidence)),
          };
          answer(json, value, [
            `${value.lengthPx.toFixed(1)} px long, ${value.medianWidthPx === null ? 'width not readable' : `${value.medianWidthPx.toFixed(1)} px wide`}`,
            trace.unsure ? `Not sure: ${trace.doubts.map(doubtText).join('; ')}.` : 'Sure of the way.',
          ]);
          return exitCodes.done;
        } finally {
          measurer.close();
        }
      }),
    );
};
