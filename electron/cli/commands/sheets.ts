import type { Command } from 'commander';
import { sheets } from '../../../shared-lib/sheets/index.ts';
import type { InputSpec, Sheet } from '../../../shared-lib/sheets/sheet-kind.ts';
import type { Limit } from '../../../shared-lib/verdict/limit.ts';
import { answer, run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';

const showInput = (id: string, spec: InputSpec) => ({
  id,
  kind: spec.kind,
  label: spec.label,
  ...('unit' in spec
    ? {
        unit: spec.unit,
        possible: { least: spec.possible[0], most: spec.possible[1] },
        ...(spec.usual === undefined ? {} : { usual: { least: spec.usual[0], most: spec.usual[1] } }),
      }
    : {}),
  ...(spec.kind === 'choice' ? { answers: spec.answers } : {}),
  ...(spec.kind === 'rows' ? { row: spec.row, column: spec.column } : {}),
  ...(spec.kind === 'number' && spec.repeats !== undefined ? { ofRepeats: spec.repeats } : {}),
});

const showLimit = (limit: Limit | undefined) => limit ?? null;

const showSheet = (sheet: Sheet) => ({
  id: sheet.id,
  name: sheet.name,
  about: sheet.about,
  version: sheet.version,
  inputs: Object.entries(sheet.inputs).map(([id, spec]) => showInput(id, spec)),
  conditions: Object.entries(sheet.conditions).map(([id, spec]) => showInput(id, spec)),
  results: Object.entries(sheet.results).map(([of, spec]) => ({
    of,
    unit: spec.unit,
    formula: spec.formula,
    from: spec.from ?? null,
    usualLimit: showLimit(spec.usualLimit),
    usualLimitRule: spec.usualLimitRule ?? null,
    suggests: spec.suggests ?? null,
    usualUncertainty: spec.fallback ?? null,
    looksFor: spec.looksFor === true,
    needs: spec.needs,
  })),
  cautions: sheet.cautions,
  shown: sheet.shown,
});

export const addSheets = (program: Command): void => {
  program
    .command('sheets')
    .description('the measurement sheets: what each asks, in which units and ranges, and what it is held against')
    .option('--json', 'as JSON', false)
    .action(({ json }: { json: boolean }) =>
      run(json, async () => {
        answer(
          json,
          sheets.map(showSheet),
          sheets.flatMap((sheet) => [
            sheet.name,
            `  ${sheet.about}`,
            `  asks: ${Object.entries(sheet.inputs)
              .map(([id, spec]) => `${id}${'unit' in spec && spec.unit !== '' ? ` (${spec.unit})` : ''}`)
              .join(', ')}`,
          ]),
        );
        return exitCodes.done;
      }),
    );
};
