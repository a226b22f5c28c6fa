import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from '../support/app/fixture.ts';
import type { Program } from '../support/app/program.ts';
import { type Spot, storedPicture, upright } from './marks-land/picture.ts';
import { boxMiddleOf, distance, groupsOf, middleOf, Pixels } from './marks-land/pixels.ts';
import { FindingCard } from './places/finding-card.ts';
import { Floor } from './places/floor.ts';
import type { Stage } from './places/stage.ts';
import type { Visit } from './places/visit.ts';

const orientations = [1, 2, 3, 4, 5, 6, 7, 8];
const dotsPerInch = 300;
/** Farther than a mark's ring and ticks reach from their spot, even were they off it, and nearer than its tag. */
const reachOnScreenPx = 27;
const reachInPrintPx = 60;

async function visitWithPhotos(program: Program, folder: string, turned: readonly number[]): Promise<Visit> {
  const floor = new Floor(program);
  await floor.openOwnShop('Bracken Lane Repairs', 'Ada Quill');
  const visit = await floor.takeIn({
    kind: 'skid loader',
    serial: 'ML 0001',
    owner: 'Per Lindqvist',
    complaint: 'Runs rough.',
    hours: '1 200',
  });
  const paths: string[] = [];
  for (const orientation of turned) {
    const path = join(folder, `turned ${orientation}.jpg`);
    writeFileSync(path, await storedPicture(orientation));
    paths.push(path);
  }
  const taken = await visit.takePhotos(paths);
  await expect(taken).toContainText(new RegExp(`${turned.length} taken in`), { timeout: 60_000 });
  return visit;
}

/** The stage as it stands, once everything on it is drawn. */
async function seen({ page }: Program, { element }: Stage): Promise<Pixels> {
  await page.mouse.move(2, 2);
  await page.waitForFunction(() => {
    const stage = document.querySelector<HTMLElement>('[role=application]');
    const { moving, marks, photo } = stage?.dataset ?? {};
    return moving === 'false' && marks === 'drawn' && photo !== undefined && photo !== 'loading';
  });
  const clip = await element.boundingBox();
  if (!clip) throw new Error('the stage is not there');
  return new Pixels(await page.screenshot({ clip }), clip);
}

test('a photo that was stored turned or mirrored is shown upright, with its pixels where the stage says', async ({
  program,
  folder,
}) => {
  test.setTimeout(240_000);
  const visit = await visitWithPhotos(program, folder, orientations);
  const stage = await visit.toPhotos();
  for (const orientation of orientations) {
    await program.page.getByRole('button', { name: new RegExp(`^Photo ${orientation}(:|$)`) }).click();
    await expect(stage.element).toHaveAccessibleName(new RegExp(`^Photo ${orientation}`));
    await stage.isReady();
    const pixels = await seen(program, stage);
    const cross = await stage.onScreen(upright.cross.x, upright.cross.y);
    expect(distance(middleOf(pixels.of('red')), cross), `orientation ${orientation}`).toBeLessThan(1.5);
    const squares = groupsOf(pixels.of('magenta'), 40);
    expect(squares).toHaveLength(2);
    for (const [index, { x, y }] of upright.fiducials.entries()) {
      const there = await stage.onScreen(x, y);
      expect(distance(squares[index] ?? { x: 0, y: 0 }, there), `orientation ${orientation}`).toBeLessThan(1.5);
    }
  }
});

test('a mark on a photo that was stored turned lies on its feature, in the window and in print', async ({
  program,
  folder,
}) => {
  test.setTimeout(240_000);
  const visit = await visitWithPhotos(program, folder, [6]);
  const stage = await visit.toPhotos();

  // The hand goes where the eye sees the feature; where the program thinks that it lies has no part in it.
  const before = await seen(program, stage);
  const cross = middleOf(before.of('red'));
  await stage.pickTool('Point');
  await program.page.mouse.click(cross.x, cross.y);
  const card = new FindingCard(program, 1);
  await expect(card.element).toBeVisible();
  // Seen and shown, so that the mark is drawn without gaps.
  const visitId = await visit.visitId();
  const { findings } = await program.call('visit.get', { id: visitId });
  await program.call('finding.change', {
    id: findings[0]?.id ?? '',
    state: 'confirmed',
    defect: 'crack',
    methods: ['PT'],
  });
  // With the card open the photo is smaller; the ends of the line are looked for anew.
  await stage.isReady();
  const [from, to] = groupsOf((await seen(program, stage)).of('yellow'), 40);
  if (!from || !to) throw new Error('the ends of the line are not seen');
  await stage.pickTool('Line');
  await program.page.mouse.move(from.x, from.y);
  await program.page.mouse.down();
  await program.page.mouse.move(to.x, to.y, { steps: 8 });
  await program.page.mouse.up();
  const marks = async () => (await program.call('visit.get', { id: visitId })).marks;
  await expect.poll(async () => (await marks()).map(({ shape }) => shape)).toEqual(['point', 'line']);

  // In the record: on the feature's own pixel, as exactly as a pixel of the screen can say.
  const [point, line] = await marks();
  const tolerance = 1.5 / (await scaleOf(stage));
  expect(distance(point?.points[0] ?? { x: 0, y: 0 }, upright.cross)).toBeLessThan(tolerance);
  for (const [index, end] of upright.ends.entries()) {
    expect(distance(line?.points[index] ?? { x: 0, y: 0 }, end)).toBeLessThan(tolerance);
  }

  // In the window, with nothing picked: the ring lies round the feature and leaves it to be seen.
  await card.close();
  await stage.isReady();
  await stage.tap(1200, 900);
  const shown = await seen(program, stage);
  await program.picture('mark-on-a-turned-photo');
  const spot = await stage.onScreen(upright.cross.x, upright.cross.y);
  expectRingRound(shown, { middle: spot, radius: reachOnScreenPx }, 1.5);
  for (const end of upright.ends) expectTickAt(shown, await stage.onScreen(end.x, end.y), 2);

  // In print, wherever the whole photo stands.
  const pdf = join(folder, 'turned.pdf');
  await visit.printReport(pdf);
  const pages = pagesOf(pdf, join(folder, 'pages')).flatMap((page) => {
    const squares = groupsOf(page.of('magenta'), 40);
    const [first, last] = squares;
    return squares.length === 2 && first && last ? [{ page, place: placedBy(first, last) }] : [];
  });
  expect(pages.length).toBeGreaterThan(0);
  for (const { page, place } of pages) {
    const printed = place(upright.cross);
    expect(distance(middleOf(page.of('red')), printed)).toBeLessThan(2);
    expectRingRound(page, { middle: printed, radius: reachInPrintPx }, 2);
    for (const end of upright.ends) expectTickAt(page, place(end), 2);
  }
});

