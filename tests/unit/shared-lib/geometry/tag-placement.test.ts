import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boxesMeet, boxHolds } from '../../../../shared-lib/geometry/plane.ts';
import { placeTags, type TagWish } from '../../../../shared-lib/geometry/tag-placement.ts';

const stage = { left: 0, top: 0, right: 922, bottom: 600 };
const size = { width: 45, height: 30 };

function crackAt(id: string, x: number, y: number, length = 40): TagWish {
  return {
    id,
    size,
    at: null,
    strokes: [
      {
        points: [
          { x, y },
          { x: x + length, y: y - 8 },
        ],
        closed: false,
      },
    ],
  };
}

describe('where tags hang', () => {
  test('beside its mark, on a leader that ends on the mark', () => {
    const place = placeTags([crackAt('a', 400, 300)], stage).get('a');
    expect(place).toBeDefined();
    if (!place) return;
    expect(boxesMeet(place.box, { left: 400, top: 292, right: 440, bottom: 300 })).toBe(false);
    expect(place.leader?.to.x).toBeGreaterThanOrEqual(400);
    expect(place.leader?.to.x).toBeLessThanOrEqual(440);
  });

  test.each([
    ['upper left', 2, 10],
    ['upper right', 880, 10],
    ['lower left', 2, 598],
    ['lower right', 880, 598],
  ])('inside the stage for a mark in the %s corner', (_, x, y) => {
    const place = placeTags([crackAt('a', x, y)], stage).get('a');
    expect(place && boxHolds(stage, place.box)).toBe(true);
  });

  test('twenty marks strewn over the stage: every tag inside, none over another', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ x: fc.integer({ min: 0, max: 880 }), y: fc.integer({ min: 10, max: 590 }) }), {
          maxLength: 20,
        }),
        (spots) => {
          const places = [
            ...placeTags(
              spots.map(({ x, y }, index) => crackAt(String(index), x, y)),
              stage,
            ).values(),
          ];
          expect(places).toHaveLength(spots.length);
          for (const [index, place] of places.entries()) {
            expect(boxHolds(stage, place.box)).toBe(true);
            for (const other of places.slice(index + 1)) expect(boxesMeet(place.box, other.box)).toBe(false);
          }
        },
      ),
    );
  });

  test('a mark that is not on the stage has no tag; one that wraps the whole stage has none either', () => {
    const outside = crackAt('outside', 2000, 300);
    const round: TagWish = {
      id: 'round',
      size,
      at: null,
      strokes: [
        {
          closed: true,
          points: [
            { x: -500, y: -500 },
            { x: 2000, y: -500 },
            { x: 2000, y: 2000 },
            { x: -500, y: 2000 },
          ],
        },
      ],
    };
    expect(placeTags([outside, round], stage).size).toBe(0);
  });

  test('a tag that was put somewhere by hand stays there, but never off the stage', () => {
    const put = placeTags([{ ...crackAt('a', 400, 300), at: { x: 200, y: 200 } }], stage).get('a');
    expect(put?.box).toEqual({ left: 177.5, top: 185, right: 222.5, bottom: 215 });
    const lost = placeTags([{ ...crackAt('a', 400, 300), at: { x: 5000, y: 200 } }], stage).get('a');
    expect(lost && boxHolds(stage, lost.box)).toBe(true);
  });

  test('among five hundred marks those that find room have a tag, and no tag lies over another', () => {
    const wishes = Array.from({ length: 500 }, (_, index) =>
      crackAt(String(index), (index * 37) % 880, 10 + ((index * 53) % 580)),
    );
    const places = [...placeTags(wishes, stage).values()];
    expect(places.length).toBeGreaterThan(80);
    for (const [index, place] of places.entries()) {
      expect(boxHolds(stage, place.box)).toBe(true);
      for (const other of places.slice(index + 1)) expect(boxesMeet(place.box, other.box)).toBe(false);
    }
  });
});
