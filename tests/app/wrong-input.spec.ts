import { expect, test } from '../support/app/fixture.ts';
import { Choices } from './places/decision.ts';
import { Floor } from './places/floor.ts';

test('what does not read is said beside its field in plain words, and fields written in quick turn all stay', async ({
  program,
}) => {
  const { page } = program;
  const { keyboard } = page;
  const floor = new Floor(program);
  await floor.openOwnShop('Bracken Lane Repairs', 'Ada Quill');
  const visit = await floor.takeIn({
    kind: 'skid loader',
    serial: 'KL 2206',
    owner: 'Per Lindqvist',
    complaint: 'Knocks.',
    hours: '3 860',
  });
  await expect(visit.notebook).toContainText('Knocks.');
  const visitId = await visit.visitId();

  await page.getByRole('button', { name: 'Received' }).click();
  const conditions = page.getByRole('region', { name: 'Conditions' });
  await conditions.getByRole('textbox', { name: 'Altitude' }).fill('120 m');
  await keyboard.press('Tab');
  await keyboard.type('dry');
  await keyboard.press('Tab');
  await keyboard.type('clay');
  await keyboard.press('Enter');
  await expect
    .poll(async () => (await program.call('visit.get', { id: visitId })).visit.conditions)
    .toEqual({ altitude: '120 m', weather: 'dry', ground: 'clay' });
  await keyboard.press('Escape');

  await program.call('finding.add', { visitId, defect: 'crack', locations: ['ENG/BLK'] });
  const choices = new Choices(program);
  await choices.open();
  await page.getByRole('button', { name: 'Write a choice' }).click();
  await page.getByRole('button', { name: 'Costs and work of “make safe”' }).click();
  const panel = page.getByRole('dialog', { name: 'make safe' });
  const [currency, tax] = ['Currency, three letters', 'Tax'].map((name) =>
    panel.getByRole('textbox', { name: new RegExp(`^${name}`) }),
  );
  await currency?.fill('E1');
  await currency?.press('Tab');
  await keyboard.type('a fifth');
  await keyboard.press('Enter');
  await expect(currency ?? panel).toHaveAccessibleDescription(/Not three letters/);
  await expect(tax ?? panel).toHaveAccessibleDescription(/no number/);
  await expect(panel).not.toContainText('pattern');
  await tax?.fill('20');
  await tax?.press('Shift+Tab');
  await keyboard.type('eur');
  await keyboard.press('Enter');
  await expect
    .poll(async () => (await program.call('choices.get', { visitId })).money)
    .toEqual({ currency: 'EUR', taxPercent: '20' });
  await expect(panel.getByRole('alert')).toHaveCount(0);
});
