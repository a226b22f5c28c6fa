import { Reading, type TypedLimit } from '../../../shared-lib/model/reading.ts';
import type { Instrument } from '../../../shared-lib/model/shop.ts';
import { build, type ReadableDb } from '../database/connection.ts';
import { all, first, listed, type Param } from '../database/query.ts';
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

const rowsOfVisits = all((visitIds: Param<readonly string[]>) =>
  build
    .selectFrom('reading')
    .selectAll()
    .where('visit_id', 'in', listed(visitIds))
    .orderBy('taken_at_ms')
    .orderBy('id'),
);

const dialsOfVisits = all((visitIds: Param<readonly string[]>) =>
  build
    .selectFrom('reading_shot')
    .innerJoin('reading', 'reading.id', 'reading_shot.reading_id')
    .innerJoin('shot', 'shot.id', 'reading_shot.shot_id')
    .select(['reading_shot.reading_id', 'reading_shot.shot_id'])
    .where('reading.visit_id', 'in', listed(visitIds))
    .where('shot.binned', '=', 0)
    .orderBy('shot.sequence'),
);

export const readingsOf = (db: ReadableDb, visitIds: readonly string[]): Map<string, Reading[]> => {
  const dials = Map.groupBy(dialsOfVisits(db, visitIds), (row) => row.reading_id);
  const readings = rowsOfVisits(db, visitIds).map((row) =>
    rowToReading(
      row,
      (dials.get(row.id) ?? []).map(({ shot_id }) => shot_id),
    ),
  );
  return Map.groupBy(readings, ({ visitId }) => visitId);
};

export const dialRows = all((readingId: Param<string>) =>
  build.selectFrom('reading_shot').selectAll().where('reading_id', '=', readingId).orderBy('id'),
);

/** The findings that this reading shows. */
export const proofRows = all((readingId: Param<string>) =>
  build.selectFrom('proof').selectAll().where('reading_id', '=', readingId),
);

export const limitRow = first((machineId: Param<string>, sheet: Param<string>, result: Param<string>) =>
  build
    .selectFrom('remembered_limit')
    .selectAll()
    .where('machine_id', '=', machineId)
    .where('sheet', '=', sheet)
    .where('result', '=', result),
);

const limitRows = all((machineId: Param<string>, sheet: Param<string>) =>
  build
    .selectFrom('remembered_limit')
    .selectAll()
    .where('machine_id', '=', machineId)
    .where('sheet', '=', sheet)
    .orderBy('result'),
);

export const rememberedLimits = (db: ReadableDb, machineId: string, sheet: string): Record<string, TypedLimit> =>
  Object.fromEntries(
    limitRows(db, machineId, sheet).map(({ result, typed }) => [result, JSON.parse(typed) as TypedLimit]),
  );

const newestBefore = first(
  (machineId: Param<string>, visitId: Param<string>, date: Param<string>, sheet: Param<string>, place: Param<string>) =>
    build
      .selectFrom('reading')
      .innerJoin('visit', 'visit.id', 'reading.visit_id')
      .selectAll('reading')
      .select('visit.date as date')
      .where('visit.machine_id', '=', machineId)
      .where('visit.id', '<>', visitId)
      .where('visit.date', '<=', date)
      .where('reading.sheet', '=', sheet)
      .where('reading.place', '=', place)
      .where('reading.not_taken_because', 'is', null)
      .orderBy('visit.date', 'desc')
      .orderBy('reading.taken_at_ms', 'desc')
      .limit(1),
);

/** The newest of the same sheet and place in the machine's visits before this one. */
export const earlierReading = (
  db: ReadableDb,
  visit: Pick<Tables['visit'], 'id' | 'machine_id' | 'date'>,
  sheet: string,
  place: string,
) => newestBefore(db, visit.machine_id, visit.id, visit.date, sheet, place);

export const rowToInstrument = (row: Tables['instrument']): Instrument => ({
  id: row.id,
  name: row.name,
  kind: row.kind,
  resolution: row.resolution,
  lastCheck: row.last_check,
});

const instrumentRows = all(() => build.selectFrom('instrument').selectAll().orderBy('name').orderBy('id'));

export const instruments = (db: ReadableDb): Instrument[] => instrumentRows(db).map(rowToInstrument);

export const instrumentById = first((id: Param<string>) =>
  build.selectFrom('instrument').selectAll().where('id', '=', id),
);
