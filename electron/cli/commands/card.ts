import { resolve } from 'node:path';
import { type Command, InvalidArgumentError, Option } from 'commander';
import { cardCalibration } from '../../../shared-lib/calibration/card/card-calibration.ts';
import { checkBar } from '../../../shared-lib/calibration/card/check-bar.ts';
import { mapPlane } from '../../../shared-lib/calibration/plane-mapping.ts';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { Measurer } from '../../recorder/measuring/measurer.ts';
import { Typesetter } from '../../recorder/reports/typeset.ts';
import { writeWholeFile } from '../../recorder/reports/write-file.ts';
import { answer, run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';

const clean = (value: number): number => Number(value.toFixed(3));

const readBar = (text: string): number => {
  const mm = Number(text.replace(',', '.'));
  if (mm >= checkBar.least && mm <= checkBar.most) return mm;
  throw new InvalidArgumentError(
    `The ${checkBar.mm} mm bar has to read between ${checkBar.least} and ${checkBar.most} mm; else the sheet was printed to fit the page.`,
  );
};

const print = (out: string, paper: 'a4' | 'us-letter', json: boolean) =>
  run(json, async () => {
    const typesetter = new Typesetter();
    try {
      const path = resolve(out);
      await writeWholeFile(path, await typesetter.card(paper));
      answer(json, { path }, [`${path}: print at 100 %, and check its bars with a rule.`]);
      return exitCodes.done;
    } finally {
      await typesetter.close();
    }
  });

const find = (image: string, barMm: number | null, json: boolean) =>
  run(json, async () => {
    const measurer = new Measurer();
    try {
      const path = resolve(image);
      const { card, photo, findingMs } = await measurer.run({ kind: 'find-card', path });
      if (!card) throw new AppError('card-not-found', {});
      const calibration = cardCalibration(card, photo, { barMm, plane: '' });
      const { residualsPx, bend } = mapPlane(calibration);
      const rmsPx = Math.sqrt(residualsPx.reduce((sum, r) => sum + r * r, 0) / residualsPx.length);
      const value = {
        image: photo,
        card: card.face,
        findingMs: Math.round(findingMs),
        outline: card.outline.map(({ x, y }) => [clean(x), clean(y)]),
        points: card.points.map(({ px, mm }) => ({ px: [clean(px.x), clean(px.y)], mm: [clean(mm.x), clean(mm.y)] })),
        rmsPx: clean(rmsPx),
        bend: bend === null ? null : Number(bend.toFixed(5)),
        /** For `wm measure`. */
        calibration,
      };
      answer(json, value, [
        `The ${card.face} card, ${card.points.length} points, fitting to ${rmsPx.toFixed(2)} px.`,
        ...(barMm === null
          ? [`Say with --bar what a rule reads on its ${checkBar.mm} mm bar; till then it may be 1 % off.`]
          : []),
      ]);
      return exitCodes.done;
    } finally {
      measurer.close();
    }
  });

export const addCard = (program: Command): void => {
  const card = program
    .command('card')
    .description('writes the sheet with the calibration cards as PDF, to be printed at 100 %')
    .enablePositionalOptions()
    // Not required by the library: it would be asked of `card find` too.
    .option('--out <file.pdf>', 'where to write it')
    .addOption(new Option('--paper <size>', 'the paper').choices(['a4', 'us-letter']).default('a4'))
    .option('--json', 'as JSON', false)
    .action(({ out, paper, json }: { out?: string; paper: 'a4' | 'us-letter'; json: boolean }) =>
      out === undefined
        ? card.error("error: required option '--out <file.pdf>' not specified")
        : print(out, paper, json),
    );
  card
    .command('find')
    .description('finds a printed card in a photo: its points in pixels of the upright image, and in millimetres')
    .argument('<image>', 'a photo')
    .option('--bar <mm>', `what a rule reads on the sheet's ${checkBar.mm} mm bar`, readBar)
    .option('--json', 'as JSON', false)
    .action((image: string, { bar, json }: { bar?: number; json: boolean }) => find(image, bar ?? null, json));
};
