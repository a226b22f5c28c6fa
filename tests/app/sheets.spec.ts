import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { sheetOf, sheets } from '../../shared-lib/sheets/index.ts';
import { type WorkedExample, workedExamples } from '../reference/shared-lib/sheets/worked-examples.ts';
import { seriousViolations } from '../support/app/accessibility.ts';
import { expect, test } from '../support/app/fixture.ts';
import type { Program } from '../support/app/program.ts';
import { loaderLayout } from '../support/loader-layout.ts';
import { Floor } from './places/floor.ts';
import { Sheets } from './places/sheets.ts';
import { Visit } from './places/visit.ts';

/** A machine in the shop, its visit on the screen. */
async function openVisit(program: Program): Promise<string> {
  await new Floor(program).openOwnShop('Bracken Lane Repairs', 'Ada Quill');
  const { machine } = await program.call('machine.add', {
    plate: { kind: 'test loader', serial: 'TL-0001' },
    layout: loaderLayout,
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

/** Numbers beside each other are kept with a stroke between them, whatever parted them when they were typed. */
const withStrokes = (inputs: Readonly<Record<string, string>>) =>
  Object.fromEntries(
    Object.entries(inputs).map(([id, text]) => [id, text.replace(/(?<=\d)(?: *\/ *|, | +)(?=[-.\d])/g, '/')]),
  );

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
    expect(reading && withStrokes(reading.inputs), sheet).toEqual(withStrokes(input.inputs ?? {}));
    for (const { of, verdict } of wanted) {
      const line = reading?.results.find((each) => each.of === of);
      expect(line, `${sheet} ${of}`).toBeDefined();
      if (verdict !== undefined) expect(line?.verdict, `${sheet} ${of}`).toBe(verdict);
    }
  }
});

test('what cannot be is named at its field, what is odd is asked about, and undo takes one field back', async ({
  program,
}) => {
  const visitId = await openVisit(program);
  const sheet = await new Sheets(program).open('Steering free play');
  await program.page.keyboard.type('200 mm');
  await program.page.keyboard.press('Enter');
  await program.page.keyboard.type('-64 mm');
  await program.page.keyboard.press('Enter');
  await expect(sheet.problem('Way along the rim')).toContainText('Kept as typed, not counted.');
  await expect(sheet.result('play')).not.toContainText('°');
  await program.page.keyboard.press('Shift+Tab');
  await program.page.keyboard.press('Control+a');
  await program.page.keyboard.type('9 in');
  // The verdict is there while one types; 9 in are 228.6 mm.
  await expect(sheet.result('play').locator('[data-value]')).toContainText('65.5');
  await program.page.keyboard.press('Enter');
  await expect
    .poll(async () => (await program.call('visit.get', { id: visitId })).readings[0]?.inputs.arc)
    .toBe('9 in');
  await program.page.keyboard.press('Shift+Tab');
  await program.page.keyboard.press('Shift+Tab');
  await program.page.keyboard.press('Control+a');
  await program.page.keyboard.type('900');
  await program.page.keyboard.press('Enter');
  await expect(sheet.problem('Radius')).toContainText('It is kept and counted.');
  await program.page.keyboard.press('Control+z');
  await expect
    .poll(async () => (await program.call('visit.get', { id: visitId })).readings[0]?.inputs.radius)
    .toBe('200 mm');
});

test('a table comes from a spreadsheet by paste, and a list goes along its cells', async ({ program }) => {
  const { page } = program;
  await openVisit(program);
  const paste = async (text: string) => {
    await program.app.evaluate(({ clipboard }, copied) => clipboard.writeText(copied), text);
    await page.keyboard.press('Control+V');
  };
  const bore = await new Sheets(program).open('Bore');
  await page.keyboard.type('100.000');
  await page.keyboard.press('Enter');
  await paste('100.142\t100.098\r\n100.071\t100.055\r\n100.028\t100.022\r\n');
  const diameters = bore.element.getByRole('group', { name: 'Diameters' });
  await expect(diameters.getByRole('textbox', { name: 'Depth from the top 3, direction 2' })).toHaveValue('100.022');
  await expect(diameters.getByRole('textbox', { name: 'Depth from the top 3, direction 2' })).toBeFocused();
  await page.keyboard.press('Control+Enter');
  await expect(bore.result('taper').locator('[data-value]')).toContainText('0.114');
  await expect(bore.result('taper')).toContainText('beyond');
  await expect(page.getByRole('img', { name: 'Diameter down the bore' })).toBeVisible();
  await program.picture('bore-cells');
  expect(await seriousViolations(page)).toEqual([]);

  // One cell for each cylinder: Enter goes along them and out of the last, arrows go back.
  const compression = await new Sheets(program).open('Compression');
  const cells = compression.element.getByRole('group', { name: 'Gauge pressure of each cylinder' });
  const cell = (cylinder: number) =>
    cells.getByRole('textbox', { name: `Gauge pressure of each cylinder, cylinder ${cylinder}` });
  await expect(cell(1)).toBeFocused();
  for (const pressure of ['24.0', '23.8', '16.5', '24.1']) {
    await page.keyboard.type(pressure);
    await page.keyboard.press('Enter');
  }
  await expect(cells.locator(':focus')).toHaveCount(0);
  for (const [index, pressure] of ['24.0', '23.8', '16.5', '24.1'].entries()) {
    await expect(cell(index + 1)).toHaveValue(pressure);
  }
  await expect(compression.result('lowest of highest').locator('[data-value]')).toContainText('68');
  // A cylinder that is taken out again keeps the places of the others, and nothing is said of three as if of four.
  await cell(2).fill('');
  await expect(cell(3)).toHaveValue('16.5');
  await page.keyboard.press('ArrowRight');
  await expect(cell(3)).toBeFocused();
  await expect(compression.result('lowest of highest').locator('[data-value]')).toHaveCount(0);
  await program.picture('compression-cells');
  // A list typed into one cell spreads over as many as it needs.
  await cell(1).fill('24.0/23.8/16.5/24.1');
  await page.keyboard.press('Enter');
  await expect(cell(4)).toHaveValue('24.1');
});

