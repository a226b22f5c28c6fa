import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { seriousViolations } from '../support/app/accessibility.ts';
import { expect, test } from '../support/app/fixture.ts';
import { type Program, project } from '../support/app/program.ts';
import { ThenAndNow } from './places/then-and-now.ts';
import { Visit } from './places/visit.ts';

/** Our own rendered weld: where its spots lie in both photos is exact, from the scene's description. */
interface Truth {
  readonly camera: {
    readonly fx: number;
    readonly cx: number;
    readonly cy: number;
    readonly rotation: readonly (readonly number[])[];
    readonly translation: readonly number[];
  };
}
const truthOf = (name: string) =>
  JSON.parse(readFileSync(join(project, 'assets/demo/photos', `${name}.truth.json`), 'utf8')) as Truth;

/** Where the scene's camera sees a point of the plate that the crack lies in. */
const seenBy = ({ camera }: Truth, x: number, y: number) => {
  const [u = 0, v = 0, w = 1] = camera.rotation.map(
    ([a = 0, b = 0], k) => a * x + b * y + (camera.translation[k] ?? 0),
  );
  return { x: (camera.fx * u) / w + camera.cx, y: (camera.fx * v) / w + camera.cy };
};

/** Five known points of the plate, as a bolt pattern would give them. */
const setScale = async (program: Program, shotId: string, name: string) => {
  const corners = [
    [-30, -20],
    [40, -20],
    [40, 25],
    [-30, 25],
    [5, 0],
  ] as const;
  const points = corners.map(([x, y]) => ({ px: seenBy(truthOf(name), x, y), mm: { x, y } }));
  const reference = { method: 'known-points', plane: 'Side plate', points, clickingPx: 0.5 } as const;
  await program.call('calibration.add', { shotId, reference });
};

/** The made-up shop's loader tractor, whose right tower was photographed in autumn and again in spring. */
const openTower = async (program: Program): Promise<void> => {
  const { page } = program;
  await page.getByRole('button', { name: 'Look around a made-up one' }).click();
  await expect(page.getByRole('heading', { name: 'Standing here' })).toBeVisible({ timeout: 90_000 });
  await page
    .getByRole('searchbox')
    .or(page.getByRole('textbox', { name: /^Find a machine/ }))
    .fill('4471');
  await page.getByRole('button', { name: /^Loader tractor TL 4471 W/ }).click();
  await page.getByRole('button', { name: '16 March 2026' }).click();
  const stage = await new Visit(program).toPhotos();
  await page.getByRole('button', { name: /^Photo \d+: Right tower/ }).click();
  await stage.isReady();
};

