import { expect, test } from '../support/app/fixture.ts';
import { Floor } from './places/floor.ts';

test('Tab goes round in an open sheet, and Escape leads back to what opened it', async ({ program }) => {
  const { page } = program;
  const { keyboard } = page;
  const floor = new Floor(program);
  await floor.openOwnShop('Bracken Lane Repairs', 'Ada Quill');
  await floor.takeIn({ kind: 'skid loader', serial: 'KL 2207', owner: 'Per Lindqvist', complaint: '', hours: '3 860' });
  const opener = page.getByRole('button', { name: 'Received' });
  await opener.press('Enter');
  const sheet = page.getByRole('dialog', { name: 'As it came in' });
  const close = sheet.getByRole('button', { name: 'Close: As it came in' });
  await expect(sheet.getByRole('textbox', { name: 'Part', exact: true })).toBeFocused();

  // Once round, and never on what the sheet covers.
  await keyboard.press('Shift+Tab');
  await expect(close).toBeFocused();
  let steps = 0;
  do {
    await keyboard.press('Tab');
    await expect(sheet.locator(':focus')).toHaveCount(1);
    steps += 1;
  } while (steps < 60 && !(await close.evaluate((element) => element === document.activeElement)));
  expect(steps).toBeGreaterThan(10);
  await expect(close).toBeFocused();
  await keyboard.press('Shift+Tab');
  await expect(sheet.getByRole('textbox', { name: 'What it was' })).toBeFocused();
  await keyboard.press('Escape');
  await expect(sheet).toBeHidden();
  await expect(opener).toBeFocused();
});
