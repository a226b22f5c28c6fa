import type { Command } from 'commander';
import { z } from 'zod';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { computeSheet } from '../../../shared-lib/sheets/compute.ts';
import { sheetOf } from '../../../shared-lib/sheets/index.ts';
import type { SheetInput, SheetOutcome } from '../../../shared-lib/sheets/outcome.ts';
import type { Sheet } from '../../../shared-lib/sheets/sheet-kind.ts';
import { toResultLines } from '../../../shared-lib/sheets/to-result-lines.ts';
import { answer, run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';

const number = z.union([z.string(), z.number()]).transform(String);
const row = z.array(number).transform((values) => values.join(' / '));
/** As it would be typed; a list or a table may stand as one. */
const typed = z.union([number, row, z.array(row).transform((rows) => rows.join('; '))]);
const fields = z.record(z.string(), typed);

const limit = z.strictObject({
  min: number.optional(),
  max: number.optional(),
  badBelow: number.optional(),
  badAbove: number.optional(),
  source: z.enum(['maker', 'machine-shop', 'common-practice', 'none']).default('maker'),
  page: z.string().optional(),
});

const Given = z
  .object({
    inputs: fields.optional(),
    conditions: fields.optional(),
    limits: z.record(z.string(), limit).optional(),
    results: fields.optional(),
    at: z.string().optional(),
    instrument: z.strictObject({ resolution: z.string() }).optional(),
    notTakenBecause: z.string().optional(),
  })
  .catchall(typed);

const named = new Set(['inputs', 'conditions', 'limits', 'results', 'at', 'instrument', 'notTakenBecause']);

/** Fields that stand outside `inputs` and `conditions` find their own place by name. */
const inPlace = (sheet: Sheet, given: z.infer<typeof Given>): SheetInput => {
  const loose = Object.entries(given).filter(([id]) => !named.has(id)) as [string, string][];
  const isCondition = (id: string) => Object.hasOwn(sheet.conditions, id) && !Object.hasOwn(sheet.inputs, id);
  const { inputs, conditions, limits, results, at, instrument, notTakenBecause } = given;
  return {
    inputs: { ...Object.fromEntries(loose.filter(([id]) => !isCondition(id))), ...inputs },
    conditions: { ...Object.fromEntries(loose.filter(([id]) => isCondition(id))), ...conditions },
    limits: Object.fromEntries(
      Object.entries(limits ?? {}).map(([of, edges]) => [
        of,
        { source: edges.source, ...Object.fromEntries(Object.entries(edges).filter(([, text]) => text !== undefined)) },
      ]),
    ),
    ...(results === undefined ? {} : { results }),
    ...(at === undefined ? {} : { at }),
    ...(instrument === undefined ? {} : { instrument }),
    ...(notTakenBecause === undefined ? {} : { notTakenBecause }),
  };
};

const readGiven = (text: string): z.infer<typeof Given> => {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    throw new AppError('invalid-input', { issues: [{ path: '--json', message: String(error) }] });
  }
  const read = Given.safeParse(value);
  if (read.success) return read.data;
  throw new AppError('invalid-input', {
    issues: read.error.issues.map(({ path, message }) => ({ path: path.join('.'), message })),
  });
};

const unknownSheet = (name: string): AppError =>
  new AppError('invalid-input', {
    issues: [{ path: 'name', message: `no sheet is called “${name}”; \`wm sheets\` lists them` }],
  });

const shown = (outcome: SheetOutcome) => {
  const lines = toResultLines(outcome);
  return {
    ...outcome,
    results: outcome.results.map((result, index) => ({
      ...result,
      shown: lines[index]?.value ?? null,
      uncertaintyShown: lines[index]?.uncertainty ?? null,
      limitShown: lines[index]?.limit ?? null,
    })),
  };
};

const sentences = (outcome: SheetOutcome): string[] => {
  const lines = toResultLines(outcome);
  return [
    `${outcome.name}: ${outcome.verdict}${outcome.notTakenBecause === null ? '' : `, ${outcome.notTakenBecause}`}`,
    ...outcome.results.map((result, index) => {
      const line = lines[index];
      const { limit } = result;
      const edges = Object.entries(line?.limit ?? {}).filter(([edge]) => edge !== 'source' && edge !== 'page');
      return [
        `  ${result.of}: ${line?.value ?? '–'}`,
        line?.uncertainty == null ? '' : ` ± ${line.uncertainty}`,
        `, ${result.verdict}`,
        edges.length === 0 ? '' : ` against ${edges.map(([edge, text]) => `${edge} ${text}`).join(', ')}`,
        limit === null ? '' : ` (${limit.source}${limit.page === undefined ? '' : `, ${limit.page}`})`,
        result.needs.length === 0 ? '' : `; needs ${result.needs.join(', ')}`,
        result.voidBecause === null ? '' : `; ${result.voidBecause}`,
      ].join('');
    }),
    ...outcome.problems.map(({ input, what }) => `  ${input}: ${what}`),
    ...outcome.says.map((sentence) => `  ${sentence}`),
  ];
};

export const addSheet = (program: Command): void => {
  program
    .command('sheet')
    .description('computes one measurement sheet from what was typed')
    .argument('<name>', "the sheet's name, as `wm sheets` lists it")
    .requiredOption(
      '--json <fields>',
      'the fields as JSON: {"radius":"200 mm","arc":"64 mm"}, with "conditions", "limits", "results" and "at" where needed',
    )
    .option('--words', 'the outcome in lines instead of JSON', false)
    .action((name: string, { json, words }: { json: string; words: boolean }) =>
      run(!words, async () => {
        const sheet = sheetOf(name);
        if (sheet === null) throw unknownSheet(name);
        const outcome = computeSheet(sheet, inPlace(sheet, readGiven(json)));
        answer(!words, shown(outcome), sentences(outcome));
        return outcome.problems.some(({ weight }) => weight !== 'odd') ? exitCodes.partly : exitCodes.done;
      }),
    );
};
