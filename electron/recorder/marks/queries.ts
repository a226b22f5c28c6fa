import { type Calibration, Mark } from '../../../shared-lib/model/mark.ts';
import { build, type ReadableDb } from '../database/connection.ts';
import type { Tables } from '../database/tables.ts';

export const rowToMark = (row: Tables['mark']): Mark =>
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
  });

export const rowToCalibration = (row: Tables['calibration']): Calibration => ({
  id: row.id,
  shotId: row.shot_id,
  plane: row.plane,
  method: row.method,
  body: JSON.parse(row.body),
});

export const markById = (db: ReadableDb, id: string): Mark | undefined => {
  const row = db.first(build.selectFrom('mark').selectAll().where('id', '=', id));
  return row && rowToMark(row);
};

export const calibrationById = (db: ReadableDb, id: string): Calibration | undefined => {
  const row = db.first(build.selectFrom('calibration').selectAll().where('id', '=', id));
  return row && rowToCalibration(row);
};

/** Oldest first: ids are ordered by the time they were given. */
export const calibrationsOn = (db: ReadableDb, shotId: string): Calibration[] =>
  db.all(build.selectFrom('calibration').selectAll().where('shot_id', '=', shotId).orderBy('id')).map(rowToCalibration);

export const marksOn = (db: ReadableDb, shotId: string): Mark[] =>
  db.all(build.selectFrom('mark').selectAll().where('shot_id', '=', shotId).orderBy('id')).map(rowToMark);

export const marksOf = (db: ReadableDb, visitId: string): Mark[] =>
  db
    .all(
      build
        .selectFrom('mark')
        .innerJoin('shot', 'shot.id', 'mark.shot_id')
        .selectAll('mark')
        .where('shot.visit_id', '=', visitId)
        .orderBy('mark.id'),
    )
    .map(rowToMark);

export const calibrationsOf = (db: ReadableDb, visitId: string): Calibration[] =>
  db
    .all(
      build
        .selectFrom('calibration')
        .innerJoin('shot', 'shot.id', 'calibration.shot_id')
        .selectAll('calibration')
        .where('shot.visit_id', '=', visitId)
        .orderBy('calibration.id'),
    )
    .map(rowToCalibration);

/** The shot a mark lies on, with the upright size that its points must fit. */
export const shotFrame = (db: ReadableDb, shotId: string) =>
  db.first(
    build
      .selectFrom('shot')
      .innerJoin('original', 'original.digest', 'shot.digest')
      .innerJoin('visit', 'visit.id', 'shot.visit_id')
      .select(['shot.visit_id', 'visit.machine_id', 'original.width', 'original.height'])
      .where('shot.id', '=', shotId),
  );
