import { describe, expect, test } from 'vitest';
import { CalibrationInput, MeasuredShape } from '../../../../shared-lib/calibration/input.ts';
import { measureInPixels, measureShape } from '../../../../shared-lib/calibration/measure.ts';
import { mapPlane } from '../../../../shared-lib/calibration/plane-mapping.ts';
import { showMeasured } from '../../../../shared-lib/calibration/show-measured.ts';
import type { AppError, ErrorCode } from '../../../../shared-lib/contract/errors.ts';
import { errorText } from '../../../../shared-lib/wording/errors.ts';

const point = (x: number, y: number) => ({ x, y });
const length = (overrides: object = {}) =>
  CalibrationInput.parse({
    method: 'known-length',
    ends: [point(100, 100), point(600, 100)],
    lengthMm: 100,
    ...overrides,
  });
const line = (...points: { x: number; y: number }[]) => MeasuredShape.parse({ shape: 'line', points });

const square = [
  { px: point(100, 100), mm: point(0, 0) },
  { px: point(900, 120), mm: point(100, 0) },
  { px: point(860, 700), mm: point(100, 80) },
  { px: point(140, 720), mm: point(0, 80) },
];
const points = (list: typeof square, overrides: object = {}) =>
  CalibrationInput.parse({ method: 'known-points', points: list, ...overrides });

const refusal = (input: CalibrationInput): ErrorCode | 'accepted' => {
  try {
    mapPlane(input);
    return 'accepted';
  } catch (error) {
    const wire = (error as AppError).toWire();
    // Every refusal is a sentence.
    expect(errorText(wire)).toMatch(/[.].+[.]$/);
    return wire.code;
  }
};

describe('what is no reference is refused in words', () => {
  const [a, b, c, d] = square;
  if (!a || !b || !c || !d) throw new Error('four corners');
  const onLine = [0, 1, 2, 3, 4].map((k) => ({ px: point(100 + 100 * k, 100 + 50 * k), mm: point(10 * k, 0) }));
  const cases: readonly [string, CalibrationInput, ErrorCode | 'accepted'][] = [
    ['a good length', length(), 'accepted'],
    ['both ends on one spot', length({ ends: [point(100, 100), point(100, 100)] }), 'calibration-zero-length'],
    ['a length of zero', length({ lengthMm: 0 }), 'calibration-zero-length'],
    ['a click off the photo', length({ photo: { width: 500, height: 500 } }), 'point-outside-photo'],
    ['four good points', points(square), 'accepted'],
    ['three points', points([a, b, c]), 'calibration-too-few-points'],
    ['points on one line', points(onLine), 'calibration-points-collinear'],
    [
      'three of four on one line',
      points([a, b, { ...c, px: point(500, 110), mm: point(50, 0) }, d]),
      'calibration-points-collinear',
    ],
    ['two swapped', points([a, { ...b, px: c.px }, { ...c, px: b.px }, d]), 'calibration-points-crossing'],
    [
      'four rim points',
      CalibrationInput.parse({ method: 'known-circle', rim: square.map(({ px }) => px), diameterMm: 50 }),
      'calibration-too-few-points',
    ],
    [
      'rim points on a line',
      CalibrationInput.parse({
        method: 'known-circle',
        rim: [0, 1, 2, 3, 4, 5].map((k) => point(100 * k, 50 * k)),
        diameterMm: 50,
      }),
      'calibration-not-ellipse',
    ],
    [
      'rim points of two branches',
      CalibrationInput.parse({
        method: 'known-circle',
        rim: [point(0, 0), point(400, 10), point(50, 300), point(390, 290), point(200, 150), point(210, 20)],
        diameterMm: 50,
      }),
      'calibration-not-ellipse',
    ],
  ];
  test.each(cases)('%s', (_, input, expected) => expect(refusal(input)).toBe(expected));
});

