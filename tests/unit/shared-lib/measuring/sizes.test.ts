import { describe, expect, test } from 'vitest';
import { CalibrationInput } from '../../../../shared-lib/calibration/input.ts';
import { besideOutline, besidePx } from '../../../../shared-lib/geometry/outlines/beside.ts';
import { outlineOf } from '../../../../shared-lib/geometry/outlines/index.ts';
import { isOffPlane, markSize, pointUncertaintyPx } from '../../../../shared-lib/measuring/mark-size.ts';
import { tracedPath, withWayPoint } from '../../../../shared-lib/measuring/traced-mark.ts';
import { sizeWords } from '../../../../shared-lib/measuring/words.ts';
import { Mark } from '../../../../shared-lib/model/mark.ts';
import { readQuantity } from '../../../../shared-lib/quantities/read-quantity.ts';

const photo = { width: 4000, height: 3000 };
const plane = {
  id: 'plane',
  component: 'ENG/HD.1',
  reference: CalibrationInput.parse({
    method: 'known-length',
    plane: 'face',
    ends: [
      { x: 0, y: 0 },
      { x: 1000, y: 0 },
    ],
    lengthMm: 100,
    tiltDegrees: 0,
    lensShare: 0,
    clickingPx: 0.001,
  }),
};
const line = (part: Partial<Mark> = {}): Mark => ({
  id: 'm',
  shotId: 's',
  findingId: null,
  shape: 'line',
  points: [
    { x: 100, y: 100 },
    { x: 500, y: 400 },
  ],
  role: 'finding',
  origin: { by: 'hand', pointPx: 2 },
  calibrationId: 'plane',
  tagAt: null,
  note: '',
  ...part,
});

const { origin } = tracedPath(
  {
    centre: [0, 100, 200].map((x) => ({ x, y: 0, widthPx: 3, confidence: 0.9 })),
    lengthPx: 200,
    unsure: false,
    doubts: [],
  },
  {
    points: [
      { x: 0, y: 0 },
      { x: 200, y: 0 },
    ],
  },
  1,
);

describe('the size of a mark', () => {
  test('is 50 mm for 500 px at 10 px per mm, and as unsure as its two ends', () => {
    const size = markSize(line(), photo, plane)?.size;
    expect(size?.value).toBeCloseTo(50, 3);
    // Two ends of 2 px each along the line, root sum of squares, k = 2 (JCGM 100:2008, 5.1.2): 2 x 0.2 mm x root 2.
    expect(size?.expanded).toBeCloseTo(2 * 0.2 * Math.SQRT2, 2);
  });

  test('set by nobody knows which zoom is taken as set on the whole photo', () => {
    expect(pointUncertaintyPx(line({ origin: { by: 'hand' } }), photo)).toBe(4);
    expect(pointUncertaintyPx(line({ origin: { by: 'hand' } }), { width: 800, height: 600 })).toBe(1);
  });

  test('an uncertainty of nothing is taken as none said, and none counts for more than 100 px', () => {
    expect(pointUncertaintyPx(line({ origin: { by: 'hand', pointPx: 0 } }), photo)).toBe(4);
    expect(pointUncertaintyPx(line({ origin: { by: 'hand', pointPx: 400 } }), photo)).toBe(100);
    expect(pointUncertaintyPx(line({ origin: { by: 'hand' } }), { width: 400_000, height: 300 })).toBe(100);
  });

  test('a corner set by hand with three points has an angle; an outline of three has none', () => {
    const three = [
      { x: 500, y: 100 },
      { x: 100, y: 100 },
      { x: 100, y: 500 },
    ];
    expect(markSize(line({ shape: 'path', points: three }), photo, plane)?.angle?.value).toBeCloseTo(90, 9);
    expect(markSize(line({ shape: 'area', points: three }), photo, plane)?.angle).toBeNull();
    expect(markSize(line({ shape: 'path', points: three.slice(0, 2) }), photo, plane)?.angle).toBeNull();
    // Seen at a slant an angle in the photo is none of the part.
    expect(markSize(line({ shape: 'path', points: three }), photo, null)?.angle).toBeNull();
  });

  test('of a traced line has its usual width: the middle one of those read, across the way it runs', () => {
    const traced = (points: Mark['points'], widthsPx: (number | null)[]) =>
      Mark.parse(
        line({
          shape: 'path',
          points,
          origin: { ...origin, reading: { widthsPx, unsure: [], doubts: [] } } as Mark['origin'],
        }),
      );
    const level = [0, 100, 200, 300, 400].map((x) => ({ x, y: 50 }));
    const upright = level.map(({ x, y }) => ({ x: y, y: x }));
    const slanting = level.map(({ x }) => ({ x: 0.6 * x, y: 0.8 * x }));
    for (const points of [level, upright, slanting]) {
      const width = markSize(traced(points, [40, null, 4, 2, 0]), photo, plane)?.width;
      // 4 px of 2, 4 and 40, at 10 px per mm; both edges to half a pixel, k = 2 (JCGM 100:2008, 5.1.2).
      expect(width?.value).toBeCloseTo(0.4, 6);
      expect(width?.expanded).toBeCloseTo(2 * 0.05 * Math.SQRT2, 3);
    }
    expect(markSize(traced(level, [null, null, 0, null, null]), photo, plane)?.width).toBeNull();
    expect(markSize(line(), photo, plane)?.width).toBeNull();
  });

  test('without a plane is in pixels', () => {
    const size = markSize(line(), photo, null)?.size;
    expect(size).toMatchObject({ unit: 'px', value: 500, expanded: null });
    expect(size && sizeWords(size, 'metric')).toBe('500 pixels, no scale');
  });

  test('a point and an arrow have none', () => {
    expect(markSize(line({ shape: 'arrow' }), photo, plane)).toBeNull();
    expect(markSize(line({ shape: 'point', points: [{ x: 1, y: 1 }] }), photo, plane)).toBeNull();
  });

  test('is read back from its words, with its uncertainty, in both unit systems', () => {
    const size = markSize(line(), photo, plane)?.size;
    if (!size) throw new Error('no size');
    const metric = readQuantity(sizeWords(size, 'metric'), 'mm', 'photo');
    expect([metric.value, metric.uncertainty]).toEqual([50, 0.6]);
    const us = readQuantity(sizeWords(size, 'us'), 'mm', 'photo');
    // 1 in = 25.4 mm.
    expect(us.value).toBeCloseTo(50, 0);
    expect(us.uncertainty).toBeCloseTo(0.57, 1);
  });

  test('is off its plane on another part, on none where nobody has said', () => {
    expect(isOffPlane('ENG/HD.1', 'ENG/HD.1/EVS.3.1')).toBe(false);
    expect(isOffPlane('ENG/HD.1', 'ENG')).toBe(false);
    expect(isOffPlane('ENG/HD.1', 'ENG/BLK')).toBe(true);
    expect(isOffPlane(null, 'ENG/BLK')).toBe(false);
    expect(isOffPlane('ENG/HD.1', undefined)).toBe(false);
  });
});

