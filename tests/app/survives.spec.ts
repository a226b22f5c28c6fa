import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { expect, test } from '../support/app/fixture.ts';
import { isAlive, recorderOf, until } from '../support/app/processes.ts';
import type { Program } from '../support/app/program.ts';
import { Random } from '../support/app/random.ts';
import { Floor } from './places/floor.ts';
import { Visit } from './places/visit.ts';
import { BusyHand } from './survives/busy-hand.ts';
import { Claims } from './survives/claims.ts';
import { brokenEntryOf, checkOf, isFree } from './survives/on-disk.ts';

/**
 * `WITNESS_MARK_KILLS=20` asks for the long run, `WITNESS_MARK_SEED` for the moments of an earlier one. Two of five
 * kills are the shell's; a shell restarts its recorder the later the more often it died, so the two take turns.
 */
const kills = Number(process.env.WITNESS_MARK_KILLS ?? 5);
const seed = Number(process.env.WITNESS_MARK_SEED ?? Date.now() % 1_000_000);
const soonestMs = 30;
const latestMs = 4000;
const serial = 'SV 0001';

test(`what the window showed as done is there after ${kills} sudden ends`, async ({ program, launch, folder }) => {
  test.setTimeout(60_000 + kills * 30_000);
  const random = new Random(seed);
  const claims = new Claims();
  const photos = join(folder, 'camera');
  mkdirSync(photos);
  const noted: string[] = [];
  const work = { claims, random, folder: photos };

  let now = program;
  now.allowErrors(/Failed to load resource/);
  const floor = new Floor(now);
  await floor.openOwnShop('Bracken Lane Repairs', 'Ada Quill');
  const visit = await floor.takeIn({
    kind: 'skid loader',
    serial,
    owner: 'Per Lindqvist',
    complaint: 'Runs rough.',
    hours: '1 200',
  });
  await expect(visit.notebook).toBeVisible();
  const visitId = await visit.visitId();
  const dataFolder = now.dataFolder;
  await new BusyHand(now, work).begin();

  for (let kill = 1; kill <= kills; kill += 1) {
    const what = kill % 5 === 2 || kill % 5 === 4 ? 'shell' : 'recorder';
    const afterMs = Math.round(random.between(soonestMs, latestMs));
    const hand = new BusyHand(now, work);
    const working = hand.work();
    // A failure of the work itself ends the test at once.
    await Promise.race([pause(afterMs), working]);
    const recorder = recorderOf(now.app.process().pid);
    const killed = what === 'shell' ? now.killShell() : now.killRecorder();
    hand.stop();
    await Promise.all([killed, working]);

    if (what === 'shell') {
      await until('the recorder has ended', () => recorder === undefined || !isAlive(recorder) || undefined);
      // A process of many threads still closes its files for a moment after it is said to be dead.
      await until('the folder is free', () => isFree(dataFolder) || undefined);
      now = await launch();
      now.allowErrors(/Failed to load resource/);
      await new Floor(now).machine(serial).first().click();
    } else await restartIsSaid(now);

    const about = `kill ${kill} of ${kills}, ${what}, after ${afterMs} ms, seed ${seed}`;
    const record = await now.call('visit.get', { id: visitId });
    const claimed = claims.count;
    expect(claims.missingIn(record), about).toEqual([]);
    const check = checkOf(dataFolder);
    expect(check.problems, about).toEqual([]);
    expect(brokenEntryOf(dataFolder), about).toBeNull();
    expect(isFree(dataFolder), about).toBe(false);
    await new BusyHand(now, work).tidy();
    for (const { number } of record.standing.lines) {
      await expect(new Visit(now).standing.getByRole('img', { name: `Finding ${number}:` })).toBeVisible();
    }
    noted.push(`${about}: ${claimed} things shown as done, ${check.journalEntries} entries, ${check.originals} photos`);
  }
  console.log(noted.join('\n'));
  expect(claims.count).toBeGreaterThan(kills);
});

/** In the same window: that it stopped, and that it runs again. */
async function restartIsSaid({ page }: Program): Promise<void> {
  const said = page.getByText(/^The recorder stopped and was started again at/);
  await expect(said).toBeVisible({ timeout: 20_000 });
  await page.getByRole('button', { name: 'Put away', exact: true }).click();
  await expect(said).toBeHidden();
}
