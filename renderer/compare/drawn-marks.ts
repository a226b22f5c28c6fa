import { type Homography, project } from '../../shared-lib/calibration/homography.ts';
import type { OldMark } from '../../shared-lib/contract/comparisons.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import { unsureOf } from '../../shared-lib/geometry/outlines/index.ts';
import type { Size, XY } from '../../shared-lib/geometry/spaces.ts';
import type { ImagePoint } from '../../shared-lib/model/mark.ts';
import type { DrawnMark } from './MarksOver.tsx';

/** All points of a mark through a mapping; null where one of them runs out of sight. */
export function carried(points: readonly XY[], mapping: Homography): ImagePoint[] | null {
  const there = points.map((point) => project(mapping, point));
  return there.every((point) => point !== null) ? there : null;
}

/** The marks of then, in the frame that is looked at. */
export function oldMarksIn(oldMarks: readonly OldMark[], mapping: Homography, isGhost: boolean): DrawnMark[] {
  return oldMarks.flatMap(({ mark, tag }) => {
    const points = carried(mark.points, mapping);
    return points ? [{ id: mark.id, shape: mark.shape, points, tag, unsure: unsureOf(mark), isGhost }] : [];
  });
}

/** Today's own marks. */
export function marksToday({ marks, findings, standing }: VisitRecord, shotId: string): DrawnMark[] {
  return marks
    .filter((mark) => mark.shotId === shotId && mark.role === 'finding')
    .map((mark) => {
      const { id, shape, points, findingId } = mark;
      const finding = findings.find((each) => each.id === findingId);
      const line = standing.lines.find((each) => each.findingId === findingId);
      const tag = finding && {
        number: finding.number,
        tier: line?.tier ?? (4 as const),
        state: line?.state ?? finding.state,
      };
      return { id, shape, points, tag: tag ?? null, unsure: unsureOf(mark), isGhost: false };
    });
}

/** Where an old mark would lie on today's photo; null where some of it lies off it. */
export function placeToday({ mark }: OldMark, toLater: Homography, photo: Size): ImagePoint[] | null {
  const points = carried(mark.points, toLater);
  const isOn = points?.every(({ x, y }) => x >= -0.5 && y >= -0.5 && x <= photo.width - 0.5 && y <= photo.height - 0.5);
  return points && isOn ? points : null;
}
