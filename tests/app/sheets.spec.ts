import type { Layout } from '../../shared-lib/model/layout.ts';
import { sheetOf, sheets } from '../../shared-lib/sheets/index.ts';
import { type WorkedExample, workedExamples } from '../reference/shared-lib/sheets/worked-examples.ts';
import { seriousViolations } from '../support/app/accessibility.ts';
import { expect, test } from '../support/app/fixture.ts';
import type { Program } from '../support/app/program.ts';
import { Floor } from './places/floor.ts';
import { Sheets } from './places/sheets.ts';

const layout: Layout = {
  engine: {
    arrangement: 'inline',
    cylinders: 4,
    heads: 1,
    valves: { intake: 1, exhaust: 1 },
    liner: 'wet',
    rotation: 'CW',
    heading: 0,
    fuel: 'diesel',
    cooling: 'liquid',
  },
  numbering: { scheme: 'free-first' },
  hydraulics: ['boom', 'bucket'],
  volts: 12,
};

/** A machine in the shop, its visit on the screen. */
async function openVisit(program: Program): Promise<string> {
  await new Floor(program).openOwnShop('Bracken Lane Repairs', 'Ada Quill');
  const { machine } = await program.call('machine.add', {
    plate: { kind: 'test loader', serial: 'TL-0001' },
    layout,
    owner: { name: 'Nils Aspen', kind: 'person', capacity: 'owner' },
  });
  const { visit } = await program.call('visit.open', {
    machineId: machine.id,
    date: '2026-05-11',
    complaint: 'Uses water.',
  });
  await program.page.getByText('TL-0001').first().waitFor();
  await program.page
    .getByRole('button', { name: /TL-0001/ })
    .first()
    .click();
  await program.page.keyboard.press('g');
  await program.page.getByRole('article', { name: 'Notebook page' }).waitFor();
  return visit.id;
}

const nameOf = (id: string) => sheetOf(id)?.name ?? id;

/** One example of each sheet, then every other one of the handbook that asks something else. */
const firstOfEach = sheets.map(
  ({ id }) =>
    workedExamples.find(({ sheet }) => sheet === id) ?? { sheet: id, title: 'nothing typed', input: {}, wanted: [] },
);

const someWhere: Readonly<Record<string, string>> = {
  'MS-19': 'radiator',
  'MS-24': 'loader arm',
  'MS-31': 'crankshaft',
  'MS-32': 'piston 1',
};

async function fillExample(sheetsPage: Sheets, { sheet, input }: WorkedExample) {
  const open = await sheetsPage.open(nameOf(sheet));
  const where = someWhere[sheet];
  if (where !== undefined) await open.place(where);
  await open.fill({ ...input.conditions, ...input.inputs });
  for (const [of, limit] of Object.entries(input.limits ?? {})) await open.limit(of, limit);
  return open;
}

/** Digits as they are shown, to compare with a number: thin gaps gone, a real minus sign turned back. */
const numbersIn = (text: string): number[] =>
  (
    text
      .replaceAll('\u202f', '')
      .replaceAll('\u2212', '-')
      .match(/-?\d+(?:\.\d+)?/g) ?? []
  ).map(Number);

test('every sheet is filled by keyboard alone from its worked example and says its numbers and verdicts', async ({
  program,
}) => {
  test.setTimeout(600_000);
  const visitId = await openVisit(program);
  const sheetsPage = new Sheets(program);
  for (const example of firstOfEach) {
    await test.step(`${nameOf(example.sheet)}: ${example.title}`, async () => {
      const open = await fillExample(sheetsPage, example);
      for (const { of, value, within = 0, verdict } of example.wanted) {
        const row = open.result(of);
        await expect(row).toHaveCount(1);
        if (verdict !== undefined) await expect(row).toContainText(verdict);
        if (value !== undefined) {
          const shown = numbersIn((await row.locator('[data-value]').textContent()) ?? '');
          // What is shown is rounded to what it is worth: half of its last digit may be off.
          const [number = Number.NaN] = shown;
          const digits = /\.(\d+)/.exec(String(number))?.[1]?.length ?? 0;
          expect(Math.abs(number - value), `${of}: ${number}`).toBeLessThanOrEqual(within + 0.51 * 10 ** -digits);
        }
      }
      await program.picture(`sheet-${example.sheet}`);
      expect(await seriousViolations(program.page)).toEqual([]);
    });
  }

  // The recorder has computed the same, and the report says it.
  const { readings } = await program.call('visit.get', { id: visitId });
  for (const { sheet, wanted, input } of firstOfEach.filter((each) => each.wanted.length > 0)) {
    const reading = readings.find((each) => each.sheet === sheet);
    expect(reading?.inputs, sheet).toEqual(
      Object.fromEntries(Object.entries(input.inputs ?? {}).map(([id, text]) => [id, text])),
    );
    for (const { of, verdict } of wanted) {
      const line = reading?.results.find((each) => each.of === of);
      expect(line, `${sheet} ${of}`).toBeDefined();
      if (verdict !== undefined) expect(line?.verdict, `${sheet} ${of}`).toBe(verdict);
    }
  }
});
