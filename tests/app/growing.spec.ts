import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { boundingBox, polygonArea } from '../../shared-lib/geometry/plane.ts';
import { seriousViolations } from '../support/app/accessibility.ts';
import { expect, test } from '../support/app/fixture.ts';
import { project } from '../support/app/program.ts';
import { FindingCard } from './places/finding-card.ts';
import { Floor } from './places/floor.ts';

/** A rendered scene of our own: the outline of the pitted band is exact in the photo. */
const scene = 'liner-coolant-side';
const photo = join(project, `assets/demo/photos/${scene}.jpg`);
const truth = JSON.parse(readFileSync(join(project, `assets/demo/photos/${scene}.truth.json`), 'utf8')) as {
  areas: Record<string, { px: [number, number][] }>;
};
const band = (truth.areas['pitted band']?.px ?? []).map(([x, y]) => ({ x, y }));

test('a patch is grown from a tap, and its coverage of the area drawn round it goes into the finding', async ({
  program,
}) => {
  test.setTimeout(180_000);
  const floor = new Floor(program);
  await floor.openOwnShop('Bracken Lane Repairs', 'Ada Quill');
  const visit = await floor.takeIn({
    kind: 'skid loader',
    serial: 'KL 2202',
    owner: 'Per Lindqvist',
    complaint: 'Loses coolant.',
    hours: '6 110',
  });
  await expect(await visit.takePhotos([photo])).toContainText('1 photo offered, 1 taken in', { timeout: 60_000 });
  const visitId = await visit.visitId();
  const stage = await visit.toPhotos();
  const box = boundingBox(band) ?? { left: 0, top: 0, right: 0, bottom: 0 };

  await stage.pickTool('Grow');
  await stage.tap((box.left + box.right) / 2, (box.top + box.bottom) / 2);
  const card = new FindingCard(program, 1);
  await expect(card.element).toBeVisible({ timeout: 20_000 });
  await card.kind('Scale');
  const sizes = card.element.getByRole('region', { name: 'Measured on the photo' });
  await expect(sizes).toContainText('Draw an area round it');
  await program.picture('growing-1-grown');
  const [mark] = (await program.call('visit.get', { id: visitId })).marks;
  expect(mark?.origin.by).toBe('grown');
  expect(Math.abs(polygonArea(mark?.points ?? []) / polygonArea(band) - 1)).toBeLessThan(0.2);

  // The zone: an area round the band.
  await stage.pickTool('Area');
  const corners = [
    [box.left - 60, box.top - 50],
    [box.right + 60, box.top - 50],
    [box.right + 60, box.bottom + 50],
    [box.left - 60, box.bottom + 50],
  ] as const;
  for (const [x, y] of corners) await stage.tap(x, y);
  await stage.tap(...corners[0]);
  await expect(sizes).toContainText(/\d ± \d+(\.\d+)? % ?of the area drawn round it/);
  await sizes.getByRole('button', { name: /as the coverage$/ }).click();
  await expect(sizes).toContainText('is the coverage');
  expect(await seriousViolations(program.page)).toEqual([]);
  await program.picture('growing-2-coverage');
  const coverage = (await program.call('visit.get', { id: visitId })).findings[0]?.quantities.coverage;
  expect(coverage).toMatchObject({ origin: 'photo' });
});
