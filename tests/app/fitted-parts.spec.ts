import { seriousViolations } from '../support/app/accessibility.ts';
import { expect, test } from '../support/app/fixture.ts';
import type { Program } from '../support/app/program.ts';
import { loaderLayout } from '../support/loader-layout.ts';
import { Floor } from './places/floor.ts';
import { Sheets } from './places/sheets.ts';

/** Four stays, 100 hours apart, in each of which the play at the steering wheel was read: it grows. */
async function machineOfFourStays(program: Program): Promise<string> {
  await new Floor(program).openOwnShop('Bracken Lane Repairs', 'Ada Quill');
  const { machine, meters } = await program.call('machine.add', {
    plate: { kind: 'test loader', serial: 'TL-0001' },
    layout: loaderLayout,
  });
  let last = '';
  for (const [index, arc] of [60, 66, 73, 78].entries()) {
    const reading = 4000 + 100 * index;
    const { visit } = await program.call('visit.open', {
      machineId: machine.id,
      date: `2026-0${index + 2}-11`,
      complaint: 'Wanders on the road.',
      meter: { meterId: meters[0]?.id ?? null, typed: `${reading} h`, reading, estimate: false },
    });
    await program.call('reading.fill', {
      visitId: visit.id,
      sheet: 'steering free play',
      at: 'STEER',
      inputs: { radius: '200 mm', arc: `${arc} mm` },
    });
    last = visit.id;
  }
  await program.page
    .getByRole('button', { name: /TL-0001/ })
    .first()
    .click();
  await program.page.getByRole('article', { name: 'Notebook page' }).waitFor();
  return last;
}

test('earlier readings stand in the trend at one press, and a fitted part ends the comparison across it', async ({
  program,
}) => {
  test.setTimeout(180_000);
  const { page } = program;
  await machineOfFourStays(program);

  // Nothing was changed yet: all four stays are one series.
  const sheets = new Sheets(program);
  const trend = await sheets.open('Hours and trend');
  const gather = trend.element.getByRole('region', { name: 'Gather what was read before' });
  await gather.getByRole('button', { name: /^Steering free play, play/ }).click();
  const series = trend.element.getByRole('group', { name: 'Series: true hours and value' });
  await expect(series.getByRole('textbox')).toHaveCount(10);
  await expect(series.getByRole('textbox', { name: 'reading 1, true hours' })).toHaveValue('4000');
  await expect(trend.element.getByRole('textbox', { name: 'Days since then' })).toHaveValue('30');
  // 18 mm of arc more at a radius of 200 mm in 300 hours are about 1.7 degrees in 100.
  await expect(trend.element.locator('[data-result="change in 100 h"] [data-value]')).toHaveText(/^1\.7/);
  await program.picture('trend-gathered');
  expect(await seriousViolations(page)).toEqual([]);

  // The drag link was changed in the second stay.
  await page
    .getByRole('button', { name: /TL-0001/ })
    .first()
    .click();
  await page.getByRole('button', { name: 'Fitted parts' }).click();
  const panel = page.getByRole('dialog', { name: 'Fitted parts' });
  await panel.getByRole('button', { name: 'A part was fitted' }).click();
  await panel.getByRole('button', { name: 'Say the part' }).click();
  await page.keyboard.type('drag link');
  await panel.getByRole('region', { name: 'Where' }).getByRole('listitem').first().getByRole('button').click();
  await panel.getByRole('radio', { name: 'Used', exact: true }).check();
  await panel.getByRole('radio', { name: /^11 March 2026/ }).check();
  await expect(panel.getByRole('textbox', { name: /^At true hours/ })).toHaveValue('4100');
  await program.picture('fitted-part-form');
  await panel.getByRole('button', { name: 'Write the part down' }).click();
  await expect(panel.getByRole('listitem')).toContainText(/Drag link.*used.*Fitted 11 March 2026 at 4\s100\sh/i);
  await program.picture('fitted-parts');
  expect(await seriousViolations(page)).toEqual([]);
  await page.keyboard.press('Escape');

  await page.keyboard.press('g');
  await page.getByRole('navigation', { name: 'Pages' }).waitFor();
  const again = await sheets.open('Hours and trend');
  const cut = again.element.getByRole('button', { name: /^Steering free play, play/ });
  await expect(cut).toContainText('2 readings from 4 200 to 4 300 h; 2 left out, the part was changed');

  // It came out again in the last stay: what was read in it cannot be told apart.
  await page
    .getByRole('button', { name: /TL-0001/ })
    .first()
    .click();
  await page.getByRole('button', { name: 'Fitted parts' }).click();
  await panel.getByRole('button', { name: /^It came out: / }).click();
  await panel.getByRole('textbox', { name: 'At true hours' }).fill('4000');
  await panel.getByRole('button', { name: 'Write it down as out' }).click();
  await expect(panel).toContainText('A part cannot come out before it went in');
  await panel.getByRole('textbox', { name: 'At true hours' }).fill('4300');
  await panel.getByRole('button', { name: 'Write it down as out' }).click();
  await expect(panel.getByRole('listitem')).toContainText('Came out 11 May 2026');
});
