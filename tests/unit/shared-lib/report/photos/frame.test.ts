import { expect, test } from 'vitest';
import { boxOf, onPaper, partFrame, wholeFrame } from '../../../../../shared-lib/report/photos/frame.ts';

const wide = { widthMm: 178, heightMm: 102 };
const pageOne = { widthMm: 80, heightMm: 41 };

// The 80 mm are the handbook's rule for printed photos (10.1).
test.each([
  ['landscape', { width: 1600, height: 1200 }],
  ['portrait', { width: 1200, height: 1600 }],
  ['panorama', { width: 6000, height: 1000 }],
  ['a very tall picture', { width: 500, height: 4000 }],
  ['a square', { width: 900, height: 900 }],
])('%s is printed at least 80 mm wide, upright and undistorted', (_, size) => {
  const frame = wholeFrame(size, null, wide);
  expect(frame.widthMm).toBeGreaterThanOrEqual(80);
  expect(frame.widthMm).toBeLessThanOrEqual(178);
  expect(frame.heightMm).toBeLessThanOrEqual(150.001);
  expect(frame.picture.heightMm / frame.picture.widthMm).toBeCloseTo(size.height / size.width, 9);
});

test('only a picture taller than the page is cut, and says so', () => {
  expect(wholeFrame({ width: 1200, height: 1600 }, null, wide).isPart).toBe(false);
  expect(wholeFrame({ width: 500, height: 4000 }, null, wide).isPart).toBe(true);
});

test('page one shows the part of the photo that holds the mark', () => {
  const size = { width: 4000, height: 3000 };
  const marks = { left: 3600, top: 2700, right: 3800, bottom: 2800 };
  const frame = partFrame(size, marks, pageOne);
  for (const point of [
    { x: marks.left, y: marks.top },
    { x: marks.right, y: marks.bottom },
  ]) {
    const [x, y] = onPaper(frame, point);
    expect(x).toBeGreaterThan(0);
    expect(x).toBeLessThan(80);
    expect(y).toBeGreaterThan(0);
    expect(y).toBeLessThan(41);
  }
  // The window never reaches beyond the picture.
  expect(frame.picture.xMm + frame.picture.widthMm).toBeGreaterThanOrEqual(80 - 1e-9);
  expect(frame.picture.yMm + frame.picture.heightMm).toBeGreaterThanOrEqual(41 - 1e-9);
});

test('pixel centres stand at whole numbers: the middle pixel prints in the middle', () => {
  const frame = wholeFrame({ width: 101, height: 51 }, null, { widthMm: 101, heightMm: 80 });
  expect(onPaper(frame, { x: 50, y: 25 })).toEqual([50.5, 25.5]);
});

test('a mark of five thousand points has a box', () => {
  const points = Array.from({ length: 5000 }, (_, index) => ({ x: index, y: 4999 - index }));
  expect(boxOf(points)).toEqual({ left: 0, top: 0, right: 4999, bottom: 4999 });
  expect(boxOf([])).toBeNull();
});

// What of the mark lies outside the window, nobody sees: handbook 10.1 asks for photos with their marks.
test('a window grows for a mark that stands higher than it, as far as it may', () => {
  const size = { width: 1200, height: 1600 };
  const rod = { left: 560, top: 300, right: 640, bottom: 900 };
  const low = { widthMm: 80, heightMm: 32 };
  const frame = partFrame(size, rod, { ...low, growMm: 20 });
  expect(onPaper(frame, { x: 600, y: rod.top })[1]).toBeGreaterThan(0);
  expect(onPaper(frame, { x: 600, y: rod.bottom })[1]).toBeLessThan(frame.heightMm);
  expect(partFrame(size, rod, { ...low, growMm: 4 }).heightMm).toBeCloseTo(36);
  expect(partFrame(size, { ...rod, bottom: 400 }, { ...low, growMm: 20 }).heightMm).toBe(32);
});
