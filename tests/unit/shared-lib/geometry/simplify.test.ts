import fc from 'fast-check';
import simplifyJs from 'simplify-js';
import { describe, expect, test } from 'vitest';
import { distanceToChain } from '../../../../shared-lib/geometry/plane.ts';
import { simplify } from '../../../../shared-lib/geometry/simplify.ts';

const trail = fc.array(fc.record({ x: fc.integer({ min: 0, max: 300 }), y: fc.integer({ min: 0, max: 300 }) }), {
  minLength: 2,
  maxLength: 60,
});

describe('a trail drawn by hand', () => {
  test('keeps the same points as simplify-js 1.2.4 in its high-quality mode', () => {
    fc.assert(
      fc.property(trail, fc.integer({ min: 1, max: 20 }), (points, tolerance) => {
        // simplify-js may use its first point twice in a list of equal points; ours too, so compare as they are.
        expect(simplify(points, tolerance + 0.1)).toEqual(simplifyJs(points, tolerance + 0.1, true));
      }),
    );
  });

  test('no dropped point lies farther away than the tolerance', () => {
    fc.assert(
      fc.property(trail, (points) => {
        const kept = simplify(points, 4);
        for (const point of points) expect(distanceToChain(point, kept, false)).toBeLessThanOrEqual(4 + 1e-9);
      }),
    );
  });
});
