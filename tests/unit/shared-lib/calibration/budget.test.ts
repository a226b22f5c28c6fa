import { describe, expect, it } from 'vitest';
import { invert, turnAlike } from '../../../../shared-lib/calibration/homography.ts';
import { CalibrationInput, MeasuredShape } from '../../../../shared-lib/calibration/input.ts';
import { type Measurement, measureShape, type UncertaintySource } from '../../../../shared-lib/calibration/measure.ts';
import { mapPlane } from '../../../../shared-lib/calibration/plane-mapping.ts';

/**
 * Each share of a budget by hand from the law of propagation (JCGM 100:2008, 5.1.2), on a face seen squarely at 10 px per mm.
 * A stated tolerance is anywhere within its limits: its standard uncertainty is a third root of three of them (4.3.7).
 */
const point = (x: number, y: number) => ({ x, y });
const almostNothing = 1e-9;
const known = (differs: object = {}) =>
  CalibrationInput.parse({
    method: 'known-length',
    ends: [point(0, 0), point(1000, 0)],
    lengthMm: 100,
    tiltDegrees: 0,
    lensShare: 0,
    clickingPx: almostNothing,
    ...differs,
  });
const corners = [point(0, 0), point(1000, 0), point(1000, 800), point(0, 800)];
const knownPoints = (differs: object = {}) =>
  CalibrationInput.parse({
    method: 'known-points',
    points: corners.map((px) => ({ px, mm: point(px.x / 10, px.y / 10) })),
    lensShare: 0,
    clickingPx: almostNothing,
    ...differs,
  });
const shape = (name: string, points: { x: number; y: number }[], pointPx = 0) =>
  MeasuredShape.parse({ shape: name, points, pointPx });
const line = (pointPx = 0) => shape('line', [point(100, 100), point(500, 400)], pointPx);
const level = (pointPx = 0) => shape('line', [point(100, 300), point(600, 300)], pointPx);
const square = (pointPx = 0) =>
  shape('area', [point(100, 100), point(500, 100), point(500, 500), point(100, 500)], pointPx);
const round = (pointPx = 0) => ({ ...square(pointPx), points: square().points.toReversed() });
const corner = (pointPx = 0) => shape('angle', [point(500, 100), point(100, 100), point(100, 500)], pointPx);

const third = Math.sqrt(3);

