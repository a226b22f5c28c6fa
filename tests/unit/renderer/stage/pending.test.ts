import { describe, expect, test } from 'vitest';
import { draftOfChange, withPending } from '../../../../renderer/stage/pending.ts';
import { sameMarks, sameTags } from '../../../../renderer/stage/stage-scene.ts';
import type { Tag } from '../../../../shared-lib/geometry/tag-plate.ts';
import { markOf } from './hand.ts';

const crack = markOf('crack', 'path', [0, 0], [50, 0]);
const spot = markOf('spot', 'point', [9, 9]);

describe('a change that has not come back from the record', () => {
  test('is what the next gesture builds on', () => {
    const pending = draftOfChange(
      {
        type: 'change',
        markId: 'crack',
        points: [
          { x: 1, y: 1 },
          { x: 50, y: 0 },
        ],
      },
      [crack, spot],
    );
    expect(withPending([crack, spot], pending)).toEqual([
      {
        ...crack,
        points: [
          { x: 1, y: 1 },
          { x: 50, y: 0 },
        ],
      },
      spot,
    ]);
  });

  test('a moved tag leaves the points, moved points leave the tag', () => {
    const tagged = { ...crack, tagAt: { x: 80, y: 80 } };
    expect(draftOfChange({ type: 'change', markId: 'crack', tagAt: { x: 5, y: 6 } }, [crack])).toMatchObject({
      points: crack.points,
      tagAt: { x: 5, y: 6 },
    });
    expect(
      draftOfChange(
        {
          type: 'change',
          markId: 'crack',
          points: [
            { x: 2, y: 2 },
            { x: 3, y: 3 },
          ],
        },
        [tagged],
      )?.tagAt,
    ).toEqual({ x: 80, y: 80 });
  });

  test('a new mark is shown, a removed one and one that is gone are not', () => {
    expect(draftOfChange({ type: 'add', shape: 'point', points: [{ x: 4, y: 5 }] }, [])).toMatchObject({
      shape: 'point',
      markId: null,
    });
    expect(draftOfChange({ type: 'remove', markId: 'crack' }, [crack])).toBeNull();
    expect(draftOfChange({ type: 'change', markId: 'gone', points: [] }, [crack])).toBeNull();
    expect(withPending([crack], null)).toEqual([crack]);
  });
});

describe('whether the marks have to be drawn again', () => {
  test('not for a new list of the same marks, but for a changed one', () => {
    expect(sameMarks([crack, spot], [crack, spot])).toBe(true);
    expect(sameMarks([crack, spot], [spot, crack])).toBe(false);
    expect(sameMarks([crack], [{ ...crack }])).toBe(false);
    expect(sameMarks([crack], [crack, spot])).toBe(false);
  });

  test('for a tag whose number, weight or state is another', () => {
    const tag: Tag = { number: 3, tier: 2, state: 'confirmed' };
    const tags = (other: Partial<Tag>) => new Map([['finding', { ...tag, ...other }]]);
    expect(sameTags(tags({}), tags({}))).toBe(true);
    for (const other of [{ number: 4 }, { tier: 1 as const }, { state: 'suspected' as const }]) {
      expect(sameTags(tags({}), tags(other))).toBe(false);
    }
    expect(sameTags(tags({}), new Map())).toBe(false);
  });
});
