import { build, type Compilable, type ReadableDb, type WritableDb } from '../database/connection.ts';
import { all, compiledOnce, first, Param } from '../database/query.ts';
import { keyColumn, type RecordTable, type TableName } from '../database/tables.ts';
import { Memory } from '../memory.ts';
import type { Cell, Row } from './change.ts';

// Tables and columns are chosen at run time here and nowhere else, so the builder's types cannot follow.
const anyTable = (table: TableName) => table as 'person';
const key = (table: RecordTable) => keyColumn(table) as 'id';

/** A statement for each table and choice of columns that occurs; of choices there are many more than are ever made. */
const mostShapes = 300;

/** Compiled once for every shape. Its values are those of the columns, in their order, and then the row's key. */
const shaped = <T extends TableName>(
  make: (table: T, columns: Readonly<Record<string, Param<Cell>>>, id: Param<string>) => Compilable<unknown>,
) => {
  const shapes = new Memory<(values: readonly Cell[]) => Compilable<unknown>>(mostShapes);
  return (table: T, columns: readonly string[] = []) =>
    shapes.get(`${table} ${columns.join()}`, () =>
      compiledOnce(() => {
        const given = columns.map((name, position) => [name, new Param<Cell>(position)] as const);
        return make(table, Object.fromEntries(given), new Param(columns.length));
      }),
    );
};

const select = shaped<RecordTable>((table, _, id) =>
  build.selectFrom(anyTable(table)).selectAll().where(key(table), '=', id),
);
const insert = shaped((table, columns) => build.insertInto(anyTable(table)).values(columns as never));
const update = shaped<RecordTable>((table, columns, id) =>
  build
    .updateTable(anyTable(table))
    .set(columns as never)
    .where(key(table), '=', id),
);
const remove = shaped<RecordTable>((table, _, id) => build.deleteFrom(anyTable(table)).where(key(table), '=', id));

export const rowOf = (db: ReadableDb, table: RecordTable, id: string): Row | undefined =>
  db.first(select(table)([id])) as Row | undefined;

export const insertRow = (db: WritableDb, table: RecordTable | 'journal', row: Row): void => {
  db.run(insert(table, Object.keys(row))(Object.values(row)));
};

export const updateRow = (db: WritableDb, table: RecordTable, id: string, columns: Row): void => {
  db.run(update(table, Object.keys(columns))([...Object.values(columns), id]));
};

export const deleteRow = (db: WritableDb, table: RecordTable, id: string): void => {
  db.run(remove(table)([id]));
};

export const lastEntry = first(() =>
  build.selectFrom('journal').select(['seq', 'digest']).orderBy('seq', 'desc').limit(1),
);

/** A window's undoable entries in one visit, oldest first. */
export const windowSteps = all((windowId: Param<string>, visitId: Param<string>) =>
  build
    .selectFrom('journal')
    .select(['seq', 'step_id', 'operation', 'reverses'])
    .where('window_id', '=', windowId)
    .where('visit_id', '=', visitId)
    .where('undoable', '=', 1)
    .orderBy('seq'),
);

/** A step is of one visit, whose entries are few enough to be looked through. */
export const entriesOfStep = all((visitId: Param<string>, stepId: Param<string>) =>
  build.selectFrom('journal').selectAll().where('visit_id', '=', visitId).where('step_id', '=', stepId).orderBy('seq'),
);

export const entriesOfVisit = all((visitId: Param<string>) =>
  build.selectFrom('journal').selectAll().where('visit_id', '=', visitId).orderBy('seq'),
);

export const entriesFrom = all((seq: Param<number>, count: Param<number>) =>
  build.selectFrom('journal').selectAll().where('seq', '>', seq).orderBy('seq').limit(count),
);

/** When each machine was last written of: by its newest entry, so that a long journal is not read through. */
export const lastTouchOfMachines = all(() =>
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
