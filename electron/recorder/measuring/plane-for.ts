import { AppError } from '../../../shared-lib/contract/errors.ts';
import { isOffPlane } from '../../../shared-lib/measuring/mark-size.ts';
import type { Calibration, Mark } from '../../../shared-lib/model/mark.ts';
import type { Context } from '../context.ts';
import { locationRows } from '../findings/queries.ts';
import { calibrationById, calibrationsOn } from '../marks/queries.ts';

/** @throws AppError 'not-found', 'calibration-of-another-photo' */
export const refuseStrangePlane = ({ db }: Pick<Context, 'db'>, calibrationId: string, shotId: string): Calibration => {
  const calibration = calibrationById(db, calibrationId);
  if (!calibration) throw new AppError('not-found', { record: 'calibration', id: calibrationId });
  if (calibration.shotId !== shotId) throw new AppError('calibration-of-another-photo', {});
  return calibration;
};

/**
 * The plane that a new mark is measured in until somebody says otherwise: the newest of the photo that is of the finding's
 * part, else the newest. What it is not shows beside every size: the plane's name, and a warning for another part.
 */
export const planeFor = (
  { db }: Pick<Context, 'db'>,
  { shotId, findingId, role }: Pick<Mark, 'shotId' | 'findingId' | 'role'>,
): string | null => {
  if (role === 'calibration' || role === 'matching') return null;
  const newestFirst = calibrationsOn(db, shotId).toReversed();
  const place = findingId === null ? undefined : locationRows(db, findingId)[0]?.place;
  const fitting = newestFirst.find(({ body }) => !isOffPlane(componentIn(body), place));
  return (fitting ?? newestFirst[0])?.id ?? null;
};

const componentIn = (body: Calibration['body']): string | null =>
  typeof body.component === 'string' ? body.component : null;
