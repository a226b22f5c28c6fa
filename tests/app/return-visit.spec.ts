import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { seriousViolations } from '../support/app/accessibility.ts';
import { expect, test } from '../support/app/fixture.ts';
import { project } from '../support/app/program.ts';
import { Visit } from './places/visit.ts';

test('a machine of the made-up shop is back: found by a fragment of its serial, its meter replaced, its old findings answered', async ({
  program,
  folder,
}) => {
  test.setTimeout(240_000);
  const { page } = program;
  await page.getByRole('button', { name: 'Look around a made-up one' }).click();
  await expect(page.getByRole('heading', { name: 'Standing here' })).toBeVisible({ timeout: 90_000 });

  // Only the middle of the serial can be read under the dirt.
  await page
    .getByRole('searchbox')
    .or(page.getByRole('textbox', { name: /^Find a machine/ }))
    .fill('4471');
  await page.getByRole('button', { name: /^Loader tractor TL 4471 W/ }).click();
  await expect(page.getByRole('heading', { name: /Loader tractor TL 4471 W/ })).toBeVisible();

  // The hours have fallen: the meter was changed, and true hours go on from where they were.
  await page.getByRole('button', { name: 'It is here again' }).click();
  await page.getByRole('textbox', { name: /^Hour meter shows/ }).fill('12');
  await page.getByRole('textbox', { name: 'What the owner says' }).fill('Knocks when the bucket is curled.');
  await page.getByRole('button', { name: 'Open the visit' }).click();
  await page.getByRole('radio', { name: 'The meter was changed' }).click();
  await page
    .getByRole('button', { name: /new meter|meter in/i })
    .last()
    .click();
  const visit = new Visit(program);
  await expect(visit.notebook).toContainText('Knocks when the bucket is curled.');
  const floor = await program.call('machine.floor', { find: '4471' });
  const visitId = floor[0]?.visitId ?? '';
  const opened = await program.call('visit.get', { id: visitId });
  expect(opened.trueHours).toBeGreaterThanOrEqual(4472);

  // What was left open last time is answered with one tap; what still stands keeps the number it has for life.
  const before = page.getByRole('region', { name: 'Since last time' });
  const open = before.getByRole('list', { name: 'Not answered yet' });
  const offered = await open.locator(':scope > li').count();
  await before.scrollIntoViewIfNeeded();
  await program.picture('since-last-time');
  expect(await seriousViolations(page)).toEqual([]);
  await before.getByRole('button', { name: 'Finding 4: The same' }).click();
  await expect(open.locator(':scope > li')).toHaveCount(offered - 1);
  await before.getByRole('button', { name: 'Finding 11: Grown' }).press('Enter');
  const card = page.getByRole('complementary', { name: 'Finding 11' });
  await expect(card).toBeVisible();
  await program.picture('taken-up-again');
  await page.getByRole('button', { name: 'Close finding 11' }).click();
  await before.getByRole('button', { name: 'Finding 12: Not looked at again' }).click();
  await before.getByRole('button', { name: 'no access' }).click();
  await expect(before.getByRole('list', { name: 'Answered', exact: true })).toContainText(
    'Not looked at again: no access',
  );
  const standing = page.getByRole('complementary', { name: 'Standing' });
  await expect(standing.getByRole('button', { name: /^Finding 12:/ })).toBeVisible();
  await program.picture('answered');

  // Today's photo, and the report that carries the finding with its number.
  const taken = await visit.takePhotos([join(project, 'assets/demo/photos/dashboard.jpg')]);
  await expect(taken).toContainText('1 photo offered, 1 taken in', { timeout: 60_000 });
  const pdf = join(folder, 'return.pdf');
  await visit.printReport(pdf);
  const text = execFileSync('pdftotext', ['-layout', pdf, '-'], { encoding: 'utf8' });
  expect(text).toContain('TL 4471 W');
  expect(text).toContain('Knocks when the bucket is curled.');
  expect(text).toContain('Since last time');
  expect(text.replace(/\s+/g, ' ')).toContain('Not looked at again: no access.');
});