test('an earlier photo lies under today’s: matched, corrected by hand and by keys, its old mark a ghost, its growth told', async ({
  program,
  folder,
}) => {
  test.setTimeout(240_000);
  const { page } = program;
  await openTower(program);
  // The photo of the same finding is offered at once; U is its key.
  await expect(page.getByRole('button', { name: /^Then and now: 6 October 2025/ })).toBeVisible();
  await page.keyboard.press('u');
  const compare = new ThenAndNow(program);
  await expect(compare.panel).toContainText('6 October 2025 at 4\u202f182\u202fh, photo 4');
  await expect(compare.fit).toContainText(/\d+ spots were found in both/, { timeout: 60_000 });
  await program.picture('then-and-now-found');
  const ghosts = compare.now.locator('[data-mark=ghost]');
  await expect(ghosts).toHaveCount(1);
  await compare.keep();
  const pair = async () => {
    const record = await program.call('visit.get', { id: await visitId(program) });
    const [kept] = record.comparisons ?? [];
    if (!kept) throw new Error('nothing is kept');
    return kept;
  };
  expect((await pair()).pairs.every(({ by }) => by === 'found')).toBe(true);

  // A point is dragged onto another spot of today's photo, written at once, and taken back by one undo.
  const before = (await pair()).pairs;
  const from = before[0]?.to ?? { x: 0, y: 0 };
  await compare.dragPoint(1, 'Now', from.x + 30, from.y + 20);
  await expect.poll(async () => (await pair()).pairs[0]?.by).toBe('hand');
  const dragged = (await pair()).pairs[0]?.to ?? { x: 0, y: 0 };
  expect(Math.hypot(dragged.x - from.x - 30, dragged.y - from.y - 20)).toBeLessThan(3);
  await page.keyboard.press('Control+z');
  await expect.poll(async () => (await pair()).pairs).toEqual(before);

  // The same by keys alone: a nudge, then a point more, then one less.
  await compare.point(2, 'Then').focus();
  await page.keyboard.press('ArrowRight');
  await expect.poll(async () => (await pair()).pairs[1]?.from.x ?? 0).toBeGreaterThan(before[1]?.from.x ?? 0);
  await page.keyboard.press('a');
  await compare.now.focus();
  await page.keyboard.press('Enter');
  await expect(compare.point(before.length + 1, 'Now')).toBeVisible();
  await expect.poll(async () => (await pair()).pairs.length).toBe(before.length + 1);
  await compare.point(before.length + 1, 'Now').focus();
  await page.keyboard.press('Delete');
  await expect.poll(async () => (await pair()).pairs.length).toBe(before.length);

  // By the rule in both photos, which takes out no perspective: 13.4 mm by the scene's description, and no surer than that.
  await expect(compare.growth).toContainText(/Grown by 12 ± 4 mm, 5\.\d ± 2\.\d mm per 100 h\./);
  // Without a scale on both photos it says what is missing; with better ones, how far it has grown.
  const kept = await pair();
  for (const { id } of [...(await marksOf(program, kept.shotId)), ...(await marksOf(program, kept.earlier.shot.id))])
    await program.call('mark.change', { id, calibrationId: null });
  await expect(compare.growth).toContainText("The earlier photo's mark has no scale");
  await expect(compare.growth).toContainText("Today's mark has no scale");
  await setScale(program, kept.earlier.shot.id, 'tower-weld-autumn');
  await setScale(program, kept.shotId, 'tower-weld-spring');
  // 23 mm in autumn and 36.4 mm in spring, by the scene's description; 209 h lie between.
  await expect(compare.growth).toContainText(/Grown by 13\.\d ± [01]\.\d mm, 6\.\d+ ± 0\.\d+ mm per 100 h\./);
  await expect(compare.growth).toContainText('Two sizes give no safe life.');
  await program.picture('then-and-now-growth');
  expect(await seriousViolations(page)).toEqual([]);

  await compare.way('Swipe');
  await page.getByRole('slider', { name: 'Line between then and now' }).focus();
  await page.keyboard.press('ArrowRight');
  await expect(page.getByRole('slider')).toHaveAttribute('aria-valuenow', '52');
  await program.picture('then-and-now-swipe');
  await compare.way('Flip');
  await expect(page.getByRole('application', { name: 'Then, 6 October 2025' })).toBeVisible();
  await program.picture('then-and-now-flip-then');
  await page.keyboard.press('f');
  await expect(page.getByRole('application', { name: 'Now, 16 March 2026' })).toBeVisible();
  await program.picture('then-and-now-flip-now');
  expect(await seriousViolations(page)).toEqual([]);

  // The old mark becomes one of today's finding.
  await compare.oldMarks.getByRole('button', { name: 'Take over for today' }).click();
  await expect(compare.oldMarks.getByRole('button', { name: "Correct today's mark" })).toBeVisible();
  const record = await program.call('visit.get', { id: await visitId(program) });
  const carried = record.marks.filter(({ origin }) => origin.by === 'carried');
  expect(carried).toHaveLength(1);
  expect(carried[0]?.points).toHaveLength(25);

  // The report has both photos and the same numbers; the carried mark is taken back first.
  await page.keyboard.press('Control+z');
  await expect(compare.growth).toContainText('Grown by');
  const told = /Grown by .*? per 100 h\./.exec((await compare.growth.textContent()) ?? '')?.[0] ?? 'nothing told';
  await page.keyboard.press('Escape');
  await expect(page.getByRole('application', { name: /^Photo \d+: Right tower/ })).toBeVisible();
  const pdf = join(folder, 'then-and-now.pdf');
  await new Visit(program).printReport(pdf);
  const text = execFileSync('pdftotext', ['-layout', pdf, '-'], { encoding: 'utf8' });
  expect(text).toContain('Finding 3, then and now');
  expect(text.replaceAll(/\s+/g, ' ')).toContain(told.replaceAll(/\s+/g, ' '));
  // One change, one number: the page of what was before says the same, and no more the sizes as they were typed.
  const flat = execFileSync('pdftotext', [pdf, '-'], { encoding: 'utf8' }).replaceAll(/\s+/g, ' ');
  expect(flat.split(told.replaceAll(/\s+/g, ' ')).length - 1).toBe(2);
  expect(flat).toContain('By the photos: 23.');
  expect(flat).not.toMatch(/Length 23.mm then/);
  expect(text).toMatch(/Then: 6 October 2025, photo 4 of that visit\. +Now: 16 March 2026, photo 4\./);
});

