import { seriousViolations } from '../support/app/accessibility.ts';
import { wholeScenario } from '../support/app/begin-scenario.ts';
import { expect, test } from '../support/app/fixture.ts';

test('suspicions are listed, held against evidence by keyboard alone, given up and taken up again', async ({
  folder,
  launch,
}) => {
  const { visits } = wholeScenario(folder, 'tests/reference/scenarios/s1-skid-steer-cracked-head.json');
  const visitId = visits.V1 ?? '';
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
  expect(await seriousViolations(page)).toEqual([]);
  await program.picture('causes');
  const suspicions = async () => (await program.call('choices.get', { visitId })).suspicions;

  // Listed in seconds: the line, Enter.
  await causes.getByRole('textbox', { name: 'A suspicion' }).focus();
  await page.keyboard.type('head gasket leaks into the coolant');
  await page.keyboard.press('Enter');
  await expect(causes.getByRole('columnheader')).toHaveCount(4);
  await expect(causes.getByRole('textbox', { name: 'A suspicion' })).toHaveValue('');
  const pane = page.getByRole('region', { name: 'Suspicion: head gasket leaks into the coolant' });
  await expect(pane.getByRole('list').first()).toContainText('suspected');

  // One press says it, and the sheet's own limit stands as the reason: a test passed cold does not rule out what opens hot.
  const row = causes
    .getByRole('row', { name: /^08:\d\d|^09:\d\d/ })
    .filter({ hasText: 'not found by this test' })
    .first();
  const words = row.getByRole('group', { name: /head gasket/ });
  await causes
    .getByRole('button', { name: /^against: “upper hose/ })
    .first()
    .focus();
  const said = words.getByRole('button', { name: /^cannot tell/ });
  for (let step = 0; step < 40; step += 1) {
    if (await said.evaluate((button) => button === document.activeElement)) break;
    const isInRow = await row.evaluate((line) => line.contains(document.activeElement));
    await page.keyboard.press(isInRow ? 'ArrowRight' : 'ArrowDown');
  }
  await expect(said).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(said).toHaveAttribute('aria-pressed', 'true');
  await expect(row).toContainText('does not rule out a crack or leak that closes when cold and opens hot');
  await expect
    .poll(async () => (await suspicions()).at(-1)?.evidence.map(({ bears }) => bears))
    .toEqual(['cannot tell']);

  // Turned round: the first word stays in the cell.
  await words.getByRole('button', { name: /^against/ }).press('Enter');
  await expect(row).toContainText('before: cannot tell');
  await expect(pane).toContainText('against, no longer cannot tell');
  await program.picture('causes-picked');

  // Given up with its reason, and taken up again: both are told.
  await pane.getByRole('textbox', { name: 'Given up, because' }).fill('two gas tests');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(pane).toContainText('given up (two gas tests)');
  await pane.getByRole('textbox', { name: 'Taken up again, because' }).fill('still loses coolant');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(pane).toContainText('taken up again (still loses coolant)');

  // Only a finding that stands as confirmed shows that it was so.
  await pane.getByRole('button', { name: 'It is finding 3' }).click();
  await expect(causes.getByRole('columnheader', { name: /head gasket/ })).toContainText('found: finding 3');

  // A test drive is a line of the table by one line and Enter.
  await causes.getByRole('textbox', { name: /test drive/ }).fill('No smoke on the hill');
  await page.keyboard.press('Enter');
  await expect(causes.getByRole('row', { name: /No smoke on the hill/ })).toContainText('seen or told');

  const next = page.getByRole('region', { name: 'What to test next' });
  await expect(next).toContainText('First what tells open suspicions apart as the machine stands');
  expect(await seriousViolations(page)).toEqual([]);
  await program.picture('causes-found');
  await page.keyboard.press('Control+z');
  await expect(causes.getByRole('row', { name: /No smoke on the hill/ })).toHaveCount(0);
});

