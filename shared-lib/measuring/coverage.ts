import { mapPlane } from '../calibration/plane-mapping.ts';
import { showMeasured } from '../calibration/show-measured.ts';
import { chainLength, isInsidePolygon, polygonArea } from '../geometry/plane.ts';
import type { Size, XY } from '../geometry/spaces.ts';
import { coveredShare } from '../growing/coverage.ts';
import type { Mark } from '../model/mark.ts';
import type { KeptCalibration } from './calibrated-plane.ts';
import { pointUncertaintyPx } from './mark-size.ts';

/** How much of the area drawn round it a patch takes up. */
export interface Coverage {
  readonly zoneMarkId: string;
  readonly percent: number;
  /** Expanded uncertainty, k = 2. */
  readonly expandedPercent: number;
}

/** The smallest area of the photo, drawn by hand, that holds most of a patch: the zone that it is a share of. */
export function zoneRound(patch: Mark, marks: readonly Mark[]): Mark | null {
  if (patch.shape !== 'area') return null;
  const own = polygonArea(patch.points);
  let zone: Mark | null = null;
  for (const mark of marks) {
    if (mark.shotId !== patch.shotId || mark.id === patch.id || mark.shape !== 'area') continue;
    if (mark.origin.by === 'grown' || polygonArea(mark.points) <= own) continue;
    const held = patch.points.filter((point) => isInsidePolygon(point, mark.points)).length;
    if (held < patch.points.length / 2) continue;
    if (!zone || polygonArea(mark.points) < polygonArea(zone.points)) zone = mark;
  }
  return zone;
}

/**
 * Coverage of the zone round a patch; in the calibrated plane where the patch names one, so that a slant does no harm.
 *
 * @returns null where no area is drawn round it
 */
export function coverageOf(
  patch: Mark,
  marks: readonly Mark[],
  photo: Size,
  calibration: Pick<KeptCalibration, 'reference'> | null,
): Coverage | null {
  const zone = zoneRound(patch, marks);
  if (!zone) return null;
  const inPlane = calibration && mappedBoth(patch.points, zone.points, calibration);
  const share = inPlane ? coveredShare([inPlane[0]], inPlane[1]) : coveredShare([patch.points], zone.points);
  if (share === null) return null;
  const zoneArea = polygonArea(zone.points);
  const border = borderShare(patch, photo) / zoneArea;
  const around = (share * borderShare(zone, photo)) / zoneArea;
  return {
    zoneMarkId: zone.id,
    percent: 100 * share,
    expandedPercent: Math.max(0.1, 200 * Math.hypot(border, around)),
  };
}

export const coverageWords = ({ percent, expandedPercent }: Coverage): string =>
  showMeasured({ value: percent, expanded: expandedPercent }, '%');

/** Standard uncertainty of an area from its border, square pixels: every point of a hand, or every stretch of a grown one, errs by itself. */
function borderShare(mark: Mark, photo: Size): number {
  const length = chainLength(mark.points, true);
  return (pointUncertaintyPx(mark, photo) * length) / Math.sqrt(mark.points.length);
}

function mappedBoth(
  patch: readonly XY[],
  zone: readonly XY[],
  { reference }: Pick<KeptCalibration, 'reference'>,
): [XY[], XY[]] | null {
  const { toPlane } = mapPlane(reference);
  const mapped = [patch, zone].map((chain) => chain.flatMap((point) => toPlane(point) ?? []));
  const [first, second] = mapped;
  // Beyond the horizon nothing has an area.
  if (!first || !second || first.length < patch.length || second.length < zone.length) return null;
  return [first, second];
}
