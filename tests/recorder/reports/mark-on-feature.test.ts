import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import sharp from 'sharp';
import { afterAll, expect, test } from 'vitest';
import { Typesetter } from '../../../electron/recorder/reports/typeset.ts';
import { openPictures } from './pictures.ts';
import { textOfPages } from './poppler.ts';
import { reportOf, scenarioSource, sha256, withPhotos } from './sample.ts';

const typesetter = new Typesetter();
const pictures = openPictures();
afterAll(async () => {
  await typesetter.close();
  pictures.remove();
});

const dotsPerInch = 200;
const mm = (pixels: number): number => (pixels / dotsPerInch) * 25.4;

/** A grey picture with a red square of 40 pixels round one point. */
async function pictureWithFeature(width: number, height: number, x: number, y: number) {
  const square = await sharp({ create: { width: 40, height: 40, channels: 3, background: '#ff0000' } })
    .png()
    .toBuffer();
  const jpeg = await sharp({ create: { width, height, channels: 3, background: '#808080' } })
    .composite([{ input: square, left: x - 20, top: y - 20 }])
    .jpeg({ quality: 95, chromaSubsampling: '4:4:4' })
    .toBuffer();
  const digest = sha256(jpeg);
  const path = join(pictures.folder, `${digest}.jpg`);
  writeFileSync(path, jpeg);
  pictures.files.set(digest, path);
  return { digest, width, height };
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

const middleOf = (spots: readonly Spot[]): Spot => ({
  x: spots.reduce((sum, { x }) => sum + x, 0) / spots.length,
  y: spots.reduce((sum, { y }) => sum + y, 0) / spots.length,
});

function spotsOf(png: PNG, is: (red: number, green: number, blue: number) => boolean): Spot[] {
  const found: Spot[] = [];
  for (let y = 0; y < png.height; y++) {
    for (let x = 0; x < png.width; x++) {
      const at = (y * png.width + x) * 4;
      if (is(png.data[at] ?? 0, png.data[at + 1] ?? 0, png.data[at + 2] ?? 0)) found.push({ x, y });
    }
  }
  return found;
}

function pageAsPicture(pdf: Uint8Array, page: number): PNG {
  const path = join(pictures.folder, 'page.pdf');
  writeFileSync(path, pdf);
  const out = join(pictures.folder, `page-${page}`);
  execFileSync('pdftoppm', [
    '-r',
    String(dotsPerInch),
    '-png',
    '-singlefile',
    '-f',
    String(page),
    '-l',
    String(page),
    path,
    out,
  ]);
  return PNG.sync.read(readFileSync(`${out}.png`));
}

// Page one cuts the photo, the finding's own page shows the whole: the ring must lie round the feature on both.
test.each([
  ['landscape', 1600, 1200, 400, 900],
  ['upright', 1200, 1600, 900, 300],
  ['near the corner', 1600, 1200, 60, 1150],
])('a mark lies on the feature it was drawn on: %s', async (_, width, height, x, y) => {
  const picture = await pictureWithFeature(width, height, x, y);
  const source = withPhotos(scenarioSource('s6-backhoe-visit-and-return.json', 1), [
    { finding: 1, ...picture, shape: 'point', points: [[(x - 0.5) / width, (y - 0.5) / height]] },
  ]);
  const { pdf } = await typesetter.typeset(reportOf(source), { paper: 'a4', photoFiles: pictures.files });
  const own = textOfPages(pdf).findIndex((text) => text.includes('The findings one by one')) + 1;
  expect(own).toBeGreaterThan(1);
  for (const page of [1, own]) {
    const png = pageAsPicture(pdf, page);
    const feature = middleOf(spotsOf(png, (red, green, blue) => red > 200 && green < 60 && blue < 60));
    const near = ({ x: px, y: py }: Spot) => mm(Math.hypot(px - feature.x, py - feature.y)) < 4;
    // The halo's blue; the tag has it too, so only what is near the feature counts.
    const ring = spotsOf(png, (red, green, blue) => blue > 150 && red < 80 && green < 100).filter(near);
    expect(ring.length, `page ${page}`).toBeGreaterThan(100);
    const box = (axis: 'x' | 'y') => {
      const values = ring.map((spot) => spot[axis]);
      return (Math.min(...values) + Math.max(...values)) / 2;
    };
    if (x > 100) {
      expect(mm(Math.abs(box('x') - feature.x)), `page ${page}`).toBeLessThan(0.3);
      expect(mm(Math.abs(box('y') - feature.y)), `page ${page}`).toBeLessThan(0.3);
    }
  }
});
