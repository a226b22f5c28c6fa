import { seriousViolations } from '../support/app/accessibility.ts';
import { wholeScenario } from '../support/app/begin-scenario.ts';
import { expect, test } from '../support/app/fixture.ts';

test('a finding shows where it is and what to mind; a part picked on the drawing becomes its place', async ({
  folder,
  launch,
}) => {
  const { visits, findings } = wholeScenario(folder, 'tests/reference/scenarios/s1-skid-steer-cracked-head.json');
  const program = await launch();
  const { page } = program;

  await page
    .getByRole('button', { name: /skid-steer/i })
    .first()
    .click();
  const standing = page.getByRole('complementary', { name: 'Standing' });
  await standing.getByRole('button', { name: /Exhaust seat, cylinder 3/ }).click();
  const card = page.getByRole('complementary', { name: 'Finding 3', exact: true });
  const drawing = card.getByRole('figure', { name: 'Cylinder head, fire face' });
  await expect(drawing).toContainText('Seen from below: left and right swap.');
  await program.picture('card-fire-face');

  await drawing.getByRole('button', { name: 'Exhaust seat, cylinder 2' }).click();
  await expect(card).toContainText('Cylinder 2 (counted from the fan end), exhaust seat');
  const record = await program.call('visit.get', { id: visits.V1 ?? '' });
  expect(record.findings.find(({ id }) => id === findings['V1/F3'])?.locations).toEqual(['ENG/HD.1/EVS.2.1']);

  const stop = drawing.getByRole('button', { name: 'Exhaust seat, cylinder 2' });
  await stop.focus();
  await page.keyboard.press('ArrowRight');
  await expect(drawing.getByRole('button', { name: 'Injector bore, cylinder 2' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(card).toContainText('Cylinder 2 (counted from the fan end), injector bore');

  await card.getByRole('button', { name: /^Close finding/ }).click();
  await standing.getByRole('button', { name: /Safety interlock/ }).click();
  const other = page.getByRole('complementary', { name: 'Finding 1', exact: true });
  await expect(other.getByRole('note', { name: /^DANGER/ })).toContainText('With the interlock bypassed');
  expect(await seriousViolations(page)).toEqual([]);
  await program.picture('card-cautions');
});
