import { describe, expect, test } from 'vitest';
import { type Hittable, hitMarks } from '../../../../shared-lib/geometry/hit-test.ts';
import type { ShapeName } from '../../../../shared-lib/model/mark.ts';

const at = (x: number, y: number) => ({ x, y });
const mark = (id: string, shape: ShapeName, ...points: { x: number; y: number }[]): Hittable => ({ id, shape, points });
const sameSize = { scale: 1, x: 0, y: 0 };

const shapes: Record<ShapeName, Hittable> = {
  point: mark('point', 'point', at(100, 100)),
  line: mark('line', 'line', at(50, 100), at(150, 100)),
  path: mark('path', 'path', at(50, 100), at(100, 100), at(100, 200)),
  area: mark('area', 'area', at(50, 50), at(150, 50), at(150, 150), at(50, 150)),
  arrow: mark('arrow', 'arrow', at(50, 100), at(150, 100)),
  span: mark('span', 'span', at(50, 100), at(150, 100)),
};

describe('what lies under a spot, with 6 screen pixels of tolerance', () => {
  test.each<[ShapeName, string, number, number, string | null]>([
    ['point', 'at the spot itself', 100, 100, 'outline'],
    ['point', 'on its ring', 109, 100, 'outline'],
    ['point', 'beyond its ticks', 124, 100, null],
    ['line', 'on the crack', 100, 105, 'outline'],
    ['line', 'on the line drawn 11 px beside it', 100, 88, 'outline'],
    ['line', 'beyond the drawn line', 100, 82, null],
    ['line', 'on the side where nothing is drawn', 100, 107, null],
    ['path', 'on its second leg', 104, 150, 'outline'],
    ['path', 'on the drawn leg beside it', 113, 150, 'outline'],
    ['area', 'on its closing edge', 47, 100, 'outline'],
    ['area', 'well inside', 100, 100, 'inside'],
    ['area', 'outside', 160, 100, null],
    ['arrow', 'on its barb', 136, 94, 'outline'],
    ['arrow', 'short of its tail', 43, 100, null],
    ['span', 'on its end tick', 150, 110, 'outline'],
    ['span', 'past its end tick', 158, 110, null],
  ])('%s %s', (shape, _, x, y, expected) => {
    expect(hitMarks([shapes[shape]], at(x, y), sameSize, 6)?.on ?? null).toBe(expected);
  });

  test('the tolerance stays the same on screen, however far the photo is zoomed', () => {
    const far = { scale: 0.1, x: 0, y: 0 };
    const near = { scale: 10, x: 0, y: 0 };
    // 5 screen pixels to the side of the arrow's shaft: 50 image pixels when far, half a pixel when near.
    expect(hitMarks([shapes.arrow], at(100, 150), far, 6)).not.toBeNull();
    expect(hitMarks([shapes.arrow], at(100, 100.5), near, 6)).not.toBeNull();
    expect(hitMarks([shapes.arrow], at(100, 101), near, 6)).toBeNull();
  });

  test('of two lines the nearer is met, of two equal ones the later drawn', () => {
    const upper = mark('upper', 'arrow', at(0, 0), at(100, 0));
    const lower = mark('lower', 'arrow', at(0, 8), at(100, 8));
    const twin = mark('twin', 'arrow', at(0, 8), at(100, 8));
    expect(hitMarks([upper, lower], at(50, 3), sameSize, 6)?.id).toBe('upper');
    expect(hitMarks([upper, lower, twin], at(50, 8), sameSize, 6)?.id).toBe('twin');
  });

  test('within nested areas the smallest is met', () => {
    const outer = mark('outer', 'area', at(0, 0), at(400, 0), at(400, 400), at(0, 400));
    expect(hitMarks([shapes.area, outer], at(100, 100), sameSize, 6)).toEqual({ id: 'area', on: 'inside' });
    expect(hitMarks([shapes.area, outer], at(300, 300), sameSize, 6)).toEqual({ id: 'outer', on: 'inside' });
  });
});