test('the visit before stands greyed beside, the maker’s limit is remembered, and beyond asks for a finding', async ({
  program,
  folder,
}) => {
  const before = await openVisit(program);
  const { visit } = await program.call('visit.get', { id: before });
  await program.call('reading.fill', {
    visitId: before,
    sheet: 'Steering free play',
    at: 'STEER',
    inputs: { radius: '200 mm', arc: '41 mm' },
    limits: { play: { max: '10', source: 'maker', page: 'p. 4' } },
  });
  const later = await program.call('visit.open', { machineId: visit.machineId, date: '2026-08-02' });
  await program.page.keyboard.press('Control+Home');
  await program.page
    .getByRole('button', { name: /TL-0001/ })
    .first()
    .click();
  await program.page.keyboard.press('g');
  await program.page.getByRole('article', { name: 'Notebook page' }).waitFor();
  const sheetsPage = new Sheets(program);
  const sheet = await sheetsPage.open('Steering free play');
  await expect(sheet.element).toContainText('last visit 41 mm');
  await sheet.fill({ radius: '200 mm', arc: '64 mm' });
  await expect(sheet.result('play')).toContainText('the maker’s, p. 4');
  await expect(sheet.result('play')).toContainText('beyond');
  await expect(sheet.result('play')).toContainText(/last visit 11\.7/);

  // Nothing is made silently; asked for, the finding has the reading as its proof.
  const record = () => program.call('visit.get', { id: later.visit.id });
  expect((await record()).findings).toEqual([]);
  const begin = sheet.element.getByRole('button', { name: 'Begin a finding with it' });
  await begin.press('Enter');
  await expect(program.page.getByRole('complementary', { name: 'Finding 1', exact: true })).toBeVisible();
  const { findings, proofs, readings } = await record();
  expect(findings.map(({ locations }) => locations)).toEqual([['STEER']]);
  expect(proofs.map(({ readingId }) => readingId)).toEqual([readings[0]?.id]);

  // Not taken, its reason in one tap.
  const other = await sheetsPage.open('Brakes');
  await other.element.getByRole('button', { name: 'Not taken, because' }).press('Enter');
  await other.element.getByRole('button', { name: 'not safe' }).press('Enter');
  await expect(other.element).toContainText('Not taken: not safe');
  expect(await seriousViolations(program.page)).toEqual([]);

  // The report says value, limit, whose it is, verdict, formula and the reason.
  const pdf = join(folder, 'readings.pdf');
  await new Visit(program).printReport(pdf);
  const text = execFileSync('pdftotext', ['-layout', pdf, '-'], { encoding: 'utf8' }).replace(/\s+/g, ' ');
  expect(text).toContain('Steering free play');
  expect(text).toMatch(/play 18\.3 ± ?1°/);
  expect(text).toMatch(/at most 10 ?°/);
  expect(text).toContain('beyond the maker’s, p. 4');
  expect(text).toContain('way along the rim ÷ radius × 180 ÷ π');
  expect(text).toContain('Not taken because: not safe');
});

test('number keys stand beside the sheet: they type into the field in hand, show it large and hide no field', async ({
  program,
}) => {
  await openVisit(program);
  const { page } = program;
  const open = await new Sheets(program).open('Battery at rest');
  await open.element.getByRole('button', { name: 'Number keys on the screen' }).click();
  const pad = page.getByRole('complementary', { name: 'Number keys' });
  const field = open.element.getByRole('textbox').first();
  await field.click();
  for (const key of ['1', '2', '.', '6', '3', 'Back', '4'])
    await pad.getByRole('button', { name: key, exact: true }).click();
  await expect(field).toHaveValue('12.64');
  await expect(field).toBeFocused();
  await expect(pad).toContainText('12.64');
  await pad.getByRole('button', { name: /^Next/ }).click();
  await expect(field).not.toBeFocused();
  await expect(page.locator('[data-row] :focus')).toHaveCount(1);
  const [keys, sheet] = [await pad.boundingBox(), await open.element.boundingBox()];
  expect((sheet?.x ?? 0) + (sheet?.width ?? 0)).toBeLessThanOrEqual(keys?.x ?? 0);
  expect(await seriousViolations(page)).toEqual([]);
  await program.picture('number-keys');
  await pad.getByRole('button', { name: 'Put the number keys away' }).click();
  await expect(pad).toHaveCount(0);
});