test('a long table is narrowed by keyboard, and nothing that is worked on goes from under the hand', async ({
  folder,
  launch,
}) => {
  const { visits } = wholeScenario(folder, 'tests/reference/scenarios/s1-skid-steer-cracked-head.json');
  const visitId = visits.V1 ?? '';
  const program = await launch();
  const { page } = program;
  for (let drive = 1; drive <= 24; drive += 1)
    await program.call('finding.add', {
      visitId,
      kind: 'observation',
      state: 'confirmed',
      words: drive === 17 ? 'Bubbles in the neck on the quarry ramp' : `Test drive ${drive}: nothing new`,
    });
  await page
    .getByRole('button', { name: /skid-steer/i })
    .first()
    .click();
  await expect(page.getByRole('article', { name: 'Notebook page' })).toBeVisible();
  await page.keyboard.press('Control+5');
  const causes = page.getByRole('region', { name: 'What it could be' });
  const filter = causes.getByRole('search', { name: 'Lines of the table' });
  const lines = causes.getByRole('rowheader');
  const all = await lines.count();
  expect(all).toBeGreaterThan(24);
  await expect(filter.getByRole('status')).toHaveText(`${all} lines`);
  expect(await seriousViolations(page)).toEqual([]);
  await program.picture('causes-long');

  // Its key, words as they begin, and down into the table.
  await causes.getByRole('columnheader').nth(1).getByRole('button').focus();
  await page.keyboard.press('/');
  await page.keyboard.type('quarry bub');
  await expect(lines).toHaveCount(1);
  await expect(filter.getByRole('status')).toHaveText(`1 of ${all} lines`);
  await page.keyboard.press('ArrowDown');
  await expect(causes.getByRole('button', { name: /^(for|against|cannot tell): / }).first()).toBeFocused();
  await page.keyboard.press('/');
  await page.keyboard.press('Escape');
  await expect(lines).toHaveCount(all);

  // The lines nobody has held against anything: one that is held now stays, so that its reason can be written.
  const next = page.getByRole('region', { name: 'What to test next' });
  await next.getByRole('button', { name: 'Show' }).click();
  const open = await lines.count();
  expect(open).toBeLessThan(all);
  const row = causes.getByRole('row').filter({ hasText: 'quarry ramp' });
  await row
    .getByRole('button', { name: /^for: / })
    .first()
    .press('Enter');
  await expect(row.getByRole('button', { name: /^for: / }).first()).toHaveAttribute('aria-pressed', 'true');
  await expect(lines).toHaveCount(open);
  await program.picture('causes-narrowed');
  await filter.getByRole('radio', { name: /^not held/ }).focus();
  await page.keyboard.press('ArrowLeft');
  await expect(lines).toHaveCount(all);
  await filter.getByRole('radio', { name: /^not held/ }).check();
  await expect(lines).toHaveCount(open - 1);

  // What bears on the one that is picked.
  await filter.getByRole('button', { name: 'Show all' }).click();
  await causes.getByRole('columnheader').nth(1).getByRole('button').click();
  await filter.getByRole('checkbox', { name: /^only what bears on/ }).check();
  await expect(lines.filter({ hasText: 'quarry ramp' })).toHaveCount(1);
  await expect(lines.filter({ hasText: 'Test drive' })).toHaveCount(0);

  // What is written down now is not hidden by what was asked for before.
  await causes.getByRole('textbox', { name: /test drive/ }).fill('Steam at the tail');
  await page.keyboard.press('Enter');
  await expect(lines.filter({ hasText: 'Steam at the tail' })).toHaveCount(1);
  await expect(lines).toHaveCount(all + 1);
});

test('what led to what is drawn, told, and put right; a cause that comes after its effect is refused', async ({
  folder,
  launch,
}) => {
  const { visits, findings } = wholeScenario(folder, 'assets/demo/2-lift-truck.json');
  const visitId = visits.V1 ?? '';
  const program = await launch({ width: 1920, height: 1080 });
  const { page } = program;
  await page
    .getByRole('button', { name: /lift truck/i })
    .first()
    .click();
  await expect(page.getByRole('article', { name: 'Notebook page' })).toBeVisible();
  await page.keyboard.press('Control+5');
  const chains = page.getByRole('region', { name: 'What led to what' });
  const chain = chains.getByRole('article').filter({ hasText: 'Finding 4 led to finding 6' });
  await expect(chain.getByRole('button', { name: /^Finding \d+: / })).toHaveCount(5);
  await expect(chain.getByRole('row', { name: /^4 led to 6 confirmed/ })).toContainText('Coolant');
  await chain.scrollIntoViewIfNeeded();
  await program.picture('chain-wide');
  expect(await seriousViolations(page)).toEqual([]);

  // From left to right: the scale stands between the water and the cracks.
  const left = async (name: RegExp) => (await chain.getByRole('button', { name }).boundingBox())?.x ?? 0;
  expect(await left(/^Finding 4:/)).toBeLessThan(await left(/^Finding 6:/));
  expect(await left(/^Finding 6:/)).toBeLessThan(await left(/^Finding 7:/));

  await program.call('finding.change', { id: findings['V1/F8'] ?? '', noticedOn: '2026-03-01' });
  await chain.getByRole('button', { name: /^Finding 1:/ }).click();
  const causes = page.getByRole('region', { name: 'What led to what' });
  const absent = causes.getByRole('textbox', { name: 'Not there yet on' });
  await absent.fill('2026-04-20');
  await absent.press('Enter');
  await causes.getByRole('button', { name: 'It leads to' }).click();
  await causes
    .getByRole('listitem')
    .filter({ hasText: /^8, / })
    .getByRole('button', { name: /This one/ })
    .click();
  await expect(causes.getByRole('alert')).toContainText(
    'A cause comes before its effect: finding 1 was not there yet on 20 April 2026, but finding 8 was there by 1 March 2026.',
  );
  await program.picture('cause-refused');
  const { links } = await program.call('visit.get', { id: visitId });
  expect(links.some(({ toId }) => toId === findings['V1/F8'])).toBe(false);
});

