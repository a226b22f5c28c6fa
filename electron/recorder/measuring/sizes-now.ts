import { type CalibratedPlane, calibratedPlane } from '../../../shared-lib/measuring/calibrated-plane.ts';
import { type MarkSize, markSize } from '../../../shared-lib/measuring/mark-size.ts';
import type { Finding } from '../../../shared-lib/model/finding.ts';
import type { Calibration, Mark } from '../../../shared-lib/model/mark.ts';
import type { Shot } from '../../../shared-lib/model/shot.ts';
import { Memory } from '../memory.ts';

/** A visit is read after every tap, and its marks seldom change. */
const planes = new Memory<CalibratedPlane>(500);

interface Sized {
  readonly planeId: string | null;
  readonly place: string | undefined;
  readonly size: MarkSize | null;
}

/** A mark that has changed is another object. */
const sizes = new WeakMap<Mark, Sized>();

const sizeNow = (
  mark: Mark,
  photo: Shot,
  plane: CalibratedPlane | null,
  place: string | undefined,
): MarkSize | null => {
  const planeId = plane?.id ?? null;
  const known = sizes.get(mark);
  if (known && known.planeId === planeId && known.place === place) return known.size;
  const size = markSize(mark, photo, plane, place);
  sizes.set(mark, { planeId, place, size });
  return size;
};

export const planesNow = (calibrations: readonly Calibration[]): CalibratedPlane[] =>
  // A calibration never changes, so its id says it all.
  calibrations.map((calibration) => planes.get(calibration.id, () => calibratedPlane(calibration)));

interface Measurable {
  readonly marks: readonly Mark[];
  readonly shots: readonly Shot[];
  readonly calibrations: readonly CalibratedPlane[];
  readonly findings: readonly Finding[];
}

/** What every mark measures, each in the plane it names. */
export const sizesNow = ({ marks, shots, calibrations, findings }: Measurable): MarkSize[] => {
  const photos = new Map(shots.map((shot) => [shot.id, shot]));
  const planeById = new Map(calibrations.map((plane) => [plane.id, plane]));
  const placeOf = new Map(findings.map(({ id, locations }) => [id, locations[0]]));
  return marks.flatMap((mark) => {
    const photo = photos.get(mark.shotId);
    if (!photo) return [];
    const plane = mark.calibrationId === null ? null : (planeById.get(mark.calibrationId) ?? null);
    const place = mark.findingId === null ? undefined : placeOf.get(mark.findingId);
    return sizeNow(mark, photo, plane, place) ?? [];
  });
};
