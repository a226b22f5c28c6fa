import { afterAll, beforeAll, expect, test } from 'vitest';
import { Typesetter } from '../../../electron/recorder/reports/typeset.ts';
import { openPictures, type Picture } from './pictures.ts';
import { imagesOf, textOfPages } from './poppler.ts';
import { changedFindings, reportOf, scenarioSource, withPhotos } from './sample.ts';

const typesetter = new Typesetter();
const pictures = openPictures();
const last = 'as far as the oil gallery';

interface Printed {
  /** Of the finding's head, and of its last words, counted from 0. */
  readonly from: number;
  readonly to: number;
  readonly photoWidthMm: number;
}

/** One finding with a large photo, its words some sentences long, as a reader of the PDF finds it. */
const printedWith = async (photo: Picture, sentences: number): Promise<Printed> => {
  const words = `${'It runs on from the seat to the port and under the gasket. '.repeat(sentences)}It is open ${last}.`;
  const source = changedFindings(scenarioSource('s6-backhoe-visit-and-return.json', 1), ({ number }) =>
    number === 1 ? { words } : {},
  );
  const report = reportOf(withPhotos(source, [{ finding: 1, ...photo }]));
  const { pdf } = await typesetter.typeset(report, { paper: 'a4', photoFiles: pictures.files });
  const pages = textOfPages(pdf).map((page) => page.replaceAll(/\s+/g, ' ').replaceAll('\u200b', ''));
  const from = pages.findIndex((page) => page.includes('The findings one by one'));
  const to = pages.findIndex((page, index) => index >= from && page.includes(last));
  const image = imagesOf(pdf).find(({ page }) => page === from + 1);
  return { from, to, photoWidthMm: image?.printedWidthMm ?? Number.NaN };
};

let printed: Printed[];

beforeAll(async () => {
  const photo = await pictures.make(1600, 1200, 1);
  printed = [];
  for (const sentences of [1, 22, 25, 40]) printed.push(await printedWith(photo, sentences));
});

afterAll(async () => {
  await typesetter.close();
  pictures.remove();
});

test('none of its words is lost, however many there are', () => {
  for (const { from, to } of printed) expect(to).toBeGreaterThanOrEqual(from);
});

test('for a few lines too many its large photo gives way, but stays large', () => {
  const full = printed[0]?.photoWidthMm ?? Number.NaN;
  const smaller = printed.filter(({ photoWidthMm }) => photoWidthMm < full - 0.5);
  expect(smaller.length).toBeGreaterThan(0);
  for (const { from, to, photoWidthMm } of smaller) {
    expect(to).toBe(from);
    expect(photoWidthMm / full).toBeGreaterThanOrEqual(0.69);
  }
});

test('one that fits on no page is parted, with its photo as large as ever', () => {
  const full = printed[0]?.photoWidthMm ?? Number.NaN;
  const parted = printed.filter(({ from, to }) => to > from);
  expect(parted.length).toBeGreaterThan(0);
  for (const { photoWidthMm } of parted) expect(photoWidthMm).toBeCloseTo(full, 0);
});
