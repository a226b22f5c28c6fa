import Database from 'better-sqlite3';
import { sql } from 'kysely';
import { describe, expect, it } from 'vitest';
import { build, connect } from '../../../electron/recorder/database/connection.ts';
import { all, first, listed, type Param, run } from '../../../electron/recorder/database/query.ts';

const open = () => {
  const sqlite = new Database(':memory:');
  sqlite.exec(
    'CREATE TABLE person (id TEXT PRIMARY KEY, name TEXT NOT NULL, trade TEXT, here INTEGER NOT NULL) STRICT',
  );
  const db = connect(sqlite);
  const add = run((id: Param<string>, name: Param<string>, trade: Param<string>) =>
    build.insertInto('person').values({ trade, id, name, here: 1 }),
  );
  return { sqlite, db, add };
};

const named = all((ids: Param<readonly string[]>) =>
  build.selectFrom('person').select('name').where('id', 'in', listed(ids)).orderBy('name'),
);

describe('a query', () => {
  it('puts each value where its parameter stands, whatever it was first called with', () => {
    const { db, sqlite, add } = open();
    add(db, 'a', 'Ada', 'fitter');
    add(db, 'b', 'Bo', 'turner');
    expect(sqlite.prepare('SELECT id, name, trade, here FROM person ORDER BY id').raw().all()).toEqual([
      ['a', 'Ada', 'fitter', 1],
      ['b', 'Bo', 'turner', 1],
    ]);
  });

  it('may use one value in many places', () => {
    const { db, add } = open();
    add(db, 'a', 'same', 'same');
    add(db, 'b', 'same', 'other');
    const both = all((word: Param<string>) =>
      build.selectFrom('person').select('id').where('name', '=', word).where('trade', '=', word),
    );
    expect(both(db, 'same')).toEqual([{ id: 'a' }]);
    expect(both(db, 'other')).toEqual([]);
  });

  it('keeps text text, numbers numbers and nothing nothing', () => {
    const { db } = open();
    const kinds = first(
      (text: Param<string>, whole: Param<number>, part: Param<number>, none: Param<null>) =>
        sql<{ a: string; b: string; c: string; d: string }>`
          SELECT typeof(${text}) AS a, typeof(${whole}) AS b, typeof(${part}) AS c, typeof(${none}) AS d`,
    );
    expect(kinds(db, '0012', 12, 0.5, null)).toEqual({ a: 'text', b: 'real', c: 'real', d: 'null' });
  });

  it('takes a list of any length as one value: none, some, more than SQLite takes parameters, and any letters', () => {
    const { db, add } = open();
    const awkward = `it's "one", [two]\n\u00e9\ud83d\udd27`;
    add(db, 'a', 'Ada', '');
    add(db, awkward, 'Bo', '');
    expect(named(db, [])).toEqual([]);
    expect(named(db, ['a', 'nobody'])).toEqual([{ name: 'Ada' }]);
    expect(named(db, [awkward])).toEqual([{ name: 'Bo' }]);
    // SQLITE_MAX_VARIABLE_NUMBER is 32,766: sqlite.org/limits.html.
    const many = Array.from({ length: 40_000 }, (_, index) => `nobody ${index}`);
    expect(named(db, [...many, 'a', awkward])).toEqual([{ name: 'Ada' }, { name: 'Bo' }]);
  });
});
