import { expect, test } from '../support/app/fixture.ts';
import { Floor } from './places/floor.ts';

test('a long machine name stands whole beside what can be undone, on a small screen', async ({ program }) => {
  const floor = new Floor(program);
  await floor.openOwnShop('Bracken Lane Repairs', 'Ada Quill');
  const visit = await floor.takeIn({
    kind: 'rough-terrain telescopic handler with cab',
    serial: 'RT 0382-K 118825',
    owner: 'Per Lindqvist',
    complaint: 'Uses water.',
    hours: '3 860',
  });
  await expect(visit.notebook).toContainText('Uses water.');
  const { page } = program;
  const visitId = await visit.visitId();
  const { id } = await program.call('suspicion.add', { visitId, what: 'upper hose leaks' });
  await program.call('suspicion.change', { id, what: 'upper hose leaks at its clamp' });
  const undo = page.getByRole('button', { name: /^Undo: / });
  await expect(undo).toBeVisible();
  const places = page.getByRole('navigation', { name: 'Places' });
  for (const size of ['desk', 'bench']) {
    for (const words of [/^Rough-terrain telescopic handler with cab RT 0382-K 118825$/, /^Floor$/]) {
      const step = places.getByRole('button', { name: words });
      const isWhole = await step
        .locator('span')
        .evaluate((each) => each.scrollHeight <= each.clientHeight + 1 && each.scrollWidth <= each.clientWidth + 1);
      expect(isWhole, `${words} at ${size} size`).toBe(true);
    }
    await expect(places.getByRole('heading')).toBeVisible();
    const [trail, link] = [await places.boundingBox(), await undo.boundingBox()];
    expect((trail?.x ?? 0) + (trail?.width ?? 0)).toBeLessThanOrEqual(link?.x ?? 0);
    const isInWindow = await page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth);
    expect(isInWindow).toBe(true);
    await program.picture(`header-${size}`);
    await page.keyboard.press('Control+Shift+L');
  }
});
