import { describe, expect, test } from 'vitest';
import {
  draftOfPlane,
  emptyScale,
  millimetresOf,
  readyScale,
  type ScaleDraft,
} from '../../../../renderer/measuring/scale-draft.ts';
import { draftAfter, labelsOfDraft, marksOfDraft } from '../../../../renderer/measuring/scale-on-stage.ts';
import { CalibrationInput } from '../../../../shared-lib/calibration/input.ts';
import { calibratedPlane } from '../../../../shared-lib/measuring/calibrated-plane.ts';

const at = (x: number, y: number) => ({ x, y });
const tapped = (draft: ScaleDraft, ...points: [number, number][]): ScaleDraft =>
  points.reduce((now, [x, y]) => draftAfter(now, { type: 'add', shape: 'point', points: [at(x, y)] }, 2), draft);

describe('a size as it is typed', () => {
  // NIST SP 811: 1 in = 25.4 mm exactly.
  test.each([
    ['150', 'metric', 150],
    ['6 in', 'metric', 152.4],
    ['6', 'us', 152.4],
    ['150 mm', 'us', 150],
    ['7/16 in', 'metric', 11.1125],
    ['long', 'metric', null],
    ['', 'metric', null],
  ] as const)('%s in %s units is %s mm', (typed, units, mm) => {
    const read = millimetresOf(typed, units);
    if (mm === null) expect(read).toBeNull();
    else expect(read).toBeCloseTo(mm, 9);
  });
});

describe('a scale in the making', () => {
  test('says what is missing, one thing after the other', () => {
    const { missing } = readyScale(emptyScale, 'deck', 'metric');
    expect(missing).toMatch(/end to end/);
    const pulled = draftAfter(emptyScale, { type: 'add', shape: 'span', points: [at(0, 0), at(300, 400)] }, 2);
    expect(readyScale(pulled, 'deck', 'metric').missing).toMatch(/how long/);
    const typed = { ...pulled, length: '100' };
    expect(readyScale(typed, 'deck', 'metric')).toEqual({
      missing: null,
      reference: {
        method: 'known-length',
        plane: 'deck',
        ends: [at(0, 0), at(300, 400)],
        lengthMm: 100,
        toleranceMm: 0,
        clickingPx: 2,
      },
    });
    expect(readyScale({ ...typed, tolerance: 'a bit' }, 'deck', 'metric').missing).toMatch(/can be off/);
  });

  test('pulled anew has the new ends; an end dragged alone keeps the sureness of the other', () => {
    const pulled = draftAfter(emptyScale, { type: 'add', shape: 'span', points: [at(0, 0), at(300, 400)] }, 4);
    const dragged = draftAfter(pulled, { type: 'change', markId: 'reference', points: [at(0, 0), at(310, 400)] }, 1);
    expect(dragged.points['known-length'].map(({ pointPx }) => pointPx)).toEqual([4, 1]);
  });

  test('of a rectangle goes round from the first corner', () => {
    const draft = tapped(
      { ...emptyScale, way: 'known-points', wide: '40', high: '20' },
      [0, 0],
      [400, 0],
      [400, 200],
      [0, 200],
    );
    const { reference } = readyScale(draft, 'plate', 'metric');
    expect(reference?.method === 'known-points' && reference.points.map(({ mm }) => mm)).toEqual([
      at(0, 0),
      at(40, 0),
      at(40, 20),
      at(0, 20),
    ]);
  });

  test('loses a point with its place, and keeps the other ways as they were set', () => {
    const places = [1, 2, 3].map((n) => ({ across: `${n}`, down: '0' }));
    const draft = tapped({ ...emptyScale, way: 'known-points', known: 'places', places }, [1, 1], [2, 2], [3, 3]);
    const without = draftAfter(draft, { type: 'remove', markId: 'reference 1' }, 1);
    expect(without.places.map(({ across }) => across)).toEqual(['1', '3']);
    const round = tapped({ ...without, way: 'known-circle' }, [9, 9]);
    expect(round.points['known-points']).toHaveLength(2);
    expect(round.points['known-circle']).toHaveLength(1);
  });

  test('shows the circle through its points, and no hand moves that', () => {
    const rim = Array.from({ length: 6 }, (_, k): [number, number] => [200 + 80 * Math.cos(k), 200 + 60 * Math.sin(k)]);
    const draft = tapped({ ...emptyScale, way: 'known-circle' }, ...rim);
    const [fit] = marksOfDraft(draft, 'shot');
    expect(fit?.shape).toBe('area');
    expect(Math.max(...(fit?.points.map(({ x }) => x) ?? []))).toBeCloseTo(280, 0);
    expect(draftAfter(draft, { type: 'remove', markId: fit?.id ?? '' }, 1)).toBe(draft);
    expect(labelsOfDraft(draft, [0, 1.26, 0, 0, 0, 0])[1]?.text).toBe('2: 1.3 px');
  });

  test('is taken up again from a kept one as it was', () => {
    const reference = CalibrationInput.parse({
      method: 'known-points',
      plane: 'deck',
      toleranceMm: 0.1,
      points: [
        { px: at(0, 0), mm: at(0, 0) },
        { px: at(400, 0), mm: at(40, 0) },
        { px: at(400, 200), mm: at(40, 20) },
        { px: at(0, 200), mm: at(0, 20) },
      ],
    });
    const body = { ...reference, component: null };
    const plane = calibratedPlane({ id: 'p', shotId: 's', plane: 'deck', method: 'known-points', body });
    const again = readyScale(draftOfPlane(plane), 'deck', 'metric');
    expect(again.reference).toMatchObject({ method: 'known-points', toleranceMm: 0.1, clickingPx: 1 });
    expect(again.reference).toHaveProperty('points', reference.method === 'known-points' ? reference.points : []);
  });
});
