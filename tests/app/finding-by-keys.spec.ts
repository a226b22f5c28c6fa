import { expect, test } from '../support/app/fixture.ts';
import { Floor } from './places/floor.ts';

test('a finding gets its kind and its place by typing and Enter, and the keys stay where they were', async ({
  program,
}) => {
  const { page } = program;
  const { keyboard } = page;
  const floor = new Floor(program);
  await floor.openOwnShop('Bracken Lane Repairs', 'Ada Quill');
  const visit = await floor.takeIn({
    kind: 'skid loader',
    serial: 'KL 2205',
    owner: 'Per Lindqvist',
    complaint: '',
    hours: '3 860',
  });
  const card = (await visit.writeFinding(1)).element;

  // The list of kinds is passed by two tabs, and walked with arrows.
  const kind = card.getByRole('textbox', { name: 'What is it?' });
  await kind.focus();
  await keyboard.press('Tab');
  await keyboard.press('Tab');
  await expect(card.getByRole('textbox', { name: 'In your own words' })).toBeFocused();
  await kind.focus();
  await keyboard.type('cra');
  await keyboard.press('ArrowDown');
  await keyboard.press('ArrowDown');
  await expect(card.getByRole('button', { name: /^Heat checking/ })).toBeFocused();
  await keyboard.press('ArrowUp');
  await keyboard.press('ArrowUp');
  await expect(kind).toBeFocused();
  await keyboard.press('Enter');
  await expect(card.getByRole('button', { name: 'Change what it is, now Crack' })).toBeFocused();

  await card.getByRole('button', { name: 'Say the where' }).press('Enter');
  await keyboard.type('exhaust seat 3');
  await keyboard.press('Enter');
  await expect(card.getByRole('button', { name: 'Change the where' })).toBeFocused();
  await keyboard.press('Escape');
  await expect(visit.standing).toContainText('Exhaust seat, cylinder 3: crack');
});