describe('a trace kept as a mark', () => {
  const centre = Array.from({ length: 400 }, (_, x) => ({
    x,
    y: 40 * Math.sin(x / 40),
    widthPx: x % 50 === 0 ? null : 3,
    confidence: x >= 100 && x < 160 ? 0.1 : 0.9,
  }));
  const length = centre
    .slice(1)
    .reduce((sum, p, i) => sum + Math.hypot(p.x - (centre[i]?.x ?? 0), p.y - (centre[i]?.y ?? 0)), 0);
  const trace = { centre, lengthPx: length, unsure: true, doubts: ['gap' as const] };
  const { points, origin: kept } = tracedPath(
    trace,
    {
      points: [
        { x: 0, y: 0 },
        { x: 399, y: 0 },
      ],
    },
    1,
  );

  test('has far fewer points and the same length to a part in two thousand', () => {
    expect(points.length).toBeLessThan(centre.length / 3);
    const kept = points
      .slice(1)
      .reduce((sum, p, i) => sum + Math.hypot(p.x - (points[i]?.x ?? 0), p.y - (points[i]?.y ?? 0)), 0);
    expect(Math.abs(kept - length) / length).toBeLessThan(5e-4);
  });

  test('is a mark of the record, its doubtful stretch at the very points', () => {
    const mark = Mark.parse(line({ shape: 'path', points, origin: kept }));
    const [stretch] = (mark.origin.by === 'traced' && mark.origin.reading?.unsure) || [];
    const [from, to] = (stretch ?? [0, 0]).map((index) => points[index]?.x ?? 0);
    expect(from).toBeCloseTo(99, 0);
    expect(to).toBeCloseTo(160, 0);
  });

  test('takes a new way point between the two that it lies between', () => {
    const way = [
      { x: 0, y: 0 },
      { x: 200, y: -38 },
      { x: 399, y: 0 },
    ];
    const near = points.find(({ x }) => x > 290) ?? { x: 0, y: 0 };
    expect(withWayPoint(points, way, { x: 300, y: 90 }, near)).toEqual([way[0], way[1], { x: 300, y: 90 }, way[2]]);
  });

  test('from a spot to itself is none', () => {
    const nothing = { ...trace, centre: centre.slice(0, 1), lengthPx: 0 };
    expect(() =>
      tracedPath(
        nothing,
        {
          points: [
            { x: 0, y: 0 },
            { x: 0, y: 0 },
          ],
        },
        1,
      ),
    ).toThrow('trace-too-short');
  });
});

describe('a path drawn beside what it marks', () => {
  test('never shoots off at a sharp bend', () => {
    const hairpin = [
      { x: 0, y: 0 },
      { x: 100, y: 0 },
      { x: 100.5, y: 1 },
      { x: 0, y: 2 },
    ];
    for (const stroke of [...besideOutline(hairpin), ...outlineOf('path', hairpin.toReversed(), [[0, 3]])]) {
      for (const { x, y } of stroke.points) {
        expect(x).toBeGreaterThan(-4 * besidePx);
        expect(x).toBeLessThan(100 + 4 * besidePx);
        expect(Math.abs(y)).toBeLessThan(5 * besidePx);
      }
    }
  });
});
