import { seriousViolations } from '../support/app/accessibility.ts';
import { wholeScenario } from '../support/app/begin-scenario.ts';
import { expect, test } from '../support/app/fixture.ts';

test('choices stand side by side with what they leave; the owner completes a statement and signs it', async ({
  folder,
  launch,
}) => {
  const { visits, findings } = wholeScenario(folder, 'tests/reference/scenarios/s6-backhoe-visit-and-return.json');
  const program = await launch();
  const { page } = program;

  await page
    .getByRole('button', { name: /backhoe/i })
    .first()
    .click();
  await page.getByRole('button', { name: 'Choices', exact: true }).click();
  const table = page.getByRole('region', { name: 'The choices' });
  await expect(table.getByRole('columnheader')).toHaveCount(3);
  const heads = await table.getByRole('columnheader').allInnerTexts();
  expect(heads.map((head) => head.split('\n').map((words) => words.trim()))).toEqual([
    ['Finding'],
    ['strap only', 'leaves: do not operate'],
    ['all but the gauges', 'leaves: will fail or cost more'],
  ]);
  await expect(table.getByRole('row', { name: /^Leaves/ })).toContainText('Do not operate');
  expect(await seriousViolations(page)).toEqual([]);
  await program.picture('choices');

  // What a choice does to a finding changes what it leaves, at once.
  const cell = table.getByRole('combobox', { name: '“strap only”: finding 4' });
  await cell.selectOption('fixed');
  await expect
    .poll(async () => {
      const { choices } = await program.call('choices.get', { visitId: visits.V2 ?? '' });
      return choices.find(({ name }) => name === 'strap only')?.left.length;
    })
    .toBe(3);

  const decisions = page.getByRole('complementary', { name: 'Decisions' });
  await decisions.getByRole('button', { name: /^Finding 1:/ }).click();
  const statement = page.getByRole('region', { name: 'The statement' });
  await expect(statement).toContainText('how does it end?');
  const endings = statement.getByRole('list', { name: 'How it can end' });
  await expect(endings.getByRole('button', { pressed: true })).toHaveCount(0);
  await expect(decisions.getByRole('region', { name: 'Decided before' })).toContainText('does not cover this');
  expect(await seriousViolations(page)).toEqual([]);
  await program.picture('decision-blank');

  // What was shown and decided stands beside the statement, and its end is reached by the wheel.
  const keep = statement.getByRole('button', { name: 'Keep it as it was read' });
  const [leaf, beside] = await Promise.all([statement.boundingBox(), decisions.boundingBox()]);
  expect(beside?.x).toBe((leaf?.x ?? 0) + (leaf?.width ?? 0));
  await expect(keep).not.toBeInViewport();
  await page.mouse.move((leaf?.x ?? 0) + 200, (leaf?.y ?? 0) + 200);
  await page.mouse.wheel(0, 5_000);
  await expect(keep).toBeInViewport({ ratio: 1 });

  await page.keyboard.press('3');
  await page.keyboard.type('the first of July');
  await expect(statement).toContainText('to put it off until the first of July.');
  await expect(keep).toBeDisabled();
  await decisions
    .getByRole('button', { name: /^photo/ })
    .first()
    .click();
  await statement.getByLabel('In their own words').fill('After the hay.');
  const box = statement.getByRole('img', { name: /^Where .* signs$/ });
  await box.scrollIntoViewIfNeeded();
  const at = await box.boundingBox();
  if (at === null) throw new Error('there is nowhere to sign');
  await page.mouse.move(at.x + 30, at.y + 40);
  await page.mouse.down();
  await page.mouse.move(at.x + 120, at.y + 20, { steps: 6 });
  await page.mouse.move(at.x + 200, at.y + 60, { steps: 6 });
  await page.mouse.up();
  await program.picture('decision-signed');
  await keep.click();

  await expect(page.getByRole('region', { name: 'Decided', exact: true })).toContainText('put off');
  const now = await program.call('choices.get', { visitId: visits.V2 ?? '' });
  const taken = now.decisions.find(({ findingId }) => findingId === findings['V2/F1']);
  expect(taken).toMatchObject({ decision: 'deferred', completed: 'the first of July', words: 'After the hay.' });
  expect(taken?.statement).toContain('I choose to put it off until the first of July.');
  expect(taken?.statement).toContain('was shown photo');
  expect(taken?.signature?.[0]?.length).toBeGreaterThan(5);
  expect(now.undecided).not.toContain(findings['V2/F1']);
});
