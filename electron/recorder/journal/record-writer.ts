import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { WritableDb } from '../database/connection.ts';
import { keyColumn, personalTables, type RecordTable, type Tables } from '../database/tables.ts';
import { chainStart, entryDigest } from './chain.ts';
import { type Cell, canonical, difference, type Row, type RowChange, rowDigest } from './change.ts';
import { deleteRow, insertRow, lastEntry, rowOf, updateRow } from './queries.ts';

/** Who does it, from where, as which step. */
export interface Author {
  readonly personId: string | null;
  readonly windowId: string;
  readonly operation: string;
  readonly undoable: boolean;
  /** Entries with one step id are taken back together: an import is one step, however many photos it has. */
  readonly stepId: string;
  readonly reverses: string | null;
  readonly atMs: number;
  readonly zoneOffsetMin: number;
}

export interface Committed {
  readonly changes: readonly RowChange[];
  readonly visitId: string | null;
  readonly machineId: string | null;
}

/** Some of a table's columns. */
export type Columns<T extends RecordTable> = { readonly [C in keyof Tables[T]]?: Tables[T][C] | undefined };

/**
 * The only way to change the record. It writes rows and remembers what changed; `mutate` turns that into one journal entry
 * in the same transaction.
 */
export class RecordWriter {
  readonly #db: WritableDb;
  readonly #changes: RowChange[] = [];
  #visitId: string | null = null;
  #machineId: string | null = null;

  constructor(db: WritableDb) {
    this.#db = db;
  }

  /** Whose history this belongs to: a visit (undo's scope), a machine, or both. */
  about(subject: { visitId?: string; machineId?: string }): void {
    this.#visitId = subject.visitId ?? this.#visitId;
    this.#machineId = subject.machineId ?? this.#machineId;
  }

  insert<T extends RecordTable>(table: T, row: Tables[T]): void {
    const plain = row as unknown as Row;
    const id = String(plain[keyColumn(table)]);
    insertRow(this.#db, table, plain);
    this.#changes.push(
      personalTables.has(table)
        ? { table, id, personal: { before: null, after: rowDigest(plain) } }
        : { table, id, added: plain },
    );
  }

  /**
   * Writes the columns that differ; those left undefined stay as they are.
   *
   * @throws AppError 'not-found'
   */
  update<T extends RecordTable>(table: T, id: string, columns: Columns<T>): void {
    const before = this.row(table, id);
    const updated = difference(before, columns as Readonly<Record<string, Cell | undefined>>);
    if (Object.keys(updated).length === 0) return;
    const after: Record<string, Row[string]> = {};
    for (const [column, [, to]] of Object.entries(updated)) after[column] = to;
    updateRow(this.#db, table, id, after);
    this.#changes.push(
      personalTables.has(table)
        ? { table, id, personal: { before: rowDigest(before), after: rowDigest({ ...before, ...after }) } }
        : { table, id, updated },
    );
  }

  /** @throws AppError 'not-found' */
  remove(table: RecordTable, id: string): void {
    const before = this.row(table, id);
    deleteRow(this.#db, table, id);
    this.#changes.push(
      personalTables.has(table)
        ? { table, id, personal: { before: rowDigest(before), after: null } }
        : { table, id, removed: before },
    );
  }

  /** @throws AppError 'not-found' */
  row(table: RecordTable, id: string): Row {
    const row = rowOf(this.#db, table, id);
    if (!row) throw new AppError('not-found', { record: table, id });
    return row;
  }

  has(table: RecordTable, id: string): boolean {
    return rowOf(this.#db, table, id) !== undefined;
  }

  /** Writes the journal entry; nothing when nothing changed. */
  sign(author: Author): Committed {
    const committed = { changes: this.#changes, visitId: this.#visitId, machineId: this.#machineId };
    if (this.#changes.length === 0) return committed;
    const last = lastEntry(this.#db);
    const entry = {
      seq: (last?.seq ?? 0) + 1,
      step_id: author.stepId,
      at_ms: author.atMs,
      zone_offset_min: author.zoneOffsetMin,
      person_id: author.personId,
      window_id: author.windowId,
      visit_id: this.#visitId,
      machine_id: this.#machineId,
      operation: author.operation,
      undoable: author.undoable ? 1 : 0,
      reverses: author.reverses,
      changes: canonical(this.#changes),
      previous_digest: last?.digest ?? chainStart,
    } as const;
    insertRow(this.#db, 'journal', { ...entry, digest: entryDigest(entry) });
    return committed;
  }
}

/**
 * One mutation: the rows, their journal entry and what follows from them in one synchronous transaction, on the disk when
 * this returns.
 */
export const mutate = <T>(
  db: WritableDb,
  author: Author,
  work: (writer: RecordWriter) => T,
  follow: (changes: readonly RowChange[]) => void = () => {},
): { result: T; committed: Committed } =>
  db.transaction(() => {
    const writer = new RecordWriter(db);
    const result = work(writer);
    const committed = writer.sign(author);
    follow(committed.changes);
    return { result, committed };
  });
