import { describe, expect, test } from 'vitest';
import { polygonArea } from '../../../../shared-lib/geometry/plane.ts';
import { growArea } from '../../../../shared-lib/growing/grow.ts';
import type { Grown } from '../../../../shared-lib/growing/grown.ts';
import { cvReady } from '../calibration/opencv.ts';
import { gaussian, seeded } from '../tracing/drawn-surface.ts';
import { type DrawnPatch, drawFading, drawPatch, lookAt, type PatchKind } from './drawn-patch.ts';
import { apartPx, isHeld } from './off-by.ts';

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

const grownIn = (patch: DrawnPatch): Grown | null =>
  growArea(lookAt(patch), patch.size, { points: [{ x: patch.middle.x + 8, y: patch.middle.y - 6 }] });

/** Mean distance of the border, px, and share of the area, that each kind is held to. */
const bounds: readonly (readonly [PatchKind, number, number, number])[] = [
  ['rusty', 1, 0.4, 0.02],
  ['rusty', 0.25, 0.4, 0.02],
  ['scaled', 1, 0.4, 0.02],
  ['scaled', 0.25, 0.7, 0.03],
  ['scuffed', 1, 0.8, 0.03],
  ['scuffed', 0.5, 1.5, 0.06],
  ['pitted', 1, 4, 0.22],
  ['pitted', 0.7, 4, 0.22],
];

describe('drawn patches, whose outline is exact', () => {
  test.each(bounds)(
    'a %s patch of strength %d is found to %d px and a share of %d of its area',
    (kind, strength, mostPx, mostShare) => {
      for (const [seed, radius] of [
        [1, 40],
        [2, 90],
      ] as const) {
        const patch = drawPatch(kind, seed, radius, strength);
        const grown = grownIn(patch);
        const outline = grown?.outline ?? [];
        expect(apartPx(patch.truth, outline), `seed ${seed}`).toBeLessThan(mostPx);
        const area = polygonArea(patch.truth);
        expect(Math.abs((grown?.areaPx2 ?? 0) - area) / area, `seed ${seed}`).toBeLessThan(mostShare);
        expect(grown !== null && isHeld(grown, area), `seed ${seed}: held by what is stated with k = 2`).toBe(true);
      }
    },
    60_000,
  );

  test('on a bare surface nothing is found, or it is doubted', () => {
    for (const seed of [1, 2, 3, 4]) {
      const grown = grownIn(drawPatch('scuffed', seed, 60, 0));
      expect(grown === null || grown.unsure, `seed ${seed}`).toBe(true);
    }
  }, 60_000);

  test('the grain round a faint rusty patch does not pass for pits', () => {
    const patch = drawPatch('rusty', 1002, 30 + 160 / 7, 0.25);
    const side = patch.truth[150] ?? patch.middle;
    const tap = {
      x: patch.middle.x + 0.6 * (side.x - patch.middle.x),
      y: patch.middle.y + 0.6 * (side.y - patch.middle.y),
    };
    const grown = growArea(lookAt(patch), patch.size, { points: [tap] });
    expect(Math.abs((grown?.areaPx2 ?? 0) / polygonArea(patch.truth) - 1)).toBeLessThan(0.02);
  }, 60_000);

  test('a patch that fades out on one side has a faint border there, and a sure one on the other', () => {
    const patch = drawFading('scaled', 3, 80);
    const grown = growArea(lookAt(patch), patch.size, { points: [{ x: patch.middle.x - 30, y: patch.middle.y }] });
    expect(grown?.doubts).toContain('border-faint');
    const faint = (grown?.faint ?? []).flatMap(([from, to]) =>
      (grown?.outline ?? []).filter((_, at) => (from <= to ? at >= from && at <= to : at >= from || at <= to)),
    );
    expect(mean(faint.map(({ x }) => x))).toBeGreaterThan(patch.middle.x);
  }, 60_000);
});

test('a spot inside a patch inside a patch: which of the two is meant is doubted', () => {
  const inner = drawPatch('rusty', 7, 30, 1);
  const random = seeded(8);
  // Rust in the middle of a stain twice as wide, each with a sharp border of its own.
  const { width } = inner.size;
  const { x: cx, y: cy } = inner.middle;
  const stained = ([0, 1, 2] as const).map((k) =>
    inner.rgb[k].map((value, at) => {
      const isStain = Math.hypot((at % width) - cx, Math.floor(at / width) - cy) < 75;
      return value - (isStain ? ([38, 30, 12][k] ?? 0) : 0) + 0.5 * gaussian(random);
    }),
  );
  const [red, green, blue] = stained;
  if (!red || !green || !blue) throw new Error('three colours');
  const patch: DrawnPatch = { ...inner, rgb: [red, green, blue] };
  expect(growArea(lookAt(patch), patch.size, { points: [{ x: cx + 3, y: cy - 2 }] })?.doubts).toContain('other-extent');
  expect(grownIn(inner)?.doubts).not.toContain('other-extent');
}, 60_000);

test('a patch of scale has the area that Otsu threshold and contour give (OpenCV)', async () => {
  const { cv } = await cvReady();
  for (const seed of [5, 6]) {
    const patch = drawPatch('rusty', seed, 80, 1);
    const { width, height } = patch.size;
    const [red, , blue] = patch.rgb;
    // Red less blue tells rust from metal by itself.
    const picture = cv.matFromArray(
      height,
      width,
      cv.CV_8UC1,
      Array.from(red, (value, at) => Math.min(255, Math.max(0, Math.round(2 * (value - (blue[at] ?? 0)) + 40)))),
    );
    const soft = new cv.Mat();
    const binary = new cv.Mat();
    const chains = new cv.MatVector();
    const tree = new cv.Mat();
    cv.GaussianBlur(picture, soft, new cv.Size(0, 0), 1.5);
    cv.threshold(soft, binary, 0, 255, cv.THRESH_BINARY + cv.THRESH_OTSU);
    cv.findContours(binary, chains, tree, cv.RETR_EXTERNAL, cv.CHAIN_APPROX_NONE);
    let largest = 0;
    let around = 0;
    const count = Number(chains.size());
    for (let i = 0; i < count; i += 1) {
      const area = cv.contourArea(chains.get(i));
      if (area > largest) [largest, around] = [area, cv.arcLength(chains.get(i), true)];
    }
    for (const mat of [picture, soft, binary, chains, tree]) mat.delete();
    // Its contour runs through the middles of the border's pixels, half a pixel inside the border.
    const theirs = largest + around / 2;
    const ours = grownIn(patch)?.areaPx2 ?? 0;
    expect(Math.abs(ours / theirs - 1), `seed ${seed}`).toBeLessThan(0.015);
  }
}, 60_000);
