import { statSync } from 'node:fs';
import { join } from 'node:path';
import { greyOf, readUprightPixels } from '../../electron/recorder/measuring/pixels.ts';
import { cardFaces } from '../../shared-lib/calibration/card/face.ts';
import { seriousViolations } from '../support/app/accessibility.ts';
import { expect, test } from '../support/app/fixture.ts';
import { project } from '../support/app/program.ts';
import { writeCardPhoto } from '../support/calibration/card-photo.ts';
import { Floor } from './places/floor.ts';
import { ScalePane } from './places/scale-pane.ts';

const scene = join(project, 'assets/demo/photos/block-deck.jpg');

test('a card is printed; in a photo one press finds it and keeps the scale, and a length beside it is true', async ({
  program,
  folder,
}) => {
  test.setTimeout(240_000);
  const floor = new Floor(program);
  await floor.openOwnShop('Bracken Lane Repairs', 'Ada Quill');

  // The sheet, from the menu, on the other paper.
  await expect(program.page.getByRole('region', { name: 'The floor is empty' })).toBeVisible();
  await program.pickFromMenu('Print calibration cards');
  const panel = program.page.getByRole('dialog', { name: 'Calibration cards' });
  await panel.getByRole('radio', { name: /US Letter/ }).click();
  const sheet = join(folder, 'Karten 数据.pdf');
  await program.saveAs(sheet);
  await panel.getByRole('button', { name: 'Write the sheet as PDF' }).click();
  await expect(panel.getByRole('status')).toContainText('Written to', { timeout: 30_000 });
  expect(statSync(sheet).size).toBeGreaterThan(10_000);
  expect(await seriousViolations(program.page)).toEqual([]);
  await program.picture('card-1-print');
  await program.page.keyboard.press('Escape');
  await expect(panel).toBeHidden();

  const [large] = cardFaces;
  if (!large) throw new Error('no card');
  const behind = greyOf(await readUprightPixels(scene));
  const view = { face: large, tiltDegrees: 30, fill: 0.4 };
  const { path, see } = await writeCardPhoto(join(folder, 'with card.jpg'), view, 88, behind);
  const visit = await floor.takeIn({
    kind: 'skid loader',
    serial: 'KC 2201',
    owner: 'Per Lindqvist',
    complaint: 'Uses water.',
    hours: '3 860',
  });
  const taken = await visit.takePhotos([path, scene]);
  await expect(taken).toContainText('2 photos offered, 2 taken in', { timeout: 60_000 });
  const visitId = await visit.visitId();
  await visit.toPhotos();
  const shots = (await program.call('visit.get', { id: visitId })).shots;
  expect(shots).toHaveLength(2);

  // By keyboard alone, once the pane is open.
  const scale = await ScalePane.open(program, 1);
  const card = scale.element.getByRole('region', { name: 'Calibration card' });
  const bar = card.getByRole('textbox', { name: /150 mm bar/ });
  await bar.focus();
  await program.page.keyboard.type('120');
  await expect(card).toContainText('Not a length between 140 and 160 mm');
  await expect(card.getByRole('button', { name: 'Find the card' })).toBeDisabled();
  await program.page.keyboard.press('Control+A');
  await program.page.keyboard.type('150');
  await program.page.keyboard.press('Tab');
  await expect(card.getByRole('button', { name: 'Find the card' })).toBeFocused();
  await program.page.keyboard.press('Enter');
  await expect(card.getByRole('status')).toContainText(/The large card is found and kept as the scale.*points fit to/, {
    timeout: 30_000,
  });
  await expect(scale.element.getByRole('list', { name: 'Faces with a scale' })).toContainText(
    /points of the large calibration card/,
  );
  expect(await seriousViolations(program.page)).toEqual([]);
  await program.picture('card-2-found');

  const record = await program.call('visit.get', { id: visitId });
  const [plane] = record.calibrations;
  expect(record.calibrations).toHaveLength(1);
  expect(plane?.plane).toBe('face that the card lies on');
  const shotId = plane?.shotId ?? '';
  await program.call('mark.add', {
    shotId,
    shape: 'line',
    points: [see({ x: 20, y: 110 }), see({ x: 100, y: 110 })],
  });
  const { sizes } = await program.call('visit.get', { id: visitId });
  const { value, expanded, unit } = sizes[0]?.size ?? { value: 0, expanded: 0, unit: '' };
  expect(unit).toBe('mm');
  expect(Math.abs(value - 80)).toBeLessThan(expanded ?? 0);
  expect(expanded).toBeLessThan(1.5);

  // The other photo has no card: a sentence says so, and no scale comes of it.
  await program.page.keyboard.press('Escape');
  await program.page.keyboard.press('n');
  const other = await ScalePane.open(program, 2);
  const without = other.element.getByRole('region', { name: 'Calibration card' });
  await without.getByRole('button', { name: 'Find the card' }).click();
  await expect(without).toContainText('No calibration card was found in this photo.', { timeout: 30_000 });
  expect((await program.call('visit.get', { id: visitId })).calibrations).toHaveLength(1);
  await program.picture('card-3-none');
});
