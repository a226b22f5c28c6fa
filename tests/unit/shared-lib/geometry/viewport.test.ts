import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { screenPoint } from '../../../../shared-lib/geometry/spaces.ts';
import {
  bringIntoView,
  clampView,
  fitView,
  insidePhoto,
  scaleLimits,
  toImage,
  toScreen,
  visiblePart,
  zoomAbout,
} from '../../../../shared-lib/geometry/viewport.ts';

const length = fc.integer({ min: 1, max: 20_000 });
const size = fc.record({ width: length, height: length });
const stageSize = fc.record({
  width: fc.integer({ min: 100, max: 4000 }),
  height: fc.integer({ min: 100, max: 3000 }),
});
const coordinate = fc.double({ min: -20_000, max: 20_000, noNaN: true });
const point = fc.record({ x: coordinate, y: coordinate });
const view = fc.record({ scale: fc.double({ min: 0.01, max: 16, noNaN: true }), x: coordinate, y: coordinate });

describe('a photo on the stage', () => {
  test('zooming leaves what is under the pointer where it is', () => {
    fc.assert(
      fc.property(view, point, fc.double({ min: 0.1, max: 10, noNaN: true }), (before, { x, y }, factor) => {
        const anchor = screenPoint(x, y);
        const held = toImage(before, anchor);
        const after = toScreen(zoomAbout(before, anchor, factor, { least: 0.01, most: 16 }), held);
        expect(after.x).toBeCloseTo(x, 5);
        expect(after.y).toBeCloseTo(y, 5);
      }),
    );
  });

  test('zooming stops at the limits, both ways', () => {
    const limits = { least: 0.2, most: 16 };
    const start = { scale: 1, x: 0, y: 0 };
    expect(zoomAbout(start, screenPoint(10, 10), 1e9, limits).scale).toBe(16);
    expect(zoomAbout(start, screenPoint(10, 10), 1e-9, limits).scale).toBe(0.2);
  });

  test('a point goes to the screen and back unchanged', () => {
    fc.assert(
      fc.property(view, point, (at, original) => {
        const back = toImage(at, toScreen(at, original));
        // One part in 1e9 of the largest number on the way.
        expect(Math.abs(back.x - original.x)).toBeLessThan(1e-9 * (40_000 / at.scale + 40_000));
        expect(Math.abs(back.y - original.y)).toBeLessThan(1e-9 * (40_000 / at.scale + 40_000));
      }),
    );
  });

  test('fit shows all of the photo, its outer pixel edges within the stage and touching two sides', () => {
    fc.assert(
      fc.property(size, stageSize, (photo, stage) => {
        const fit = fitView(photo, stage);
        const first = toScreen(fit, { x: -0.5, y: -0.5 });
        const last = toScreen(fit, { x: photo.width - 0.5, y: photo.height - 0.5 });
        for (const [from, to, room] of [
          [first.x, last.x, stage.width],
          [first.y, last.y, stage.height],
        ] as const) {
          expect(from).toBeGreaterThan(-1e-6);
          expect(to).toBeLessThan(room + 1e-6);
          expect(from).toBeCloseTo(room - to, 6);
        }
        const touches = Math.min(first.x, first.y) < 1e-6;
        expect(touches || fit.scale === 16).toBe(true);
      }),
    );
  });

  test('a photo drawn at scale 1 puts pixel centres half a screen pixel in', () => {
    // Worked by hand: a 4 x 2 photo on a 4 x 2 stage; pixel 0 covers the screen from 0 to 1, so its centre is at 0.5.
    const fit = fitView({ width: 4, height: 2 }, { width: 4, height: 2 });
    expect(toScreen(fit, { x: 0, y: 0 })).toEqual({ x: 0.5, y: 0.5 });
    expect(toScreen(fit, { x: 3, y: 1 })).toEqual({ x: 3.5, y: 1.5 });
  });

  test('the middle of the stage always lies on the photo, and a clamped view stays as it is', () => {
    fc.assert(
      fc.property(size, stageSize, view, (photo, stage, wild) => {
        const limits = scaleLimits(photo, stage);
        const scale = Math.min(limits.most, Math.max(limits.least, wild.scale));
        const clamped = clampView({ ...wild, scale }, photo, stage);
        const first = toScreen(clamped, { x: -0.5, y: -0.5 });
        const last = toScreen(clamped, { x: photo.width - 0.5, y: photo.height - 0.5 });
        expect(first.x).toBeLessThanOrEqual(stage.width / 2 + 1e-3);
        expect(last.x).toBeGreaterThanOrEqual(stage.width / 2 - 1e-3);
        expect(first.y).toBeLessThanOrEqual(stage.height / 2 + 1e-3);
        expect(last.y).toBeGreaterThanOrEqual(stage.height / 2 - 1e-3);
        expect(clampView(clamped, photo, stage).x).toBeCloseTo(clamped.x, 6);
      }),
    );
  });

  test('zooming in about any spot of the photo is never pushed aside, and zooming all the way out fits', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(size, stageSize, share, share, fc.integer({ min: 1, max: 8 }), (photo, stage, right, down, steps) => {
        const limits = scaleLimits(photo, stage);
        const spot = { x: right * (photo.width - 1), y: down * (photo.height - 1) };
        let view = fitView(photo, stage);
        const anchor = toScreen(view, spot);
        for (let step = 0; step < steps; step++) view = clampView(zoomAbout(view, anchor, 1.3, limits), photo, stage);
        expect(toScreen(view, spot).x).toBeCloseTo(anchor.x, 4);
        expect(toScreen(view, spot).y).toBeCloseTo(anchor.y, 4);
        expect(clampView(zoomAbout(view, anchor, 1e-9, limits), photo, stage)).toEqual(fitView(photo, stage));
      }),
    );
  });

  test('bringing a point into view moves no more than needed', () => {
    const stage = { width: 800, height: 600 };
    const still = { scale: 1, x: 0, y: 0 };
    expect(bringIntoView(still, { x: 400, y: 300 }, stage, 50)).toEqual(still);
    expect(bringIntoView(still, { x: 900, y: 300 }, stage, 50)).toEqual({ scale: 1, x: -150, y: 0 });
    expect(bringIntoView(still, { x: 400, y: -20 }, stage, 50)).toEqual({ scale: 1, x: 0, y: 70 });
  });

  test('the visible part ends at the photo, and points are kept on the photo', () => {
    const photo = { width: 100, height: 80 };
    expect(visiblePart({ scale: 2, x: -20, y: 40 }, photo, { width: 100, height: 100 })).toEqual({
      left: 10,
      top: -0.5,
      right: 60,
      bottom: 30,
    });
    expect(insidePhoto({ x: -40, y: 300 }, photo)).toEqual({ x: -0.5, y: 79.5 });
  });
});