test("a mark at the plane's horizon has no size", () => {
  // The square's sides meet far above the photo.
  const steep = points([
    { px: point(400, 100), mm: point(0, 0) },
    { px: point(600, 100), mm: point(100, 0) },
    { px: point(900, 700), mm: point(100, 80) },
    { px: point(100, 700), mm: point(0, 80) },
  ]);
  expect(() => measureShape(steep, line(point(500, 400), point(500, -2000)))).toThrow(/mark-beyond-horizon/);
});

test('lengths, areas and angles of a square seen squarely', () => {
  const seen = points([
    { px: point(100, 100), mm: point(0, 0) },
    { px: point(600, 100), mm: point(100, 0) },
    { px: point(600, 600), mm: point(100, 100) },
    { px: point(100, 600), mm: point(0, 100) },
  ]);
  expect(measureShape(seen, line(point(100, 100), point(400, 500))).value).toBeCloseTo(100, 9);
  const area = MeasuredShape.parse({ shape: 'area', points: [point(100, 100), point(600, 100), point(600, 600)] });
  expect(measureShape(seen, area).value).toBeCloseTo(5000, 6);
  const angle = MeasuredShape.parse({ shape: 'angle', points: [point(600, 100), point(100, 100), point(600, 600)] });
  expect(measureShape(seen, angle).value).toBeCloseTo(45, 9);
});

test('a mark off the plane, or far from the reference, is warned about', () => {
  const off = MeasuredShape.parse({ shape: 'line', points: [point(200, 200), point(300, 200)], offPlane: true });
  expect(measureShape(points(square), off).warnings).toEqual(['off-plane']);
  expect(measureShape(length(), line(point(200, 2000), point(300, 2000))).warnings).toEqual(['far-from-reference']);
  expect(measureShape(length(), line(point(3000, 100), point(3100, 100))).warnings).toEqual(['far-from-reference']);
  const low = length({ ends: [point(2100, 3100), point(2600, 3100)] });
  expect(measureShape(low, line(point(2200, 3200), point(2300, 3200))).warnings).toEqual([]);
});

test('every part of the uncertainty grows the whole', () => {
  const mark = line(point(200, 300), point(500, 320));
  const plain = measureShape(length(), mark).expanded ?? 0;
  for (const more of [{ clickingPx: 3 }, { toleranceMm: 2 }, { tiltDegrees: 25 }, { lensShare: 0.02 }]) {
    expect(measureShape(length(more), mark).expanded, JSON.stringify(more)).toBeGreaterThan(plain);
  }
  expect(measureShape(length(), { ...mark, pointPx: 4 }).expanded).toBeGreaterThan(plain);
});

test('points that fit badly make the result less sure', () => {
  const five = [...square, { px: point(500, 400), mm: point(50, 38) }];
  const bad = [...square, { px: point(500, 400), mm: point(56, 38) }];
  const mark = line(point(200, 300), point(500, 320));
  expect(measureShape(points(bad), mark).expanded).toBeGreaterThan(
    1.5 * (measureShape(points(five), mark).expanded ?? 0),
  );
});

test('without a calibration a mark is said in pixels', () => {
  expect(measureInPixels(line(point(0, 0), point(30, 40)))).toMatchObject({
    unit: 'px',
    value: 50,
    expanded: null,
    text: '50.0 px, not calibrated',
  });
});

/** Source: GUM 7.2.6, figures of an uncertainty and of the value to match; one figure from 3 up is house practice. */
test.each([
  [38.4123, 0.88, '38.4 \u00b1 0.9 mm'],
  [38.4123, 0.124, '38.41 \u00b1 0.12 mm'],
  [38.4123, 2.4, '38.4 \u00b1 2.4 mm'],
  [38.4123, 0.96, '38.4 \u00b1 1.0 mm'],
  [1234.5, 37, '1230 \u00b1 40 mm'],
  [0.1234, 0.0049, '0.123 \u00b1 0.005 mm'],
])('%f with %f reads %s', (value, expanded, text) => expect(showMeasured({ value, expanded }, 'mm')).toBe(text));
