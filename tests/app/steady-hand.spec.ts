import { expect, test } from '../support/app/fixture.ts';
import { Floor } from './places/floor.ts';

test('what arrives neither moves the thing under the finger nor takes what is typed on', async ({ program }) => {
  const floor = new Floor(program);
  await floor.openOwnShop('Bracken Lane Repairs', 'Ada Quill');
  const visit = await floor.takeIn({
    kind: 'skid loader',
    serial: 'KL 2201',
    owner: 'Per Lindqvist',
    complaint: 'Uses water.',
    hours: '3 860',
  });
  await expect(visit.notebook).toContainText('Uses water.');
  const visitId = await visit.visitId();
  await program.call('finding.add', { visitId, defect: 'crack' });
  const card = await visit.openFinding(1);
  const { page } = program;
  const kept = async () => (await program.call('visit.get', { id: visitId })).findings[0];

  // Leaving the field writes it, and its answer brings rows above the answer that is being pressed.
  await card.element.getByRole('textbox', { name: 'Length' }).fill('14 mm');
  const no = card.element.getByRole('group', { name: 'Can it hurt somebody?' }).getByRole('radio', { name: 'no' });
  await no.scrollIntoViewIfNeeded();
  const before = await no.boundingBox();
  if (before === null) throw new Error('The answer is not on the card.');
  await page.mouse.move(before.x + before.width / 2, before.y + before.height / 2);
  await page.mouse.down();
  await expect.poll(async () => (await kept())?.quantities).toHaveProperty('length');
  expect(await no.boundingBox()).toEqual(before);
  await page.mouse.up();
  await expect(no).toBeChecked();
  await expect(card.element.getByRole('group', { name: 'These numbers are' })).toBeVisible();
  expect((await kept())?.safety).toBe('none');

  // Typed on after Enter: the first saving arrives and leaves the rest standing.
  const words = card.element.getByRole('textbox', { name: 'Length' });
  await words.fill('16');
  await Promise.all([page.keyboard.press('Enter'), page.keyboard.type('.5 mm')]);
  await expect(page.getByRole('button', { name: /^Finding 1: Crack 16/ })).toBeVisible();
  await expect(words).toHaveValue('16.5 mm');
  await words.press('Enter');
  await expect.poll(async () => (await kept())?.quantities.length?.typed).toBe('16.5 mm');
});