test('a machine is written down as it came in: done before, fluids, conditions, the walk round it', async ({
  folder,
  launch,
}) => {
  const { visits } = wholeScenario(folder, 'assets/demo/2-lift-truck.json');
  const program = await launch();
  const { page } = program;
  const visitId = visits.V1 ?? '';
  await page
    .getByRole('button', { name: /lift truck/i })
    .first()
    .click();
  const notebook = page.getByRole('article', { name: 'Notebook page' });
  // It stayed overnight: the page says where the second day begins, under what was photographed on the first.
  const lines = notebook.getByRole('list', { name: 'In the order it happened' }).getByRole('listitem');
  await expect(notebook).toContainText('12 May 2026');
  const said = await lines.allInnerTexts();
  const dayLine = said.findIndex((words) => words.trim() === '12 May 2026');
  expect(said.findIndex((words) => words.includes('14:33'))).toBeLessThan(dayLine);
  expect(said.findIndex((words) => words.includes('10:42'))).toBeGreaterThan(dayLine);
  await notebook.getByRole('button', { name: 'Received', exact: true }).click();
  const before = page.getByRole('region', { name: 'Done before, and by whom' });
  await before.getByRole('textbox', { name: 'Part' }).fill('starter');
  await before.getByRole('textbox', { name: 'By whom' }).fill('the owner');
  await before.getByRole('textbox', { name: 'When' }).fill('last winter');
  await page.keyboard.press('Enter');
  await expect(before.getByRole('listitem').last()).toContainText('starter: changed, by the owner, last winter');
  const fluids = page.getByRole('region', { name: 'Fluids as received' });
  await fluids.getByRole('combobox', { name: 'Fuel' }).selectOption('low');
  await fluids.getByRole('textbox', { name: 'Look of the fuel' }).fill('cloudy');
  await page.keyboard.press('Tab');
  const conditions = page.getByRole('region', { name: 'Conditions' });
  await conditions.getByRole('textbox', { name: 'It stood on' }).fill('soft ground');
  await page.keyboard.press('Enter');
  await program.picture('intake');
  const walk = page.getByRole('region', { name: 'The walk round it' });
  await walk.getByRole('button', { name: 'plate and serial: no photo' }).click();
  await walk.getByRole('button', { name: /^Photo 1/ }).click();
  await expect(walk.getByRole('button', { name: 'plate and serial: photo 1' })).toBeVisible();
  await walk.scrollIntoViewIfNeeded();
  await program.picture('intake-walk');
  expect(await seriousViolations(page)).toEqual([]);
  const { intake, visit } = await program.call('visit.get', { id: visitId });
  expect(intake?.earlierWork.at(-1)).toMatchObject({ what: 'starter', did: 'changed', byWhom: 'the owner' });
  expect(intake?.fluids.at(-1)).toMatchObject({ fluid: 'fuel', level: 'low', look: 'cloudy' });
  expect(intake?.photos).toMatchObject([{ view: 'plate' }]);
  expect(visit.conditions).toMatchObject({ ground: 'soft ground', altitude: '310 m' });
  await page.keyboard.press('Escape');
  await expect(notebook).toContainText('Fuel: low, cloudy');
  await program.picture('intake-page');
});
