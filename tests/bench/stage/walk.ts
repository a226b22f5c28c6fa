/**
 * Works the stage in a real browser with mouse, touch and keyboard alone, proves that marks lie where they were put in
 * every picture of the photo, and leaves pictures to look at in the folder named on the command line.
 *
 *   xvfb-run -a node tests/bench/stage/walk.ts [folder]
 */
import assert from 'node:assert/strict';
import { mkdir } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import sharp from 'sharp';
import { type ExifOrientation, uprightSize } from '../../../shared-lib/geometry/orientation.ts';
import { screenPoint } from '../../../shared-lib/geometry/spaces.ts';
import { toImage, toScreen, type View } from '../../../shared-lib/geometry/viewport.ts';
import type { Mark } from '../../../shared-lib/model/mark.ts';
import { openBrowser, type StagePageServer, serveStagePage, writePhoto, writeScreenPicture } from './stage-page.ts';

const pictures = process.argv[2] ?? join(tmpdir(), 'stage-walk');

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** The stage in the page: spots of the photo become places on the screen through the view that the stage tells. */
class StageInPage {
  private readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  get stage() {
    return this.page.getByRole('application');
  }

  async view(): Promise<View> {
    return JSON.parse((await this.stage.getAttribute('data-view')) ?? 'null');
  }

  /** Waits until nothing moves and the pictures are drawn. */
  async rest(): Promise<void> {
    await this.page.locator('[role=application][data-moving=false][data-marks=drawn][data-photo=full]').waitFor();
  }

  async onScreen(spot: Spot): Promise<Spot> {
    const box = await this.stage.boundingBox();
    const at = toScreen(await this.view(), spot);
    assert.ok(box);
    return { x: box.x + at.x, y: box.y + at.y };
  }

  async onPhoto(place: Spot): Promise<Spot> {
    const box = await this.stage.boundingBox();
    assert.ok(box);
    return toImage(await this.view(), screenPoint(place.x - box.x, place.y - box.y));
  }

  async click(spot: Spot): Promise<void> {
    const { x, y } = await this.onScreen(spot);
    await this.page.mouse.click(x, y);
  }

  async pull(...spots: Spot[]): Promise<void> {
    for (const [index, spot] of spots.entries()) {
      const { x, y } = await this.onScreen(spot);
      await this.page.mouse.move(x, y, { steps: 4 });
      if (index === 0) await this.page.mouse.down();
    }
    await this.page.mouse.up();
  }

  async marks(): Promise<Mark[]> {
    return JSON.parse((await this.page.locator('#marks').textContent()) ?? '[]');
  }

  async newest(): Promise<Mark> {
    const mark = (await this.marks()).at(-1);
    assert.ok(mark, 'a mark was drawn');
    return mark;
  }

  picture(name: string) {
    return this.page.screenshot({ path: join(pictures, `${name}.png`) });
  }
}

function near(actual: Spot | undefined, expected: Spot, within: number, what: string): void {
  assert.ok(actual, what);
  assert.ok(
    Math.hypot(actual.x - expected.x, actual.y - expected.y) <= within,
    `${what}: ${JSON.stringify(actual)} should be within ${within} of ${JSON.stringify(expected)}`,
  );
}

async function openStage(
  page: Page,
  server: StagePageServer,
  query: Record<string, string | number>,
): Promise<StageInPage> {
  const address = new URLSearchParams(Object.entries(query).map(([name, value]) => [name, String(value)]));
  await page.goto(`${server.address}/?page=stage&${address}`);
  const stage = new StageInPage(page);
  await page.locator('[role=application] canvas').first().waitFor();
  await stage.rest();
  return stage;
}

