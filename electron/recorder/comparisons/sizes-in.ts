import type { Measurement } from '../../../shared-lib/calibration/measure.ts';
import type { Mark } from '../../../shared-lib/model/mark.ts';
import type { ReadableDb } from '../database/connection.ts';
import { findingsOf } from '../findings/queries.ts';
import { calibrationsOf, marksOf } from '../marks/queries.ts';
import { planesNow, sizesNow } from '../measuring/sizes-now.ts';
import { shotsOf } from '../photos/queries.ts';

/** Sizes of a visit's marks in the planes that they name; null for one that has none but in pixels. */
export const sizesIn = (db: ReadableDb, visitId: string): ((mark: Mark) => Measurement | null) => {
  const sizes = sizesNow({
    marks: marksOf(db, visitId),
    shots: shotsOf(db, visitId),
    calibrations: planesNow(calibrationsOf(db, visitId)),
    findings: findingsOf(db, [visitId]).get(visitId) ?? [],
  });
  const measured = new Map(
    sizes.flatMap(({ markId, calibrationId, size, refused }) =>
      calibrationId === null || refused !== null ? [] : [[markId, size] as const],
    ),
  );
  return ({ id }) => measured.get(id) ?? null;
};
