import { expect, test } from 'vitest';
import { CalibrationInput } from '../../../../../shared-lib/calibration/input.ts';
import { calibratedPlane } from '../../../../../shared-lib/measuring/calibrated-plane.ts';
import { wholeFrame } from '../../../../../shared-lib/report/photos/frame.ts';
import { scaleBar } from '../../../../../shared-lib/report/photos/scale-bar.ts';
import { strokesFor } from '../../../../../shared-lib/report/photos/strokes.ts';

const size = { width: 2000, height: 1500 };
const frame = wholeFrame(size, null, { widthMm: 178, heightMm: 102 });
const nothing = { strokes: [], tags: [], scale: 1 };
const planeOf = (reference: unknown) => {
  const input = CalibrationInput.parse(reference);
  return calibratedPlane({
    id: 'p',
    shotId: 's',
    plane: input.plane,
    method: input.method,
    body: { ...input, component: null },
  });
};
/** 8 px of the photo to the millimetre, seen square on. */
const square = planeOf({
  method: 'known-length',
  plane: 'deck',
  ends: [
    { x: 100, y: 100 },
    { x: 900, y: 100 },
  ],
  lengthMm: 100,
});

test('is as long on paper as the length it names', () => {
  const bar = scaleBar(square, { x: 1000, y: 700 }, frame, nothing, 'metric');
  // 178 x 102 mm takes the photo at 102 / 1500 mm a pixel; 8 px are 1 mm of the deck.
  expect(bar?.text).toBe('20\u202fmm at the mark');
  expect(bar?.widthMm).toBeCloseTo(20 * 8 * (102 / 1500), 6);
});

test('is in inches where the shop works in them: an inch is 25.4 mm', () => {
  const bar = scaleBar(square, { x: 1000, y: 700 }, frame, nothing, 'us');
  expect(bar?.text).toBe('1\u202fin at the mark');
  expect(bar?.widthMm).toBeCloseTo(25.4 * 8 * (102 / 1500), 6);
});

test('takes the corner that covers nothing', () => {
  const free = scaleBar(square, { x: 1000, y: 700 }, frame, nothing, 'metric');
  const covered = scaleBar(
    square,
    { x: 1000, y: 700 },
    frame,
    { ...nothing, strokes: [[[frame.widthMm - 10, frame.heightMm - 6]]] },
    'metric',
  );
  expect(free?.at[0]).toBeGreaterThan(frame.widthMm / 2);
  expect(covered?.at[0]).toBeLessThan(frame.widthMm / 2);
});

test('a traced path is dotted where the tracer was not sure, whole elsewhere', () => {
  const path = Array.from({ length: 21 }, (_, k): [number, number] => [k * 2, 20]);
  const strokes = strokesFor('path', path, { scale: 1, dashed: false, unsure: [[5, 10]] });
  const dotted = strokes.filter(({ dotted }) => dotted);
  expect(dotted).toHaveLength(1);
  expect(dotted[0]?.points[0]?.[0]).toBeCloseTo(10, 6);
  expect(dotted[0]?.points.at(-1)?.[0]).toBeCloseTo(20, 6);
  expect(strokes).toHaveLength(5);
});

test('a grown outline is dotted where its border is hardly to be seen, and goes all the way round', () => {
  const square: [number, number][] = [
    [0, 0],
    [30, 0],
    [30, 20],
    [0, 20],
  ];
  const plain = strokesFor('area', square, { scale: 1, dashed: false });
  expect(plain).toMatchObject([{ closed: true }]);
  const strokes = strokesFor('area', square, { scale: 1, dashed: true, unsure: [[1, 2]] });
  expect(strokes.map(({ points, dotted = false, dashed }) => ({ points, dotted, dashed }))).toEqual([
    { points: [square[0], square[1]], dotted: false, dashed: true },
    { points: [square[1], square[2]], dotted: true, dashed: false },
    { points: [square[2], square[3], square[0]], dotted: false, dashed: true },
  ]);
});
