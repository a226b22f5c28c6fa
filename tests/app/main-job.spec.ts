import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { seriousViolations } from '../support/app/accessibility.ts';
import { expect, test } from '../support/app/fixture.ts';
import { project } from '../support/app/program.ts';
import { FindingCard } from './places/finding-card.ts';
import { Floor } from './places/floor.ts';
import { differenceFromPrint } from './places/printed-page.ts';

const demoPhoto = (name: string) => join(project, 'assets/demo/photos', name);
const fixture = (name: string) => join(project, 'tests/fixtures/photos', name);

test('from photos on disk to a condition report in the owner’s hand', async ({ program, folder }) => {
  test.setTimeout(240_000);
  const floor = new Floor(program);
  await floor.openOwnShop('Bracken Lane Repairs', 'Ada Quill');
  const visit = await floor.takeIn({
    kind: 'skid loader',
    serial: 'KL 2201',
    owner: 'Per Lindqvist',
    complaint: 'Uses water and smokes white when cold.',
    hours: '3 860',
  });
  await expect(visit.notebook).toContainText('Uses water and smokes white when cold.');
  await expect(visit.notebook).toContainText(/3\s860/);
  expect(await seriousViolations(program.page)).toEqual([]);

  // Photos: good ones, a rotated one, a HEIC, and three that are none. Refused ones have a reason; the others are in.
  const good = [
    demoPhoto('head-fire-face.jpg'),
    fixture('Landscape_6.jpg'),
    fixture('phone-rotated.heic'),
    fixture('palette.png'),
  ];
  const bad = [fixture('empty.jpg'), fixture('script.svg'), fixture('text.jpg')];
  const before = readFileSync(good[0] ?? '');
  const taken = await visit.takePhotos([...good, ...bad]);
  await expect(taken).toContainText('7 photos offered, 4 taken in', { timeout: 60_000 });
  await expect(taken.getByRole('listitem')).toHaveCount(3);
  await expect(taken.getByText('empty.jpg')).toBeVisible();
  const visitId = await visit.visitId();
  const record = await program.call('visit.get', { id: visitId });
  expect(record.shots.map(({ width, height }) => [width, height])).toEqual([
    expect.anything(),
    [1800, 1200],
    expect.anything(),
    expect.anything(),
  ]);
  expect(record.shots[0]?.digest).toBe(createHash('sha256').update(before).digest('hex'));

  // One mark of each tool; each begins a finding.
  const stage = await visit.toPhotos();
  expect(await seriousViolations(program.page)).toEqual([]);
  const { width = 0, height = 0 } = record.shots[0] ?? {};
  const at = (x: number, y: number): [number, number] => [Math.round(width * x), Math.round(height * y)];
  const draw: readonly [string, () => Promise<void>][] = [
    ['Point', () => stage.tap(...at(0.2, 0.2))],
    ['Line', () => stage.drag(at(0.3, 0.2), at(0.4, 0.3))],
    ['Arrow', () => stage.drag(at(0.5, 0.2), at(0.6, 0.3))],
    ['Span', () => stage.drag(at(0.7, 0.2), at(0.8, 0.3))],
    ['Area', () => stage.drag(at(0.3, 0.5), at(0.4, 0.5), at(0.4, 0.6), at(0.3, 0.6), at(0.3, 0.51))],
    [
      'Path',
      async () => {
        for (const [x, y] of [at(0.55, 0.5), at(0.6, 0.55), at(0.65, 0.52)]) await stage.tap(x, y);
        await program.page.keyboard.press('Enter');
      },
    ],
  ];
  for (const [index, [tool, gesture]] of draw.entries()) {
    await stage.pickTool(tool);
    await gesture();
    const card = new FindingCard(program, index + 1);
    await expect(card.element).toBeVisible();
    await card.close();
  }
  const drawn = await program.call('visit.get', { id: visitId });
  expect(drawn.marks.map(({ shape }) => shape)).toEqual(['point', 'line', 'arrow', 'span', 'area', 'path']);
  const path = drawn.marks[5];
  expect(path?.points).toHaveLength(3);
  // A mark lies where the hand was: within a screen pixel, which is a few pixels of the photo when it is fitted.
  expect(Math.hypot((path?.points[0]?.x ?? 0) - width * 0.55, (path?.points[0]?.y ?? 0) - height * 0.5)).toBeLessThan(
    4,
  );

  // The card: where, what, how sure, how big, how bad. The standing follows at once.
  await visit.toPage();
  const crack = await visit.openFinding(6);
  await crack.place('exhaust seat 3');
  await crack.kind('Crack');
  await crack.choose('How sure', /^Confirmed|Confirmed/);
  await crack.by('Penetrant');
  await crack.type('Length', '14 mm');
  await crack.choose('Can it hurt somebody?', 'no');
  await crack.choose('How soon it matters', 'Within 10 hours');
  await crack.choose('Does running make it worse?', 'yes');
  await crack.choose('What waiting can cost', /A large part/);
  await crack.close();
  await expect(visit.standing.getByRole('region', { name: 'Do not run' })).toContainText(
    /Exhaust seat, cylinder 3: crack 14\smm/,
  );

  const brakes = await visit.openFinding(1);
  await brakes.place('parking brake');
  await brakes.kind('Low output');
  await brakes.choose('How sure', 'Suspected');
  await brakes.choose('Can it hurt somebody?', 'yes');
  await brakes.choose('The worst that is believable', /Catastrophic/);
  await brakes.choose(/How likely/, /Probable/);
  await expect(brakes.element).toContainText('Together: High');
  await brakes.choose('How soon it matters', 'At the next start');
  await brakes.choose('Does running make it worse?', 'no');
  await brakes.choose('What waiting can cost', /A small repair/);
  await brakes.close();
  const order = async () => (await program.call('standing.get', { visitId })).lines.map(({ number }) => number);
  expect((await order()).slice(0, 2)).toEqual([1, 6]);
  expect(await seriousViolations(program.page)).toEqual([]);

  // Undo and redo, a gesture at a time.
  await program.page.keyboard.press('Control+z');
  await expect.poll(async () => (await program.call('visit.get', { id: visitId })).findings[0]?.damageClass).toBeNull();
  await program.page.keyboard.press('Control+Shift+z');
  await expect.poll(async () => (await program.call('visit.get', { id: visitId })).findings[0]?.damageClass).toBe(4);

  // The report, read by somebody else's program.
  const pdf = join(folder, 'Bericht für Per 数据.pdf');
  await visit.printReport(pdf);
  expect(await seriousViolations(program.page)).toEqual([]);
  const read = (tool: string, ...args: string[]) => execFileSync(tool, args, { encoding: 'utf8' });
  const text = read('pdftotext', '-layout', pdf, '-').replace(/\s+/g, ' ');
  expect(text).toContain('Draft');
  expect(text).toContain('Per Lindqvist');
  expect(text.indexOf('crack 14')).toBeGreaterThan(text.indexOf('Parking brake'));
  expect(text).toMatch(/page 1 of \d+/i);
  expect(read('pdfinfo', pdf)).toMatch(/Tagged:\s+yes/);
  expect(read('pdfimages', '-list', pdf).split('\n').length).toBeGreaterThan(3);
  // What the window shows is what prints, photos and all.
  await expect.poll(() => differenceFromPrint(visit.leaf(1), pdf, 1), { timeout: 20_000 }).toBeLessThan(5);
  const attached = join(folder, 'record.json');
  read('pdfdetach', '-save', '1', '-o', attached, pdf);
  expect(JSON.stringify(JSON.parse(readFileSync(attached, 'utf8')))).toContain('KL 2201');

  // The bytes of the original were never touched.
  expect(readFileSync(good[0] ?? '').equals(before)).toBe(true);
});
