import { execFileSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { seriousViolations } from '../support/app/accessibility.ts';
import { expect, test } from '../support/app/fixture.ts';
import { project } from '../support/app/program.ts';

/** A case of the program's own, taken in before the window opens. */
const takeIn = (folder: string, file: string) => {
  const dataFolder = join(folder, 'record');
  mkdirSync(dataFolder, { recursive: true });
  const told = execFileSync(
    join(project, 'node_modules/.bin/node'),
    [join(project, 'electron/cli/main.ts'), 'apply', '--json', '--data', dataFolder, join(project, file)],
    { encoding: 'utf8' },
  );
  return JSON.parse(told) as { visits: Record<string, string>; findings: Record<string, string> };
};

test('suspicions are listed, held against evidence by keyboard alone, given up and taken up again', async ({
  folder,
  launch,
}) => {
  takeIn(folder, 'tests/reference/scenarios/s1-skid-steer-cracked-head.json');
  const program = await launch();
  const { page } = program;
  await page
    .getByRole('button', { name: /skid-steer/i })
    .first()
    .click();
  await expect(page.getByRole('article', { name: 'Notebook page' })).toBeVisible();
  await page.keyboard.press('Control+5');
  const causes = page.getByRole('region', { name: 'What it could be' });
  await expect(causes.getByRole('columnheader')).toHaveCount(3);
  await program.picture('causes');
  expect(await seriousViolations(page)).toEqual([]);
});

test('what led to what is drawn and told', async ({ folder, launch }) => {
  takeIn(folder, 'assets/demo/2-lift-truck.json');
  const program = await launch({ width: 1920, height: 1080 });
  const { page } = program;
  await page
    .getByRole('button', { name: /lift truck/i })
    .first()
    .click();
  await expect(page.getByRole('article', { name: 'Notebook page' })).toBeVisible();
  await page.keyboard.press('Control+5');
  const chain = page.getByRole('region', { name: 'What led to what' });
  await program.picture('causes-wide');
  await chain.scrollIntoViewIfNeeded();
  await page.getByRole('button', { name: 'crack' }).first().isVisible();
  await page.evaluate(() => document.querySelector('[aria-label="What led to what"]')?.scrollIntoView());
  await program.picture('chain-wide');
  expect(await seriousViolations(page)).toEqual([]);
});
