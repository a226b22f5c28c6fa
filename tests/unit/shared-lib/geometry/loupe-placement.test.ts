import fc from 'fast-check';
import { expect, test } from 'vitest';
import { placeLoupe } from '../../../../shared-lib/geometry/loupe-placement.ts';
import { screenPoint } from '../../../../shared-lib/geometry/spaces.ts';

test('the loupe lies wholly on the stage and never under the finger', () => {
  const stage = { width: 922, height: 600 };
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 922 }), fc.integer({ min: 0, max: 600 }), (x, y) => {
      const centre = placeLoupe(screenPoint(x, y), stage, 84);
      expect(centre.x).toBeGreaterThanOrEqual(84);
      expect(centre.x).toBeLessThanOrEqual(922 - 84);
      expect(centre.y).toBeGreaterThanOrEqual(84);
      expect(centre.y).toBeLessThanOrEqual(600 - 84);
      expect(Math.hypot(centre.x - x, centre.y - y)).toBeGreaterThan(84 + 20);
    }),
  );
});
