import { type Homography, invert, project } from '../../shared-lib/calibration/homography.ts';
import type { StraightPicture } from '../../shared-lib/contract/measuring.ts';
import type { CalibratedPlane } from '../../shared-lib/measuring/calibrated-plane.ts';
import type { ImagePoint, Mark } from '../../shared-lib/model/mark.ts';
import type { StageLabel } from '../stage/stage-scene.ts';
import type { MarkChange } from '../stage/tools/machine.ts';

/** Both ways between a photo and its straightened face. */
export interface StraightMapping {
  /** @returns null at or beyond the horizon of the face */
  toStraight(point: ImagePoint): ImagePoint | null;
  toPhoto(point: ImagePoint): ImagePoint | null;
  /** Pixels of the photo to one of the straightened picture, about. */
  readonly photoPx: number;
}

export function straightMapping({ toPhoto, pxPerMm }: StraightPicture, plane: CalibratedPlane): StraightMapping | null {
  const there = toPhoto as Homography;
  const back = invert(there);
  return (
    back && {
      toStraight: (point) => project(back, point),
      toPhoto: (point) => project(there, point),
      photoPx: plane.pxPerMm / pxPerMm,
    }
  );
}

const all = (points: readonly ImagePoint[], by: (point: ImagePoint) => ImagePoint | null): ImagePoint[] | null => {
  const mapped = points.map(by);
  return mapped.every((point) => point !== null) ? mapped : null;
};

/** Marks as they lie on the straightened face; what is out of its sight is left out. */
export function marksOnStraight(marks: readonly Mark[], { toStraight }: StraightMapping): Mark[] {
  return marks.flatMap((mark) => {
    const points = all(mark.points, toStraight);
    if (!points) return [];
    const { origin } = mark;
    const way = origin.by === 'traced' ? wayOnStraight(origin.parameters.points, toStraight) : null;
    return {
      ...mark,
      points,
      tagAt: mark.tagAt && toStraight(mark.tagAt),
      ...(origin.by === 'traced' && way
        ? { origin: { ...origin, parameters: { ...origin.parameters, points: way } } }
        : {}),
    };
  });
}

function wayOnStraight(way: unknown, toStraight: StraightMapping['toStraight']): ImagePoint[] | null {
  return Array.isArray(way) ? all(way as ImagePoint[], toStraight) : null;
}

export function labelsOnStraight(labels: readonly StageLabel[], { toStraight }: StraightMapping): StageLabel[] {
  return labels.flatMap((label) => {
    const at = toStraight(label.at);
    return at ? { ...label, at } : [];
  });
}

/** A gesture on the straightened face as one on the photo; null where it leaves what the photo shows of the face. */
export function changeOnPhoto(change: MarkChange, { toPhoto }: StraightMapping): MarkChange | null {
  if (change.type === 'remove') return change;
  if (change.type === 'change') {
    const points = change.points && all(change.points, toPhoto);
    const tagAt = change.tagAt && toPhoto(change.tagAt);
    if (points === null || tagAt === null) return null;
    return { ...change, ...(points ? { points } : {}), ...(tagAt ? { tagAt } : {}) };
  }
  const points = all(change.points, toPhoto);
  if (!points) return null;
  if (change.type !== 'trace' || !change.scribble) return { ...change, points };
  const scribble = all(change.scribble, toPhoto);
  return scribble && { ...change, points, scribble };
}
