import { AppError } from '../contract/errors.ts';
import { simplify } from '../geometry/simplify.ts';
import type { XY } from '../geometry/spaces.ts';
import { growerVersion } from '../growing/grow.ts';
import type { Grown } from '../growing/grown.ts';
import type { ImagePoint, MarkOrigin } from '../model/mark.ts';

/** Points are dropped where the outline stays nearer than this to where it was: px, or a share of how surely it lies there. */
const tolerancePx = 0.15;
const toleranceShare = 0.3;
const mostPoints = 5000;

export interface GrownArea {
  readonly points: ImagePoint[];
  readonly origin: MarkOrigin & { by: 'grown' };
}

/**
 * A grown outline as a mark keeps it: fewer points, and where its border was hardly seen.
 *
 * @param points  what the hand set: a spot, or a line over the patch
 * @throws AppError 'nothing-to-grow' where no patch was found
 */
export function grownArea(grown: Grown | null, points: readonly XY[]): GrownArea {
  if (!grown || grown.outline.length < 3) throw new AppError('nothing-to-grow', {});
  const { outline, faint } = grown;
  const last = outline.length - 1;
  // A stretch that runs over the end is kept as two.
  const stretches = faint.flatMap(([from, to]): [number, number][] =>
    from <= to
      ? [[from, to]]
      : [
          [from, last],
          [0, to],
        ],
  );
  const stops = [...new Set([0, Math.floor(last / 2), last, ...stretches.flat()])].sort((a, b) => a - b);
  const numbered = outline.map((point, index) => ({ ...point, index }));
  let kept: typeof numbered = [];
  for (let tolerance = Math.max(tolerancePx, toleranceShare * grown.borderPx); ; tolerance *= 2) {
    kept = stops.flatMap((stop, k) => {
      const next = stops[k + 1];
      return next === undefined ? [] : simplify(numbered.slice(stop, next + 1), tolerance).slice(0, -1);
    });
    const end = numbered[last];
    if (end) kept.push(end);
    if (kept.length <= mostPoints) break;
  }
  const places = new Map(kept.map(({ index }, place) => [index, place]));
  const at = (index: number): number => places.get(index) ?? 0;
  return {
    points: kept.map(plain),
    origin: {
      by: 'grown',
      version: growerVersion,
      parameters: { points: points.map(plain) },
      reading: {
        unsure: stretches.map(([from, to]) => [at(from), at(to)] as [number, number]),
        doubts: [...grown.doubts],
        borderPx: Math.min(100, grown.borderPx),
      },
    },
  };
}

const plain = ({ x, y }: XY): ImagePoint => ({ x: Math.round(x * 100) / 100, y: Math.round(y * 100) / 100 });
