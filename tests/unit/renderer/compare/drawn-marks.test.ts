import { expect, test } from 'vitest';
import { marksToday, oldMarksIn } from '../../../../renderer/compare/drawn-marks.ts';
import type { VisitRecord } from '../../../../shared-lib/contract/visits.ts';
import type { Mark } from '../../../../shared-lib/model/mark.ts';

const traced: Mark = {
  id: 'm',
  shotId: 's',
  findingId: null,
  shape: 'path',
  points: [0, 10, 20, 30, 40].map((x) => ({ x, y: 5 })),
  role: 'finding',
  origin: {
    by: 'traced',
    version: '2',
    parameters: { pointPx: 1 },
    seeds: [],
    confidence: 0.7,
    reading: { widthsPx: [2, 2, null, 2, 2], unsure: [[1, 3]], doubts: ['gap'] },
  } as unknown as Mark['origin'],
  calibrationId: null,
  tagAt: null,
  note: '',
};
const record = { marks: [traced], findings: [], standing: { lines: [] } } as unknown as VisitRecord;
const shiftedBy7 = [1, 0, 7, 0, 1, 0, 0, 0, 1] as const;

test('where the tracer guessed is shown in the comparison too, then and now', () => {
  expect(marksToday(record, 's')).toMatchObject([{ id: 'm', unsure: [[1, 3]], isGhost: false }]);
  const [old] = oldMarksIn([{ mark: traced, tag: null } as never], shiftedBy7, true);
  expect(old).toMatchObject({ unsure: [[1, 3]], isGhost: true });
  expect(old?.points[0]).toEqual({ x: 7, y: 5 });
});

test('a mark drawn by hand has no such stretch', () => {
  const hand = { ...record, marks: [{ ...traced, origin: { by: 'hand' as const } }] };
  expect(marksToday(hand, 's')).toMatchObject([{ unsure: [] }]);
});
