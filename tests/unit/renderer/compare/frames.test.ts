import { describe, expect, it } from 'vitest';
import { pairFrom, transformOf, withSpot } from '../../../../renderer/compare/frames.ts';
import { type Homography, project } from '../../../../shared-lib/calibration/homography.ts';
import { toScreen } from '../../../../shared-lib/geometry/viewport.ts';

const lean: Homography = [1.02, 0.08, -30, -0.05, 0.97, 60, 6e-5, -3e-5, 1];
const photos = { earlier: { width: 1480, height: 1110 }, later: { width: 3000, height: 2000 } };

describe('a new pair', () => {
  it('has its partner where the mapping puts it, from either side', () => {
    const at = { x: 400, y: 300 };
    const there = project(lean, at) ?? at;
    expect(pairFrom('then', at, lean, photos)).toEqual({ from: at, to: there, by: 'hand' });
    const back = pairFrom('now', there, lean, photos);
    expect(back.from.x).toBeCloseTo(400, 6);
    expect(back.from.y).toBeCloseTo(300, 6);
  });

  it('without a mapping stands at the same share of the other photo, and never off it', () => {
    const pair = pairFrom('then', { x: 740, y: 555 }, null, photos);
    expect(pair.to).toEqual({ x: 1500, y: 1000 });
    expect(pairFrom('now', { x: -20, y: 5000 }, null, photos).to).toEqual({ x: -0.5, y: 1999.5 });
  });

  it('a moved spot is one set by hand; the others stay as they were found', () => {
    const pairs = [1, 2].map((k) => ({ from: { x: k, y: k }, to: { x: k, y: k }, by: 'found' as const }));
    expect(withSpot(pairs, 1, 'now', { x: 9, y: 8 })).toEqual([
      pairs[0],
      { from: { x: 2, y: 2 }, to: { x: 9, y: 8 }, by: 'hand' },
    ]);
  });
});

describe('the style that draws a photo through a mapping', () => {
  it('puts every pixel where the mapping and the view put it', () => {
    const [drawn, photo, view] = [{ width: 740, height: 555 }, photos.earlier, { scale: 0.4, x: 33, y: -12 }];
    const [a = 0, b = 0, , d = 0, e = 0, f = 0, , h = 0, , , , , m = 0, n = 0, , p = 0] = transformOf(
      drawn,
      photo,
      lean,
      view,
    )
      .slice('matrix3d('.length, -1)
      .split(',')
      .map(Number);
    for (const at of [
      { x: 0, y: 0 },
      { x: 1479, y: 1109 },
      { x: 600, y: 200 },
    ]) {
      // The centre of a pixel, in the style's own pixels: CSS Transforms Level 2, columns of the matrix.
      const [x, y] = [((at.x + 0.5) * drawn.width) / photo.width, ((at.y + 0.5) * drawn.height) / photo.height];
      const w = d * x + h * y + p;
      const there = toScreen(view, project(lean, at) ?? at);
      expect((a * x + e * y + m) / w).toBeCloseTo(there.x, 6);
      expect((b * x + f * y + n) / w).toBeCloseTo(there.y, 6);
    }
  });
});
