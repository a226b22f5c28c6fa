import { resolve } from 'node:path';
import type { Command } from 'commander';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { XY } from '../../../shared-lib/geometry/spaces.ts';
import { coveredShare } from '../../../shared-lib/growing/coverage.ts';
import { growDoubtText } from '../../../shared-lib/growing/doubt-words.ts';
import { growerVersion } from '../../../shared-lib/growing/grow.ts';
import { Measurer } from '../../recorder/measuring/measurer.ts';
import { answer, run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';
import { readPoint } from '../read-point.ts';

interface Options {
  readonly over: readonly XY[];
  readonly zone: readonly XY[];
  readonly json: boolean;
}

const clean = (value: number): number => Number(value.toFixed(3));
const gather = (text: string, before: readonly XY[]): readonly XY[] => [...before, readPoint(text)];

export const addGrow = (program: Command): void => {
  program
    .command('grow')
    .description(
      'finds the outline of a scuffed, scaled or pitted patch from a spot inside; in pixels of the upright image',
    )
    .argument('<image>', 'a photo')
    .argument('<x,y>', 'a spot inside the patch', readPoint)
    .option('--over <x,y>', 'another point of a line run over the patch; several times, in order', gather, [])
    .option('--zone <x,y>', 'a corner of the zone that the patch is a share of; three times or more', gather, [])
    .option('--json', 'as JSON', false)
    .action((image: string, spot: XY, { over, zone, json }: Options) =>
      run(json, async () => {
        const measurer = new Measurer();
        try {
          if (zone.length === 1 || zone.length === 2)
            throw new AppError('wrong-point-count', { shape: 'area', fewest: 3, most: 5000 });
          const request = { points: [spot, ...over] };
          const { grown, photo, growingMs } = await measurer.run({ kind: 'grow', path: resolve(image), request });
          if (!grown) throw new AppError('nothing-to-grow', {});
          const share = zone.length < 3 ? null : coveredShare([grown.outline], zone);
          const value = {
            image: photo,
            grower: growerVersion,
            growingMs: Math.round(growingMs),
            unsure: grown.unsure,
            doubts: grown.doubts,
            areaPx2: clean(grown.areaPx2),
            borderPx: clean(grown.borderPx),
            coveragePercent: share === null ? null : clean(100 * share),
            outline: grown.outline.map(({ x, y }) => [clean(x), clean(y)]),
            faint: grown.faint,
          };
          answer(json, value, [
            `${value.areaPx2.toFixed(0)} square pixels${share === null ? '' : `, ${(100 * share).toFixed(1)} % of the zone`}`,
            grown.unsure ? `Not sure: ${grown.doubts.map(growDoubtText).join('; ')}.` : 'Sure of the border.',
          ]);
          return exitCodes.done;
        } finally {
          measurer.close();
        }
      }),
    );
};
