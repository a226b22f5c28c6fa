import { expect, test } from '../support/app/fixture.ts';
import { Floor } from './places/floor.ts';

test('what was put right stands when the machine has gone out, and one key opens the visit when it is back', async ({
  program,
}) => {
  const { page } = program;
  const floor = new Floor(program);
  await floor.openOwnShop('Bracken Lane Repairs', 'Ada Quill');
  const visit = await floor.takeIn({
    kind: 'skid loader',
    serial: 'KL 2208',
    owner: 'Per Lindqvist',
    complaint: 'Knocks.',
    hours: '3 860',
  });
  await expect(visit.notebook).toContainText('Knocks.');
  const visitId = await visit.visitId();
  await page.getByRole('button', { name: 'Change', exact: true }).press('Enter');
  const panel = page.getByRole('dialog', { name: 'This visit' });
  await panel.getByRole('textbox', { name: 'Hour meter shows' }).fill('3 866');
  await panel.getByRole('button', { name: 'The machine has gone out' }).press('Enter');
  const again = page.getByRole('button', { name: /^It is here again/ });
  await expect(again).toBeVisible();
  const { visit: left } = await program.call('visit.get', { id: visitId });
  expect(left.meter.reading).toBe(3866);
  expect(left.leftAtMs).not.toBeNull();

  await page.keyboard.press('n');
  await page.keyboard.type('Knocks again.');
  await page.keyboard.press('Tab');
  await page.keyboard.type('3 900');
  await page.keyboard.press('Control+Enter');
  await expect(visit.notebook).toContainText('Knocks again.');
});