/** While an arrow is being pulled its white line is on the screen already; Escape takes it off again. */
async function draftIsSeen(page: Page, stage: StageInPage): Promise<void> {
  const [from, to] = [await stage.onScreen({ x: 1000, y: 2400 }), await stage.onScreen({ x: 3000, y: 2400 })];
  const middle = { left: Math.round((from.x + to.x) / 2), top: Math.round(from.y) - 1, width: 3, height: 3 };
  const brightness = async () => {
    const { channels } = await sharp(
      await sharp(await page.screenshot())
        .extract(middle)
        .png()
        .toBuffer(),
    ).stats();
    return channels[0]?.mean ?? 0;
  };
  await page.keyboard.press('r');
  assert.ok((await brightness()) < 180, 'bare photo before the pull');
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 5 });
  assert.ok((await brightness()) > 200, 'the draft is on the screen');
  await page.keyboard.press('Escape');
  await page.mouse.up();
  assert.ok((await brightness()) < 180, 'Escape took the draft off');
}

async function everyToolByMouse(page: Page, server: StagePageServer): Promise<void> {
  const stage = await openStage(page, server, { photo: 'plain', width: 4000, height: 3000, marks: 9 });
  const perScreenPx = 1 / (await stage.view()).scale;
  const key = async (letter: string) => {
    await page.keyboard.press(letter);
    await page.mouse.move(300, 300);
  };
  const draw: Record<string, () => Promise<void>> = {
    p: () => stage.click({ x: 1000, y: 700 }),
    l: () => stage.pull({ x: 1300, y: 700 }, { x: 1700, y: 800 }),
    r: () => stage.pull({ x: 2000, y: 700 }, { x: 2300, y: 900 }),
    s: () => stage.pull({ x: 2600, y: 700 }, { x: 3100, y: 700 }),
    k: async () => {
      for (const spot of [
        { x: 900, y: 1500 },
        { x: 1200, y: 1450 },
        { x: 1500, y: 1550 },
      ])
        await stage.click(spot);
      await page.keyboard.press('Enter');
    },
    a: () =>
      stage.pull(
        { x: 2200, y: 1400 },
        { x: 2600, y: 1400 },
        { x: 2600, y: 1800 },
        { x: 2200, y: 1800 },
        { x: 2210, y: 1450 },
      ),
  };
  const shapes: string[] = [];
  for (const [letter, gesture] of Object.entries(draw)) {
    await key(letter);
    await gesture();
    shapes.push((await stage.newest()).shape);
  }
  assert.deepEqual(shapes, ['point', 'line', 'arrow', 'span', 'path', 'area']);
  await draftIsSeen(page, stage);
  const [, line] = (await stage.marks()).slice(-6);
  near(line?.points[0], { x: 1300, y: 700 }, perScreenPx, 'the line begins where it was begun');
  near(line?.points[1], { x: 1700, y: 800 }, perScreenPx, 'the line ends where it was ended');
  await key('v');
  await stage.click({ x: 1200, y: 1450 });
  await stage.rest();
  await stage.picture('every-tool');
  await stage.pull({ x: 1200, y: 1450 }, { x: 1200, y: 1250 });
  near((await stage.marks()).at(-2)?.points[1], { x: 1200, y: 1250 }, 2 * perScreenPx, 'the point was moved');
  await stage.rest();
  const before = Number(await page.locator('#count').textContent());
  await page.keyboard.press('Escape');
  await page.keyboard.press('Delete');
  assert.equal(Number(await page.locator('#count').textContent()), before - 1, 'Delete removed the picked mark');
}

