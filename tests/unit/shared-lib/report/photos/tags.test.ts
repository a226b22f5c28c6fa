import { expect, test } from 'vitest';
import type { PrintedPoint, ReportTag } from '../../../../../shared-lib/report/model.ts';
import { wholeFrame } from '../../../../../shared-lib/report/photos/frame.ts';
import { placeTags, tagHeightMm, tagWidthMm } from '../../../../../shared-lib/report/photos/tags.ts';

const frame = wholeFrame({ width: 1600, height: 1000 }, null, { widthMm: 160, heightMm: 100 });
const tag = (number: number): ReportTag => ({ findingId: `f${number}`, number, tier: 1, state: 'confirmed' });
const square = ([x, y]: PrintedPoint): PrintedPoint[] => [
  [x, y],
  [x + 12, y],
  [x + 12, y + 12],
  [x, y + 12],
];

test('every tag stays on its photo, wherever the mark is', () => {
  for (const corner of [
    [0, 0],
    [148, 0],
    [0, 88],
    [148, 88],
    [70, 40],
  ] as const) {
    const [placed] = placeTags([{ tag: tag(12), strokes: square(corner), middle: null }], frame, 1);
    const [x, y] = placed?.at ?? [-1, -1];
    expect(x - tagWidthMm(tag(12)) / 2).toBeGreaterThanOrEqual(0);
    expect(x + tagWidthMm(tag(12)) / 2).toBeLessThanOrEqual(160);
    expect(y - tagHeightMm / 2).toBeGreaterThanOrEqual(0);
    expect(y + tagHeightMm / 2).toBeLessThanOrEqual(100);
  }
});

test('tags of neighbouring marks do not cover each other', () => {
  const wishes = [40, 54, 68, 82].map((x, index) => ({ tag: tag(index + 1), strokes: square([x, 50]), middle: null }));
  const placed = placeTags(wishes, frame, 1);
  for (const [index, a] of placed.entries()) {
    for (const b of placed.slice(index + 1)) {
      const apart =
        Math.abs(a.at[0] - b.at[0]) >= tagWidthMm(a.tag) - 1e-9 || Math.abs(a.at[1] - b.at[1]) >= tagHeightMm - 1e-9;
      expect(apart, `${a.tag.number} and ${b.tag.number}`).toBe(true);
    }
  }
});

test('a tag that the mechanic has put somewhere stands there, with a leader to its mark', () => {
  const [placed] = placeTags([{ tag: tag(3), strokes: square([20, 20]), middle: [120, 70] }], frame, 1);
  expect(placed?.at[0]).toBeCloseTo(120, 9);
  expect(placed?.at[1]).toBeCloseTo(70, 9);
  expect(placed?.leaderTo).toEqual([32, 32]);
});
