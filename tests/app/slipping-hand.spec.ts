import { expect, test } from '../support/app/fixture.ts';
import { Choices } from './places/decision.ts';
import { Floor } from './places/floor.ts';

test('a double press is one press, and a button that is switched off under the finger keeps the keyboard', async ({
  program,
}) => {
  test.setTimeout(180_000);
  const { page } = program;
  const floor = new Floor(program);
  await floor.openOwnShop('Bracken Lane Repairs', 'Ada Quill');
  const visit = await floor.takeIn({
    kind: 'skid loader',
    serial: 'KL 2203',
    owner: 'Per Lindqvist',
    complaint: 'Knocks.',
    hours: '3 860',
  });
  await expect(visit.notebook).toContainText('Knocks.');
  const visitId = await visit.visitId();
  const record = async () => await program.call('visit.get', { id: visitId });

  // The answered line goes, and the next one comes to lie under the finger: it is not answered with it.
  await visit.notebook.getByRole('button', { name: 'not needed' }).dblclick({ delay: 40 });
  const answered = async () => (await record()).scope.filter(({ notExaminedBecause }) => notExaminedBecause !== null);
  await expect.poll(async () => (await answered()).length).toBeGreaterThan(0);

  // Written by a key that is pressed twice: once, and Tab goes on from where it was.
  await page.getByRole('button', { name: 'Received' }).press('Enter');
  const intake = page.getByRole('dialog', { name: 'As it came in' });
  await intake.getByRole('textbox', { name: 'Part', exact: true }).fill('upper hose');
  const write = intake.getByRole('button', { name: 'Write it down' });
  await write.press('Enter');
  await page.keyboard.press('Enter');
  await expect(intake.getByRole('listitem').first()).toContainText('upper hose');
  await expect(write).toBeDisabled();
  await expect(write).toBeFocused();
  await page.keyboard.press('Escape');
  expect((await record()).intake?.earlierWork).toHaveLength(1);
  expect(await answered()).toHaveLength(1);

  // Two choices of one name, or a decision that stands twice and can't be taken back, would be worse.
  await program.call('finding.add', { visitId, defect: 'crack', locations: ['ENG/BLK'] });
  const choices = new Choices(program);
  await choices.open();
  await page.getByRole('button', { name: 'Write a choice' }).dblclick({ delay: 40 });
  const columns = choices.table.getByRole('columnheader');
  await expect(columns).toHaveCount(2);
  await page.keyboard.press('Control+6');
  await page.getByRole('button', { name: 'Write other work' }).press('Enter');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('textbox', { name: 'What was done' })).toHaveCount(1);
  await choices.open();
  await choices.readBack('make safe');
  await choices.end('4');
  await choices.sign();
  await choices.statement.getByRole('button', { name: 'Keep it as it was read' }).dblclick({ delay: 40 });
  await choices.table.waitFor();
  await expect(columns).toHaveCount(2);
  expect((await program.call('choices.get', { visitId })).decisions).toHaveLength(1);
  expect((await program.call('work.get', { visitId })).items).toHaveLength(1);
});

test('what comes to lie under a double press is not hit by its second half', async ({ program }) => {
  const { page } = program;
  const floor = new Floor(program);
  await floor.openOwnShop('Bracken Lane Repairs', 'Ada Quill');
  const visit = await floor.takeIn({
    kind: 'skid loader',
    serial: 'KL 2209',
    owner: 'Per Lindqvist',
    complaint: '',
    hours: '3 860',
  });
  await expect(visit.notebook).toBeVisible();
  const visitId = await visit.visitId();
  const card = (await visit.writeFinding(1)).element;
  const states = async () => (await program.call('visit.get', { id: visitId })).findings.map(({ state }) => state);
  const before = await states();

  // Scrolled so that picking a kind brings the states to where the list has been.
  const option = card.getByRole('button', { name: /^Crack/ });
  await card.getByRole('textbox', { name: 'What is it?' }).fill('crack');
  await option.evaluate((element) => element.scrollIntoView({ block: 'end' }));
  const at = await option.boundingBox();
  if (at === null) throw new Error('no kind is offered');
  const confirmed = card.getByRole('radio', { name: /Confirmed/ });
  const middle = { x: at.x + 40, y: at.y + at.height / 2 };
  await page.mouse.click(middle.x, middle.y);
  await expect(option).toBeHidden();
  // The card is brought to lie as it would after any longer list: the first state under the finger.
  await confirmed.evaluate((element, y) => {
    for (let pane = element.parentElement; pane !== null; pane = pane.parentElement)
      pane.scrollTop += element.getBoundingClientRect().top - y;
  }, middle.y - 20);
  await page.mouse.move(middle.x, middle.y);
  await page.mouse.down({ clickCount: 2 });
  await page.mouse.up({ clickCount: 2 });
  await expect(confirmed).not.toBeChecked();
  expect(await states()).toEqual(before);
  // A press of its own does hit it.
  await page.mouse.click(middle.x, middle.y);
  await expect(confirmed).toBeChecked();
});