async function keyboardAlone(page: Page, server: StagePageServer): Promise<void> {
  const stage = await openStage(page, server, { photo: 'plain', width: 4000, height: 3000, marks: 0 });
  await stage.stage.focus();
  const press = async (name: string, times = 1) => {
    for (let time = 0; time < times; time++) await page.keyboard.press(name);
  };
  await press('k');
  await press('Enter');
  await press('Enter');
  await press('Shift+ArrowRight', 6);
  await press('Space');
  await press('Shift+ArrowDown', 5);
  await press('ArrowRight', 3);
  await press('Enter');
  await press('Enter');
  const path = await stage.newest();
  assert.equal(path.shape, 'path');
  assert.equal(path.points.length, 3);
  const scale = (await stage.view()).scale;
  near(
    { x: (path.points[1]?.x ?? 0) - (path.points[0]?.x ?? 0), y: 0 },
    { x: 60 / scale, y: 0 },
    0.1,
    'sixty screen pixels to the right',
  );
  await press('v');
  await press('Tab');
  await press(']', 2);
  await press('Enter');
  await press('ArrowUp', 4);
  await stage.rest();
  await stage.picture('keyboard-carrying');
  await press('Enter');
  const moved = await stage.newest();
  near(
    moved.points[1],
    { x: path.points[1]?.x ?? 0, y: (path.points[1]?.y ?? 0) - 4 / scale },
    0.1,
    'the point was carried',
  );
  await press('Tab');
  await press('Tab');
  assert.notEqual(
    await page.evaluate(() => document.activeElement?.getAttribute('role')),
    'application',
    'Tab leaves the stage',
  );
}

const inks = { red: '#d01515', back: '#8a8a86' };

/** A photo stored turned, with one red square; `at` is its middle in the upright picture. */
async function writeTurned(server: StagePageServer, name: string, orientation: ExifOrientation): Promise<Spot> {
  const upright = uprightSize({ width: 3000, height: 2000 }, orientation);
  const at = { x: Math.round(upright.width * 0.7), y: Math.round(upright.height * 0.3) };
  const square = await sharp({ create: { width: 41, height: 41, channels: 3, background: inks.red } })
    .png()
    .toBuffer();
  const picture = sharp({ create: { ...upright, channels: 3, background: inks.back } }).composite([
    { input: square, left: at.x - 20, top: at.y - 20 },
  ]);
  // Stored the other way round, so that only a decoder that heeds EXIF shows it upright.
  const back = { 1: 0, 3: 180, 6: 270, 8: 90 }[orientation as 1 | 3 | 6 | 8];
  const stored = sharp(await picture.png().toBuffer()).rotate(back);
  await stored
    .jpeg({ quality: 95 })
    .withMetadata({ orientation })
    .toFile(join(server.folder, `${name}.jpg`));
  await writeScreenPicture(server.folder, name);
  return at;
}

/** The middle of all that is red on the stage, on the screen. */
async function middleOfRed(page: Page): Promise<Spot> {
  const { data, info } = await sharp(await page.screenshot())
    .raw()
    .toBuffer({ resolveWithObject: true });
  let [count, sumX, sumY] = [0, 0, 0];
  for (let index = 0; index < data.length; index += info.channels) {
    if ((data[index] ?? 0) < 150 || (data[index + 1] ?? 0) > 90 || (data[index + 2] ?? 0) > 90) continue;
    const pixel = index / info.channels;
    const [x, y] = [pixel % info.width, Math.floor(pixel / info.width)];
    if (x < 84 || x >= 1006 || y >= 650) continue;
    count += 1;
    sumX += x + 0.5;
    sumY += y + 0.5;
  }
  if (count <= 20) await page.screenshot({ path: join(pictures, 'missing.png') });
  assert.ok(count > 20, 'the red square is in sight');
  return { x: sumX / count, y: sumY / count };
}

async function upright(page: Page, server: StagePageServer): Promise<void> {
  for (const orientation of [1, 3, 6, 8] as const) {
    const at = await writeTurned(server, `turned-${orientation}`, orientation);
    const size = uprightSize({ width: 3000, height: 2000 }, orientation);
    const stage = await openStage(page, server, { photo: `turned-${orientation}`, ...size, marks: 0 });
    const far = await middleOfRed(page);
    near(
      await stage.onPhoto(far),
      at,
      1 / (await stage.view()).scale,
      `orientation ${orientation}: the smaller picture lies right`,
    );
    await page.mouse.move(far.x, far.y);
    for (let notch = 0; notch < 14; notch++) await page.mouse.wheel(0, -100);
    await stage.rest();
    assert.ok((await stage.view()).scale > 1.5, 'zoomed in past the smaller picture');
    near(await stage.onPhoto(await middleOfRed(page)), at, 1, `orientation ${orientation}: the original lies right`);
    await page.keyboard.press('p');
    await stage.click(at);
    near((await stage.newest()).points[0], at, 0.6, `orientation ${orientation}: the mark lies on the square`);
    await stage.rest();
    if (orientation === 6) await stage.picture('turned-photo-near');
  }
}

