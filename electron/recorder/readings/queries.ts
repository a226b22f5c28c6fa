import { Reading, type TypedLimit } from '../../../shared-lib/model/reading.ts';
import type { Instrument } from '../../../shared-lib/model/shop.ts';
import { build, type ReadableDb } from '../database/connection.ts';
import type { Tables } from '../database/tables.ts';

const unlessEmpty = <K extends string>(name: K, text: string): { [key in K]?: unknown } => {
  const value: unknown = JSON.parse(text);
  return typeof value === 'object' && value !== null && Object.keys(value).length > 0
    ? ({ [name]: value } as { [key in K]?: unknown })
    : {};
};

export const rowToReading = (row: Tables['reading'], shotIds: readonly string[] = []): Reading =>
  Reading.parse({
    id: row.id,
    visitId: row.visit_id,
    sheet: row.sheet,
    sheetVersion: row.sheet_version,
    at: row.place,
    inputs: JSON.parse(row.inputs),
    conditions: JSON.parse(row.conditions),
    remark: row.remark,
    notTakenBecause: row.not_taken_because,
    instrumentId: row.instrument_id,
    takenAtMs: row.taken_at_ms,
    results: JSON.parse(row.results),
    ...unlessEmpty('limits', row.limits),
    ...unlessEmpty('takenOver', row.taken_over),
    ...(shotIds.length === 0 ? {} : { shotIds }),
  });

export const readingsOf = (db: ReadableDb, visitIds: readonly string[]): Map<string, Reading[]> => {
  const rows = db.all(
    build.selectFrom('reading').selectAll().where('visit_id', 'in', visitIds).orderBy('taken_at_ms').orderBy('id'),
  );
  const dials = Map.groupBy(
    db.all(
      build
        .selectFrom('reading_shot')
        .innerJoin('reading', 'reading.id', 'reading_shot.reading_id')
        .innerJoin('shot', 'shot.id', 'reading_shot.shot_id')
        .select(['reading_shot.reading_id', 'reading_shot.shot_id'])
        .where('reading.visit_id', 'in', visitIds)
        .where('shot.binned', '=', 0)
        .orderBy('shot.sequence'),
    ),
    (row) => row.reading_id,
  );
  const readings = rows.map((row) =>
    rowToReading(
      row,
      (dials.get(row.id) ?? []).map(({ shot_id }) => shot_id),
    ),
  );
  return Map.groupBy(readings, ({ visitId }) => visitId);
};

export const dialRows = (db: ReadableDb, readingId: string) =>
  db.all(build.selectFrom('reading_shot').selectAll().where('reading_id', '=', readingId).orderBy('id'));

/** The findings that this reading shows. */
export const proofRows = (db: ReadableDb, readingId: string) =>
  db.all(build.selectFrom('proof').selectAll().where('reading_id', '=', readingId));

export const limitRow = (db: ReadableDb, machineId: string, sheet: string, result: string) =>
  db.first(
    build
      .selectFrom('remembered_limit')
      .selectAll()
      .where('machine_id', '=', machineId)
      .where('sheet', '=', sheet)
      .where('result', '=', result),
  );

export const rememberedLimits = (db: ReadableDb, machineId: string, sheet: string): Record<string, TypedLimit> =>
  Object.fromEntries(
    db
      .all(
        build
          .selectFrom('remembered_limit')
          .selectAll()
          .where('machine_id', '=', machineId)
          .where('sheet', '=', sheet)
          .orderBy('result'),
      )
      .map(({ result, typed }) => [result, JSON.parse(typed) as TypedLimit]),
  );

/** The same sheet and place in the machine's visits before this one, newest first. */
export const earlierReadings = (
  db: ReadableDb,
  visit: Pick<Tables['visit'], 'id' | 'machine_id' | 'date'>,
  sheet: string,
  place: string,
) =>
  db.all(
    build
      .selectFrom('reading')
      .innerJoin('visit', 'visit.id', 'reading.visit_id')
      .selectAll('reading')
      .select('visit.date as date')
      .where('visit.machine_id', '=', visit.machine_id)
      .where('visit.id', '<>', visit.id)
      .where('visit.date', '<=', visit.date)
      .where('reading.sheet', '=', sheet)
      .where('reading.place', '=', place)
      .where('reading.not_taken_because', 'is', null)
      .orderBy('visit.date', 'desc')
      .orderBy('reading.taken_at_ms', 'desc')
      .limit(1),
  );

export const rowToInstrument = (row: Tables['instrument']): Instrument => ({
  id: row.id,
  name: row.name,
  kind: row.kind,
  resolution: row.resolution,
  lastCheck: row.last_check,
});

export const instruments = (db: ReadableDb): Instrument[] =>
  db.all(build.selectFrom('instrument').selectAll().orderBy('name').orderBy('id')).map(rowToInstrument);

export const instrumentById = (db: ReadableDb, id: string) =>
  db.first(build.selectFrom('instrument').selectAll().where('id', '=', id));

/** Issued after it was taken: the report has it as it was. */
export const issuedSince = (db: ReadableDb, visitId: string, takenAtMs: number): boolean =>
  db.first(
    build
      .selectFrom('report')
      .select('id')
      .where('visit_id', '=', visitId)
      .where('issued_at_ms', '>=', takenAtMs)
      .limit(1),
  ) !== undefined;
