import { expect, test } from '../support/app/fixture.ts';
import { Floor } from './places/floor.ts';

test('a machine half taken in stands there when one comes back, until it is taken in or begun anew', async ({
  program,
}) => {
  const { page } = program;
  const { keyboard } = page;
  const floor = new Floor(program);
  await floor.openOwnShop('Bracken Lane Repairs', 'Ada Quill');
  const kind = page.getByRole('textbox', { name: 'What kind of machine is it?' });
  const day = page.getByRole('textbox', { name: 'Came in on' });
  const said = page.getByRole('textbox', { name: 'What the owner says' });
  const take = page.getByRole('button', { name: /^Take it in/ });

  await page.getByRole('button', { name: /^Take in a machine/ }).click();
  await kind.fill('skid loader');
  await said.fill('Knocks.');
  await day.fill('the ninth');
  await expect(take).toBeDisabled();
  await expect(page.getByText('Say on what day it came in')).toBeVisible();
  await keyboard.press('Control+Home');
  await expect(kind).toBeHidden();
  await keyboard.press('Control+n');
  await expect(kind).toHaveValue('skid loader');
  await expect(said).toHaveValue('Knocks.');
  await expect(day).toHaveValue('the ninth');

  await page.getByRole('button', { name: 'Start over' }).click();
  await expect(kind).toHaveValue('');
  await kind.fill('field mower');
  await take.click();
  await expect(page.getByRole('article', { name: 'Notebook page' })).toBeVisible();
  await keyboard.press('Control+n');
  await expect(kind).toHaveValue('');
  await expect(page.getByRole('button', { name: 'Start over' })).toBeHidden();
  expect(await program.call('machine.floor', {})).toHaveLength(1);
});
