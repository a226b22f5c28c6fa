import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { seriousViolations } from '../support/app/accessibility.ts';
import { expect, test } from '../support/app/fixture.ts';
import { project } from '../support/app/program.ts';
import { FindingCard } from './places/finding-card.ts';
import { Floor } from './places/floor.ts';
import { ScalePane } from './places/scale-pane.ts';

/** A rendered scene of our own: where every feature lies, in the plane and in the photo, is exact. */
const scene = 'head-fire-face';
const photo = join(project, `assets/demo/photos/${scene}.jpg`);
const truth = JSON.parse(readFileSync(join(project, `assets/demo/photos/${scene}.truth.json`), 'utf8')) as {
  features: Record<string, { mm: [number, number, number]; px: [number, number] }>;
  cracks: Record<string, { lengthMm: number; px: [number, number][] }>;
};
const corners = [
  'intake seat 2',
  'bolt hole between 2 and 3, near side',
  'exhaust seat 3',
  'bolt hole between 2 and 3, far side',
  'exhaust seat 2',
];
const crack = truth.cracks['seat to injector bore, cylinder 3'];

test('a crack gets its length from the photo, and the report says the same', async ({ program, folder }) => {
  test.setTimeout(240_000);
  const floor = new Floor(program);
  await floor.openOwnShop('Bracken Lane Repairs', 'Ada Quill');
  const visit = await floor.takeIn({
    kind: 'skid loader',
    serial: 'KL 2201',
    owner: 'Per Lindqvist',
    complaint: 'Uses water.',
    hours: '3 860',
  });
  const taken = await visit.takePhotos([photo]);
  await expect(taken).toContainText('1 photo offered, 1 taken in', { timeout: 60_000 });
  const visitId = await visit.visitId();
  const stage = await visit.toPhotos();

  // The scale, by five points of the machined face.
  const scale = await ScalePane.open(program, 1);
  await scale.choose('In the photo there is', /known points/);
  await scale.choose('The points are', /each at a place/);
  for (const name of corners) {
    const [x, y] = truth.features[name]?.px ?? [0, 0];
    await stage.tap(x, y);
  }
  for (const [index, name] of corners.entries()) {
    const [x = 0, y = 0] = truth.features[name]?.mm ?? [];
    await scale.type(`Point ${index + 1} across`, `${x}`);
    await scale.type(`Point ${index + 1} down`, `${y}`);
  }
  await scale.type('The face it lies in', 'fire face');
  await expect(scale.fit).toContainText(/px per mm/);
  await expect(scale.fit).toContainText(/The points fit to/);
  expect(await seriousViolations(program.page)).toEqual([]);
  await program.picture('measuring-1-scale');
  await scale.keep();

  // The crack, by a tap at each end.
  await stage.pickTool('Trace');
  const ends: readonly (readonly [number, number])[] = [crack?.px[0] ?? [0, 0], crack?.px.at(-1) ?? [0, 0]];
  for (const [x, y] of ends) await stage.tap(x, y);
  const card = new FindingCard(program, 1);
  await expect(card.element).toBeVisible({ timeout: 20_000 });
  await card.kind('Crack');
  const sizes = card.element.getByRole('region', { name: 'Measured on the photo' });
  await expect(sizes).toContainText(/\d ± \d.* mm/);
  await program.picture('measuring-2-traced');
  await sizes.getByRole('button', { name: /as the length$/ }).click();
  await expect(sizes).toContainText('is the length');
  expect(await seriousViolations(program.page)).toEqual([]);
  const record = await program.call('visit.get', { id: visitId });
  const length = record.findings[0]?.quantities.length;
  expect(Math.abs((length?.value ?? 0) - (crack?.lengthMm ?? 0))).toBeLessThan(length?.uncertainty ?? 0);
  expect(record.marks[0]?.origin.by).toBe('traced');

  // The report, read by somebody else's program, has the very number of the window: at the finding and under the photo.
  const pdf = join(folder, 'Bericht 数据.pdf');
  await visit.printReport(pdf);
  const text = execFileSync('pdftotext', [pdf, '-'], { encoding: 'utf8' }).replace(/\s+/g, ' ');
  const typed = length?.typed ?? 'no length';
  expect(text).toContain(`Length ${typed}`);
  expect(text).toContain(`Measured ${typed}; scale from 5 known points in this face: fire face.`);
  expect(text).toMatch(/\d+ mm at the mark/);
});
