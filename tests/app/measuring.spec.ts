import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { invert, project } from '../../shared-lib/calibration/homography.ts';
import { seriousViolations } from '../support/app/accessibility.ts';
import { expect, test } from '../support/app/fixture.ts';
import { project as projectFolder } from '../support/app/program.ts';
import { FindingCard } from './places/finding-card.ts';
import { Floor } from './places/floor.ts';
import { ScalePane } from './places/scale-pane.ts';

/** A rendered scene of our own: where every feature lies, in the plane and in the photo, is exact. */
const scene = 'head-fire-face';
const photo = join(projectFolder, `assets/demo/photos/${scene}.jpg`);
const truth = JSON.parse(readFileSync(join(projectFolder, `assets/demo/photos/${scene}.truth.json`), 'utf8')) as {
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
  expect(text).toContain(`Measured in this photo: ${typed}; scale from 5 known points in this face: fire face.`);
  expect(text).toMatch(/\d+ mm at the mark/);

  // The mark goes out as a Web Annotation, is taken away, and comes back as it was.
  await visit.toPhotos();
  const pane = program.page.getByRole('region', { name: 'Marks as a file' });
  const file = join(folder, 'marks 数据.jsonld');
  await program.saveAs(file);
  await pane.getByRole('button', { name: 'Write its marks to a file' }).click();
  await expect(pane.getByRole('status')).toContainText('1 mark written to');
  const [mark] = record.marks;
  await program.call('mark.remove', { id: mark?.id ?? '' });
  await program.chooseFiles([file]);
  await pane.getByRole('button', { name: 'Bring in marks from a file' }).click();
  await expect(pane.getByRole('status')).toContainText('1 mark brought in');
  expect((await program.call('visit.get', { id: visitId })).marks).toEqual([mark]);
});

test('a face is seen square on, marked there, and led by the keyboard alone', async ({ program }) => {
  test.setTimeout(240_000);
  const floor = new Floor(program);
  await floor.openOwnShop('Bracken Lane Repairs', 'Ada Quill');
  const visit = await floor.takeIn({
    kind: 'skid loader',
    serial: 'KL 2202',
    owner: 'Per Lindqvist',
    complaint: '',
    hours: '10',
  });
  await expect(await visit.takePhotos([photo])).toContainText('1 photo offered, 1 taken in', { timeout: 60_000 });
  const visitId = await visit.visitId();
  const record = async () => await program.call('visit.get', { id: visitId });
  const [shot] = (await record()).shots;
  const at = (name: string) => {
    const { px = [0, 0], mm = [0, 0, 0] } = truth.features[name] ?? {};
    return { px: { x: px[0], y: px[1] }, mm: { x: mm[0], y: mm[1] } };
  };
  const points = corners.map(at);
  const reference = { method: 'known-points', plane: 'fire face', points } as const;
  await program.call('calibration.add', { shotId: shot?.id ?? '', reference });

  const stage = await visit.toPhotos();
  await program.page.getByRole('button', { name: 'Straighten fire face' }).click();
  await expect(program.page.getByRole('button', { name: 'As photographed' })).toBeVisible();
  await expect(stage.element).toHaveAttribute('data-photo', /full/, { timeout: 30_000 });
  await stage.isReady();

  // A line drawn on the straightened picture lies on the photo where the same two features are.
  const [calibration] = (await record()).calibrations;
  const { toPhoto } = await program.call('photo.straighten', { calibrationId: calibration?.id ?? '' });
  const back = invert(toPhoto);
  const seats = [at('exhaust seat 2'), at('exhaust seat 3')];
  const onStraight = seats.map(({ px }) => (back && project(back, px)) ?? { x: 0, y: 0 });
  await stage.pickTool('Line');
  const [a, b] = onStraight.map(({ x, y }): [number, number] => [x, y]);
  await stage.drag(a ?? [0, 0], b ?? [0, 0]);
  const card = new FindingCard(program, 1);
  await expect(card.element).toBeVisible();
  await program.picture('measuring-3-straightened');
  expect(await seriousViolations(program.page)).toEqual([]);
  const [mark] = (await record()).marks;
  for (const [index, { px }] of seats.entries()) {
    const point = mark?.points[index] ?? { x: 0, y: 0 };
    expect(Math.hypot(point.x - px.x, point.y - px.y)).toBeLessThan(4);
  }
  // The scene's own distance between the two seats, in its plane.
  const [{ mm: p } = { mm: { x: 0, y: 0 } }, { mm: q } = { mm: { x: 0, y: 0 } }] = seats;
  const [size] = (await record()).sizes;
  expect(Math.abs((size?.size.value ?? 0) - Math.hypot(p.x - q.x, p.y - q.y))).toBeLessThan(size?.size.expanded ?? 0);

  // The keyboard alone: the scale's pane opens and closes, a trace is set by the cross-hair.
  await program.page.getByRole('button', { name: 'As photographed' }).click();
  await card.close();
  await stage.element.focus();
  await program.page.keyboard.press('c');
  const pane = program.page.getByRole('complementary', { name: 'Scale of photo 1' });
  await expect(pane).toBeVisible();
  await program.page.keyboard.press('c');
  await expect(pane).toBeHidden();
  await program.page.keyboard.press('t');
  await stage.element.focus();
  await program.page.keyboard.press('Enter');
  await program.page.keyboard.press('Enter');
  for (let step = 0; step < 6; step += 1) await program.page.keyboard.press('Shift+ArrowRight');
  await program.page.keyboard.press('Enter');
  await expect.poll(async () => (await record()).marks.length, { timeout: 20_000 }).toBe(2);
  const traced = (await record()).marks.find(({ origin }) => origin.by === 'traced');
  expect(traced).toBeDefined();
  await program.picture('measuring-4-keyboard');
  await program.page.keyboard.press('Control+z');
  await expect.poll(async () => (await record()).findings.filter(({ binned }) => !binned).length).toBe(1);
});
