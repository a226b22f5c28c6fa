import { type Calibration, Mark } from '../../../shared-lib/model/mark.ts';
import { build, type ReadableDb } from '../database/connection.ts';
import { all, first, type Param } from '../database/query.ts';
import { readOnce } from '../database/read-once.ts';
import type { Tables } from '../database/tables.ts';

/** As many as a few large visits have. */
const mostMarks = 4_000;

export const rowToMark = readOnce(
  mostMarks,
  (row: Tables['mark']): Mark =>
    Mark.parse({
      id: row.id,
      shotId: row.shot_id,
      findingId: row.finding_id,
      shape: row.shape,
      points: JSON.parse(row.points),
      role: row.role,
      origin: JSON.parse(row.origin),
      calibrationId: row.calibration_id,
      tagAt: row.tag_x === null || row.tag_y === null ? null : { x: row.tag_x, y: row.tag_y },
      note: row.note,
    }),
);

export const rowToCalibration = (row: Tables['calibration']): Calibration => ({
  id: row.id,
  shotId: row.shot_id,
  plane: row.plane,
  method: row.method,
  body: JSON.parse(row.body),
});

const markRow = first((id: Param<string>) => build.selectFrom('mark').selectAll().where('id', '=', id));

export const markById = (db: ReadableDb, id: string): Mark | undefined => {
  const row = markRow(db, id);
  return row && rowToMark(row);
};

const calibrationRow = first((id: Param<string>) => build.selectFrom('calibration').selectAll().where('id', '=', id));

export const calibrationById = (db: ReadableDb, id: string): Calibration | undefined => {
  const row = calibrationRow(db, id);
  return row && rowToCalibration(row);
};

const calibrationRowsOn = all((shotId: Param<string>) =>
  build.selectFrom('calibration').selectAll().where('shot_id', '=', shotId).orderBy('id'),
);

/** Oldest first: ids are ordered by the time they were given. */
export const calibrationsOn = (db: ReadableDb, shotId: string): Calibration[] =>
  calibrationRowsOn(db, shotId).map(rowToCalibration);

const markRowsOn = all((shotId: Param<string>) =>
  build.selectFrom('mark').selectAll().where('shot_id', '=', shotId).orderBy('id'),
);

export const marksOn = (db: ReadableDb, shotId: string): Mark[] => markRowsOn(db, shotId).map(rowToMark);

const markRowsOf = all((visitId: Param<string>) =>
  build
    .selectFrom('mark')
    .innerJoin('shot', 'shot.id', 'mark.shot_id')
    .selectAll('mark')
    .where('shot.visit_id', '=', visitId)
    .orderBy('mark.id'),
);

export const marksOf = (db: ReadableDb, visitId: string): Mark[] => markRowsOf(db, visitId).map(rowToMark);

const calibrationRowsOf = all((visitId: Param<string>) =>
  build
    .selectFrom('calibration')
    .innerJoin('shot', 'shot.id', 'calibration.shot_id')
    .selectAll('calibration')
    .where('shot.visit_id', '=', visitId)
    .orderBy('calibration.id'),
);

export const calibrationsOf = (db: ReadableDb, visitId: string): Calibration[] =>
  calibrationRowsOf(db, visitId).map(rowToCalibration);

/** The shot a mark lies on, with the upright size that its points must fit. */
export const shotFrame = first((shotId: Param<string>) =>
  build
    .selectFrom('shot')
    .innerJoin('original', 'original.digest', 'shot.digest')
    .innerJoin('visit', 'visit.id', 'shot.visit_id')
    .select(['shot.visit_id', 'visit.machine_id', 'original.width', 'original.height'])
    .where('shot.id', '=', shotId),
);
