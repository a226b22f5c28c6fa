import { Reading } from '../../../shared-lib/model/reading.ts';
import { build, type ReadableDb } from '../database/connection.ts';
import type { Tables } from '../database/tables.ts';

export const rowToReading = (row: Tables['reading']): Reading =>
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
  });

export const readingsOf = (db: ReadableDb, visitIds: readonly string[]): Map<string, Reading[]> =>
  Map.groupBy(
    db
      .all(
        build.selectFrom('reading').selectAll().where('visit_id', 'in', visitIds).orderBy('taken_at_ms').orderBy('id'),
      )
      .map(rowToReading),
    (reading) => reading.visitId,
  );
