import { distance } from '../../../../shared-lib/geometry/plane.ts';
import type { XY } from '../../../../shared-lib/geometry/spaces.ts';
import { placeOnPath, wayPoints } from '../../../../shared-lib/measuring/traced-mark.ts';
import type { ImagePoint, Mark } from '../../../../shared-lib/model/mark.ts';

/** What a hand can take of a mark: its points, or for a trace the points that lead it. */
export function handlesOf(mark: Mark): readonly ImagePoint[] {
  return wayPoints(mark.origin) ?? mark.points;
}

/** Whether way points lead it. */
export function isLed(mark: Mark): boolean {
  return wayPoints(mark.origin) !== null;
}

/**
 * A traced path bent through the points that shall lead it, as it is shown until the tracer has followed the new way: what
 * lies near a led point runs straight to it, the rest stays.
 */
export function bentTo(path: readonly ImagePoint[], way: readonly ImagePoint[]): ImagePoint[] {
  const length = path.reduce(
    (sum, point, index) => sum + (index === 0 ? 0 : distance(path[index - 1] ?? point, point)),
    0,
  );
  const places = way.map((point, index) => ({
    point,
    at: index === 0 ? 0 : index === way.length - 1 ? length : placeOnPath(path, point),
    off: offPath(path, point),
  }));
  const isBent = ({ at }: { at: number }) =>
    places.some(
      (led) => at === led.at || (led.off > 3 && Math.abs(at - led.at) < Math.max(led.off, length / (2 * way.length))),
    );
  let walked = 0;
  const stations = path.map((point, index) => {
    const before = path[index - 1];
    if (before) walked += distance(before, point);
    return { point, at: walked };
  });
  return [...stations.filter((station) => !isBent(station)), ...places]
    .sort((a, b) => a.at - b.at)
    .map(({ point }) => point);
}

function offPath(path: readonly XY[], spot: XY): number {
  return path.reduce((least, point) => Math.min(least, distance(point, spot)), Number.POSITIVE_INFINITY);
}
