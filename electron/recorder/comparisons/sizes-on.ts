import type { Measurement } from '../../../shared-lib/calibration/measure.ts';
import type { Finding } from '../../../shared-lib/model/finding.ts';
import type { Mark } from '../../../shared-lib/model/mark.ts';
import type { Shot } from '../../../shared-lib/model/shot.ts';
import type { ReadableDb } from '../database/connection.ts';
import { calibrationsOn } from '../marks/queries.ts';
import { planesNow, sizesNow } from '../measuring/sizes-now.ts';

/** Sizes of a photo's marks in the planes that they name; null for one that has none but in pixels. */
export const sizesOn = (
  db: ReadableDb,
  shot: Shot,
  marks: readonly Mark[],
  findings: readonly Finding[],
): ((mark: Mark) => Measurement | null) => {
  const sizes = sizesNow({ marks, shots: [shot], calibrations: planesNow(calibrationsOn(db, shot.id)), findings });
  const measured = new Map(
    sizes.flatMap(({ markId, calibrationId, size, refused }) =>
      calibrationId === null || refused !== null ? [] : [[markId, size] as const],
    ),
  );
  return ({ id }) => measured.get(id) ?? null;
};