describe('a share of the budget', () => {
  it.each<[string, CalibrationInput, MeasuredShape, UncertaintySource, number]>([
    [
      'tolerance of the reference, 50 mm of 100',
      known({ toleranceMm: 0.3 }),
      line(),
      'reference-tolerance',
      0.15 / third,
    ],
    [
      'tolerance of the reference, an area of 1600 mm² goes twice as far',
      known({ toleranceMm: 0.3 }),
      square(),
      'reference-tolerance',
      (2 * 1600 * 0.003) / third,
    ],
    [
      'tolerance of the reference, an angle knows none',
      known({ toleranceMm: 0.3 }),
      corner(),
      'reference-tolerance',
      0,
    ],
    ['two ends of 2 px over 1000 px, 50 mm', known({ clickingPx: 2 }), line(), 'clicking-reference', 0.1 * Math.SQRT2],
    ['lens, 1 % of 50 mm', known({ lensShare: 0.01 }), line(), 'lens', 0.5],
    ['lens, 1 % of the sides of 1600 mm²', known({ lensShare: 0.01 }), square(), 'lens', 32],
    ['lens, an angle knows none', known({ lensShare: 0.01 }), corner(), 'lens', 0],
    ['two points of 3 px', known(), line(3), 'clicking-mark', 0.3 * Math.SQRT2],
    ['two points of 3 px, a level line', known(), level(3), 'clicking-mark', 0.3 * Math.SQRT2],
    // Each corner of a square moves its area by half a diagonal: root of four times (40 mm / root 2)² is 40 × root 2.
    ['four corners of 3 px', known(), square(3), 'clicking-mark', 40 * Math.SQRT2 * 0.3],
    ['four corners of 3 px, the other way round', known(), round(3), 'clicking-mark', 40 * Math.SQRT2 * 0.3],
    // A right angle with arms of 400 px: 1/400 by each end, root 2 of that by the corner, together 2/400 for each px.
    ['three points of 3 px, a right angle', known(), corner(3), 'clicking-mark', ((2 * 3) / 400) * (180 / Math.PI)],
    [
      'how true to scale points were printed, 50 mm',
      knownPoints({ referenceShare: 0.01 }),
      line(),
      'reference-tolerance',
      0.5,
    ],
    ['how true to scale, 1600 mm²', knownPoints({ referenceShare: 0.01 }), square(), 'reference-tolerance', 32],
    ['how true to scale, an angle', knownPoints({ referenceShare: 0.01 }), corner(), 'reference-tolerance', 0],
  ])('%s', (_, input, mark, source, expected) => {
    expect(measureShape(input, mark).shares[source]).toBeCloseTo(expected, 5);
  });

  it('points clicked 2 px off or placed 0.2 mm off come to the same, but for what limits are worth', () => {
    const clicked = measureShape(knownPoints({ clickingPx: 2 }), line()).shares['clicking-reference'] ?? 0;
    const placed = measureShape(knownPoints({ toleranceMm: 0.2 }), line()).shares['reference-tolerance'] ?? 0;
    expect(clicked).toBeGreaterThan(0.05);
    expect(placed).toBeCloseTo(clicked / third, 5);
  });

  it('combines by the root of the squares', () => {
    const all = measureShape(known({ toleranceMm: 0.3, clickingPx: 2, lensShare: 0.01 }), line(3));
    expect(all.u).toBeCloseTo(Math.sqrt(0.15 ** 2 / 3 + 2 * 0.1 ** 2 + 0.5 ** 2 + 2 * 0.3 ** 2), 5);
  });
});

describe('what stands after ±', () => {
  const expanded = (of: Measurement) => of.expanded ?? Number.NaN;

  it('is twice the standard uncertainty of something normal', () => {
    expect(expanded(measureShape(known(), line(3)))).toBeCloseTo(2 * 0.3 * Math.SQRT2, 2);
  });

  // 95 % of what is anywhere alike within its limits lies within 95 % of them.
  it('is 95 % of the limits where nothing but a tolerance counts', () => {
    expect(expanded(measureShape(known({ toleranceMm: 0.3 }), line()))).toBeCloseTo(0.95 * 0.15, 2);
  });
});

