import type Database from 'better-sqlite3';
import {
  type CompiledQuery,
  DummyDriver,
  Kysely,
  SqliteAdapter,
  SqliteIntrospector,
  SqliteQueryCompiler,
} from 'kysely';
import type { Tables } from './tables.ts';

/** Builds SQL and never runs it: statements run synchronously in better-sqlite3, so that a mutation is one transaction. */
export const build = new Kysely<Tables>({
  dialect: {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new DummyDriver(),
    createIntrospector: (db) => new SqliteIntrospector(db),
    createQueryCompiler: () => new SqliteQueryCompiler(),
  },
});

interface Compilable<Row> {
  compile(): CompiledQuery<Row>;
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

export const connect = (sqlite: Database.Database): WritableDb => {
  const prepared = new Map<string, Database.Statement>();
  const statement = (sql: string): Database.Statement => {
    const known = prepared.get(sql);
    if (known) return known;
    const fresh = sqlite.prepare(sql);
    // Lists of ids make texts that differ by their length only; a bound keeps the map from growing for ever.
    if (prepared.size >= 500) prepared.clear();
    prepared.set(sql, fresh);
    return fresh;
  };
  return {
    all: <Row>(query: Compilable<Row>) => {
      const { sql, parameters } = query.compile();
      return statement(sql).all(...parameters) as Row[];
    },
    first: <Row>(query: Compilable<Row>) => {
      const { sql, parameters } = query.compile();
      return statement(sql).get(...parameters) as Row | undefined;
    },
    run: (query) => {
      const { sql, parameters } = query.compile();
      return statement(sql).run(...parameters).changes;
    },
    transaction: <T>(work: () => T): T => sqlite.transaction(work).immediate(),
  } as WritableDb;
};
