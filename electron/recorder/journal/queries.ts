import { build, type ReadableDb, type WritableDb } from '../database/connection.ts';
import { keyColumn, type RecordTable, type Tables } from '../database/tables.ts';
import type { Cell, Row } from './change.ts';

// Tables are chosen at run time here and nowhere else, so the builder's types cannot follow.
const anyTable = (table: RecordTable) => table as 'person';
const key = (table: RecordTable) => keyColumn(table) as 'id';

export const rowOf = (db: ReadableDb, table: RecordTable, id: string): Row | undefined =>
  db.first<Row>(build.selectFrom(anyTable(table)).selectAll().where(key(table), '=', id) as never);

export const insertRow = (db: WritableDb, table: RecordTable, row: Row): void => {
  db.run(build.insertInto(anyTable(table)).values(row as never));
};

export const updateRow = (
  db: WritableDb,
  table: RecordTable,
  id: string,
  columns: Readonly<Record<string, Cell>>,
): void => {
  db.run(
    build
      .updateTable(anyTable(table))
      .set(columns as never)
      .where(key(table), '=', id),
  );
};

export const deleteRow = (db: WritableDb, table: RecordTable, id: string): void => {
  db.run(build.deleteFrom(anyTable(table)).where(key(table), '=', id));
};

export const lastEntry = (db: ReadableDb) =>
  db.first(build.selectFrom('journal').select(['seq', 'digest']).orderBy('seq', 'desc').limit(1));

export const insertEntry = (db: WritableDb, entry: Tables['journal']): void => {
  db.run(build.insertInto('journal').values(entry));
};

/** A window's undoable entries in one visit, oldest first. */
export const windowSteps = (db: ReadableDb, windowId: string, visitId: string) =>
  db.all(
    build
      .selectFrom('journal')
      .select(['seq', 'step_id', 'operation', 'reverses'])
      .where('window_id', '=', windowId)
      .where('visit_id', '=', visitId)
      .where('undoable', '=', 1)
      .orderBy('seq'),
  );

export const entriesOfStep = (db: ReadableDb, stepId: string) =>
  db.all(build.selectFrom('journal').selectAll().where('step_id', '=', stepId).orderBy('seq'));

export const entriesOfVisit = (db: ReadableDb, visitId: string) =>
  db.all(build.selectFrom('journal').selectAll().where('visit_id', '=', visitId).orderBy('seq'));

export const entriesFrom = (db: ReadableDb, seq: number, count: number) =>
  db.all(build.selectFrom('journal').selectAll().where('seq', '>', seq).orderBy('seq').limit(count));

/** When each machine was last written of: by its newest entry, so that a long journal is not read through. */
export const lastTouchOfMachines = (db: ReadableDb) =>
  db.all(
    build
      .selectFrom('machine')
      .select(({ selectFrom }) => [
        'machine.id as machine_id',
        selectFrom('journal')
          .select('journal.at_ms')
          .whereRef('journal.machine_id', '=', 'machine.id')
          .orderBy('journal.seq', 'desc')
          .limit(1)
          .as('at_ms'),
      ]),
  );