describe('how far clicks lie from the rim they are taken for', () => {
  // Out and in by turns is the twelfth side of a circle: no ellipse follows it.
  const rim = (count: number, semiMajor: number, semiMinor: number, turn: number, offPx: number) =>
    Array.from({ length: count }, (_, k) => {
      const t = (2 * Math.PI * k) / count;
      const [nx, ny] = [Math.cos(t) / semiMajor, Math.sin(t) / semiMinor];
      const off = ((k % 2 === 0 ? 1 : -1) * offPx) / Math.hypot(nx, ny);
      const [u, v] = [semiMajor * Math.cos(t) + off * nx, semiMinor * Math.sin(t) + off * ny];
      return point(700 + u * Math.cos(turn) - v * Math.sin(turn), 400 + u * Math.sin(turn) + v * Math.cos(turn));
    });
  it.each([
    ['a circle', 24, 200, 200, 0],
    ['an ellipse', 24, 240, 160, 0.5],
    ['a flat ellipse', 24, 260, 130, -1.1],
  ])('%s, 1 px out and in by turns', (_name, count, semiMajor, semiMinor, turn) => {
    const mapping = mapPlane(
      CalibrationInput.parse({
        method: 'known-circle',
        rim: rim(count, semiMajor, semiMinor, turn, 1),
        diameterMm: 80,
      }),
    );
    const off = mapping.residualsPx;
    expect(off).toHaveLength(count);
    expect(Math.min(...off)).toBeGreaterThan(0.8);
    expect(Math.max(...off)).toBeLessThan(1.2);
  });

  it('a point of the photo and its place in the plane belong together, both ways and by the matrix', () => {
    const mapping = mapPlane(
      CalibrationInput.parse({ method: 'known-circle', rim: rim(24, 240, 160, 0.5, 0), diameterMm: 80 }),
    );
    const at = point(810, 340);
    const there = mapping.toPlane(at) ?? point(Number.NaN, Number.NaN);
    expect(mapping.toPhoto(there)?.x).toBeCloseTo(at.x, 9);
    expect(mapping.toPhoto(there)?.y).toBeCloseTo(at.y, 9);
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = mapping.matrix;
    expect(a * at.x + b * at.y + c).toBeCloseTo(there.x, 9);
    expect(d * at.x + e * at.y + f).toBeCloseTo(there.y, 9);
    // A rim of 80 mm lies 40 mm from its middle, whichever way it is seen.
    for (const each of rim(24, 240, 160, 0.5, 0)) {
      const { x, y } = mapping.toPlane(each) ?? point(Number.NaN, Number.NaN);
      expect(Math.hypot(x, y)).toBeCloseTo(40, 4);
    }
  });
});

describe('mappings of a plane', () => {
  it.each([
    [[2, 0.3, 40, -0.2, 1.7, -25, 0.0004, -0.0007, 1]],
    [[0.1, 3, -7, 2, 0.2, 11, 0.01, 0.02, 0.5]],
    [[0, 1, 0, 0, 0, 1, 1, 0, 0]],
  ])('one and its inverse make nothing of each other: %j', (m) => {
    const inverse = invert(m as unknown as Parameters<typeof invert>[0]);
    if (inverse === null) throw new Error('it has one');
    for (const row of [0, 1, 2]) {
      for (const column of [0, 1, 2]) {
        const entry = [0, 1, 2].reduce((sum, k) => sum + (m[3 * row + k] ?? 0) * (inverse[3 * k + column] ?? 0), 0);
        expect(entry).toBeCloseTo(row === column ? 1 : 0, 9);
      }
    }
  });

  it('one that flattens the plane has none', () => {
    expect(invert([1, 2, 3, 2, 4, 6, 0, 0, 1] as unknown as Parameters<typeof invert>[0])).toBeNull();
  });

  const pairs = (order: readonly number[], flip = 1) =>
    [point(0, 0), point(100, 0), point(110, 80), point(5, 90), point(50, 140)].map((from, k) => {
      const to = [point(0, 0), point(10, 0), point(10, 8), point(0, 8), point(5, 14)][order[k] ?? k] ?? point(0, 0);
      return { from, to: { x: to.x, y: flip * to.y } };
    });
  it.each([
    ['in order', pairs([0, 1, 2, 3, 4]), true],
    ['all seen in a mirror', pairs([0, 1, 2, 3, 4], -1), true],
    ['each one further on', pairs([1, 2, 4, 0, 3]), true],
    ['two neighbours swapped', pairs([1, 0, 2, 3, 4]), false],
    ['two far ones swapped', pairs([0, 1, 3, 2, 4]), false],
  ])('points clicked %s go round alike: %s', (_, list, alike) => {
    expect(turnAlike(list)).toBe(alike);
  });

  it('three almost on one line say nothing of the way round', () => {
    const nearly = [
      { from: point(0, 0), to: point(0, 0) },
      { from: point(100, 0), to: point(10, 0) },
      // A hundredth of the length to the wrong side of the line.
      { from: point(200, -1), to: point(20, 0.1) },
      { from: point(50, 100), to: point(5, 10) },
    ];
    expect(turnAlike(nearly)).toBe(true);
  });
});