async function zoomsSharp(page: Page, server: StagePageServer): Promise<void> {
  await writePhoto(server.folder, 'large', 11_600, 8700);
  const regions: string[] = [];
  page.on('request', (request) => {
    if (request.url().includes('/region')) regions.push(request.url());
    assert.ok(!request.url().endsWith('/large.jpg'), 'a large original is never decoded whole');
  });
  const stage = await openStage(page, server, {
    photo: 'large',
    width: 11_600,
    height: 8700,
    marks: 40,
    regions: 'yes',
  });
  assert.equal(regions.length, 0, 'the smaller picture is enough for the whole photo');
  await stage.picture('hundred-megapixels');
  const middle = await stage.onScreen({ x: 5800, y: 4350 });
  await page.mouse.move(middle.x, middle.y);
  for (let notch = 0; notch < 14; notch++) await page.mouse.wheel(0, -100);
  await stage.rest();
  assert.ok(regions.length > 0, 'a region was asked for');
  await stage.picture('hundred-megapixels-near');
}

async function byTouch(server: StagePageServer): Promise<void> {
  const browser = await openBrowser();
  if (!browser) return;
  try {
    const page = await browser.newPage({ viewport: { width: 1366, height: 768 }, hasTouch: true });
    const stage = await openStage(page, server, { photo: 'plain', width: 4000, height: 3000, marks: 3 });
    const devtools = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...touchPoints: Spot[]) =>
      devtools.send('Input.dispatchTouchEvent', { type, touchPoints });
    await page.keyboard.press('p');
    const from = await stage.onScreen({ x: 2000, y: 1500 });
    await touch('touchStart', from);
    await touch('touchMove', { x: from.x + 20, y: from.y + 10 });
    await page.waitForTimeout(400);
    await stage.picture('loupe');
    await touch('touchEnd');
    near(
      (await stage.newest()).points[0],
      await stage.onPhoto({ x: from.x + 20, y: from.y + 10 }),
      3,
      'the point lies under the finger',
    );
    const before = await stage.view();
    await touch('touchStart', { x: 400, y: 300 });
    await touch('touchStart', { x: 400, y: 300 }, { x: 600, y: 300 });
    for (let step = 1; step <= 10; step++)
      await touch('touchMove', { x: 400 - step * 10, y: 300 }, { x: 600 + step * 10, y: 300 });
    await touch('touchEnd');
    const after = await stage.view();
    assert.ok(
      Math.abs(after.scale / before.scale - 2) < 0.1,
      `two fingers twice as far apart zoom by two: ${after.scale / before.scale}`,
    );
    assert.equal(Number(await page.locator('#count').textContent()), 4, 'pinching drew nothing');
  } finally {
    await browser.close();
  }
}

const browser = await openBrowser();
if (!browser) {
  console.log('Skipped: this needs a Chromium and a display (xvfb-run -a ...).');
  process.exit(0);
}
await mkdir(pictures, { recursive: true });
const server = await serveStagePage();
try {
  await writePhoto(server.folder, 'plain', 4000, 3000);
  for (const part of [everyToolByMouse, keyboardAlone, upright, zoomsSharp]) {
    const page = await browser.newPage({ viewport: { width: 1366, height: 768 } });
    page.on('pageerror', (error) => {
      throw error;
    });
    await part(page, server);
    await page.close();
    console.log(`ok  ${part.name}`);
  }
  await byTouch(server);
  console.log('ok  byTouch');
} finally {
  await browser.close();
  await server.close();
}