const marksOf = async (program: Program, shotId: string) => {
  const [machine] = await program.call('machine.floor', { find: '4471' });
  const { visits } = await program.call('machine.page', { id: machine?.machine.id ?? '' });
  const records = await Promise.all(visits.map(({ visit }) => program.call('visit.get', { id: visit.id })));
  return records.flatMap(({ marks }) => marks).filter((mark) => mark.shotId === shotId);
};

const visitId = async (program: Program): Promise<string> => {
  const [machine] = await program.call('machine.floor', { find: '4471' });
  const page = await program.call('machine.page', { id: machine?.machine.id ?? '' });
  const spring = page.visits.find(({ visit }) => visit.date === '2026-03-16');
  if (!spring) throw new Error('the demo has no visit in spring');
  return spring.visit.id;
};

test('photos with nothing in common say so, and points set by hand still hold them', async ({ program }) => {
  test.setTimeout(180_000);
  const { page } = program;
  await openTower(program);
  await page.keyboard.press('u');
  const compare = new ThenAndNow(program);
  await compare.panel.getByRole('button', { name: 'Another earlier photo' }).click();
  await compare.panel.getByRole('list', { name: 'Earlier photos' }).getByRole('button').last().click();
  await expect(compare.fit).toContainText('No spot was found that shows in both photos.', { timeout: 60_000 });
  await program.picture('then-and-now-nothing-in-common');
  for (const [x, y] of [
    [200, 200],
    [1200, 900],
  ] as const) {
    await page.getByRole('button', { name: /^Add a point/ }).click();
    const at = await compare.onScreen(compare.now, x, y);
    await page.mouse.click(at.x, at.y);
  }
  await expect(compare.fit).toContainText('turned and scaled only');
  await expect(page.getByRole('radio', { name: 'Swipe' })).toBeVisible();
  await program.picture('then-and-now-by-hand');
});

test.describe('on a wide screen', () => {
  test.use({ windowSize: { width: 1920, height: 1080 } });
  test('then and now stand side by side', async ({ program }) => {
    test.setTimeout(180_000);
    await openTower(program);
    await program.page.keyboard.press('u');
    const compare = new ThenAndNow(program);
    await expect(compare.fit).toContainText(/\d+ spots were found in both/, { timeout: 60_000 });
    await compare.keep();
    await program.picture('then-and-now-wide');
    const [then, now] = [await compare.before.boundingBox(), await compare.now.boundingBox()];
    expect(Math.abs((then?.width ?? 0) - (now?.width ?? 1))).toBeLessThan(2);
  });
});
