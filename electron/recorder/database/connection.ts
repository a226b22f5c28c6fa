import type Database from 'better-sqlite3';
import {
  type CompiledQuery,
  DummyDriver,
  Kysely,
  type QueryExecutorProvider,
  SqliteAdapter,
  SqliteIntrospector,
  SqliteQueryCompiler,
} from 'kysely';
import { Memory } from '../memory.ts';
import type { Tables } from './tables.ts';

/**
 * SQLite plans a statement anew, which takes longer than most of ours run, whenever another value is bound to a parameter
 * that its planner has looked at. A parameter behind a unary plus is a value like any other, which it does not look at.
 *
 * Source: sqlite.org/c3ref/prepare.html, on builds with STAT4, of which better-sqlite3's is one.
 */
class PlannedOnce extends SqliteQueryCompiler {
  protected override getCurrentParameterPlaceholder(): string {
    return '+?';
  }
}

/** Builds SQL and never runs it: statements run synchronously in better-sqlite3, so that a mutation is one transaction. */
export const build = new Kysely<Tables>({
  dialect: {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new DummyDriver(),
    createIntrospector: (db) => new SqliteIntrospector(db),
    createQueryCompiler: () => new PlannedOnce(),
  },
});

/** Of the builder, raw, or compiled already (`query.ts`). */
export interface Compilable<Row> {
  compile(by: QueryExecutorProvider): CompiledQuery<Row>;
}

declare const writable: unique symbol;

/** What a reading function gets. Statements are prepared once per text. */
export interface ReadableDb {
  all<Row>(query: Compilable<Row>): Row[];
  first<Row>(query: Compilable<Row>): Row | undefined;
}

/** Handed only to the journal's writer, so that nothing is changed beside it. */
export interface WritableDb extends ReadableDb {
  readonly [writable]: true;
  run(query: Compilable<unknown>): number;
  /** Runs in one transaction; rolls back and rethrows when `work` throws. */
  transaction<T>(work: () => T): T;
}

/** More than there are queries; updates differ by the columns that they name, and so has their number no end. */
const mostPrepared = 500;

export const connect = (sqlite: Database.Database): WritableDb => {
  const prepared = new Memory<Database.Statement>(mostPrepared);
  const statement = (sql: string): Database.Statement => prepared.get(sql, () => sqlite.prepare(sql));
  const inTransaction = sqlite.transaction((work: () => unknown) => work());
  return {
    all: <Row>(query: Compilable<Row>) => {
      const { sql, parameters } = query.compile(build);
      return statement(sql).all(...parameters) as Row[];
    },
    first: <Row>(query: Compilable<Row>) => {
      const { sql, parameters } = query.compile(build);
      return statement(sql).get(...parameters) as Row | undefined;
    },
    run: (query) => {
      const { sql, parameters } = query.compile(build);
      return statement(sql).run(...parameters).changes;
    },
    transaction: <T>(work: () => T): T => inTransaction.immediate(work) as T,
  } as WritableDb;
};