test('a mark is drawn once, also when its photo came after another and is then zoomed', async ({ program, folder }) => {
  const visit = await visitWithPhotos(program, folder, [1, 6]);
  // Zooming is about the middle, near which a mark would stay in its place.
  const offCentre = { x: upright.cross.x + 150, y: upright.cross.y - 60 };
  const { shots } = await program.call('visit.get', { id: await visit.visitId() });
  for (const { id } of shots)
    await program.call('mark.add', { shotId: id, shape: 'point', points: [offCentre], findingId: null });
  const stage = await visit.toPhotos();
  await seen(program, stage);
  await program.page.getByRole('button', { name: /^Photo 2(:|$)/ }).click();
  await expect(stage.element).toHaveAccessibleName(/^Photo 2/);
  await seen(program, stage);
  const fitted = await scaleOf(stage);
  await stage.element.focus();
  await program.page.keyboard.press('+');
  await expect.poll(() => scaleOf(stage)).toBeGreaterThan(fitted);
  const halo = (await seen(program, stage)).of('halo');
  const clip = await stage.element.boundingBox();
  // The stage's own rim, which says where the keyboard is, has the same blue.
  const onPhoto = halo.filter(
    ({ x, y }) => clip && Math.min(x - clip.x, y - clip.y, clip.x + clip.width - x, clip.y + clip.height - y) > 8,
  );
  const spot = await stage.onScreen(offCentre.x, offCentre.y);
  expect(onPhoto.length).toBeGreaterThan(100);
  expect(onPhoto.filter((pixel) => distance(pixel, spot) > reachOnScreenPx)).toEqual([]);
});

async function scaleOf(stage: Stage): Promise<number> {
  const [one, other] = [await stage.onScreen(0, 0), await stage.onScreen(100, 0)];
  return (other.x - one.x) / 100;
}

/** The blue of the ring and its ticks is centred on the spot, and white goes all the way round it. */
function expectRingRound(pixels: Pixels, within: { middle: Spot; radius: number }, tolerancePx: number): void {
  const spot = within.middle;
  const halo = pixels.of('halo', within);
  expect(halo.length).toBeGreaterThan(100);
  expect(distance(boxMiddleOf(halo), spot)).toBeLessThan(tolerancePx);
  const white = pixels.of('white', within);
  const turns = new Set(white.map(({ x, y }) => Math.floor((Math.atan2(y - spot.y, x - spot.x) / Math.PI + 1) * 8)));
  expect(turns.size).toBeGreaterThanOrEqual(16);
}

/** The tick at a line's true end crosses that end: its white is no farther from it than this. */
function expectTickAt(pixels: Pixels, end: Spot, tolerancePx: number): void {
  const white = pixels.of('white', { middle: end, radius: reachOnScreenPx });
  const nearest = Math.min(...white.map((spot) => distance(spot, end)));
  expect(nearest).toBeLessThan(tolerancePx);
}

/** Where a pixel of the photo lies on paper, told by two that no mark comes near. */
function placedBy(first: Spot, last: Spot): (spot: Spot) => Spot {
  const [a, b] = upright.fiducials;
  const scale = { x: (last.x - first.x) / (b.x - a.x), y: (last.y - first.y) / (b.y - a.y) };
  return ({ x, y }) => ({ x: first.x + (x - a.x) * scale.x, y: first.y + (y - a.y) * scale.y });
}

function pagesOf(pdf: string, folder: string): Pixels[] {
  mkdirSync(folder);
  execFileSync('pdftoppm', ['-r', String(dotsPerInch), '-png', pdf, join(folder, 'page')]);
  return readdirSync(folder)
    .sort()
    .map((name) => new Pixels(readFileSync(join(folder, name))));
}
