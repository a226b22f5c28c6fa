import { sql } from 'kysely';
import { build, type ReadableDb, type WritableDb } from '../database/connection.ts';
import type { Tables } from '../database/tables.ts';
import { difference } from '../journal/change.ts';

export type SearchDocument = Omit<Tables['search_document'], 'rowid'> & {
  readonly words: string;
  readonly serial: string;
};

const compiled = (query: ReturnType<typeof sql>) => ({ compile: () => query.compile(build) });

type Kept = Omit<SearchDocument, 'serial'> & { readonly rowid: number; readonly serial: string | null };

const kept = (db: ReadableDb, record: string): Kept | undefined =>
  db.first<Kept>(
    compiled(sql`
      SELECT d.*, w.words, s.serial
      FROM search_document AS d
      JOIN search_words AS w ON w.rowid = d.rowid
      LEFT JOIN search_serials AS s ON s.rowid = d.rowid
      WHERE d.record = ${record}`) as never,
  );

export const dropDocument = (db: WritableDb, record: string): void => {
  const old = kept(db, record);
  if (old === undefined) return;
  db.run(compiled(sql`DELETE FROM search_words WHERE rowid = ${old.rowid}`));
  if (old.serial !== null) db.run(compiled(sql`DELETE FROM search_serials WHERE rowid = ${old.rowid}`));
  db.run(build.deleteFrom('search_document').where('rowid', '=', old.rowid));
};

const addDocument = (db: WritableDb, { words, serial, ...document }: SearchDocument): void => {
  db.run(build.insertInto('search_document').values(document));
  const { rowid } = db.first<{ rowid: number }>(compiled(sql`SELECT last_insert_rowid() AS rowid`) as never) ?? {};
  db.run(compiled(sql`INSERT INTO search_words (rowid, words) VALUES (${rowid}, ${words})`));
  if (serial !== '') db.run(compiled(sql`INSERT INTO search_serials (rowid, serial) VALUES (${rowid}, ${serial})`));
};

/** Most changes of a record touch none of its words: only what differs is written anew. */
export const putDocument = (db: WritableDb, document: SearchDocument): void => {
  const { words, serial, ...about } = document;
  const old = kept(db, document.record);
  if (!old || (old.serial ?? '') !== serial || Object.keys(difference({ ...old }, about)).length > 0) {
    dropDocument(db, document.record);
    addDocument(db, document);
  } else if (old.words !== words) {
    db.run(compiled(sql`UPDATE search_words SET words = ${words} WHERE rowid = ${old.rowid}`));
  }
};

export interface Hit {
  readonly kind: 'machine' | 'visit' | 'finding';
  readonly machine_id: string;
  readonly visit_id: string | null;
  readonly finding_id: string | null;
  readonly words: string;
}

/**
 * Words that stand in more documents than this are not ranked: that would read through all of them for a fine difference
 * among the first fifty. Of the newest, machines come before their visits, and those before findings.
 */
const mostRanked = 500;

/** Documents that hold all the words, the last one as a beginning; best first. */
export const hitsOfWords = (db: ReadableDb, match: string, most: number): Hit[] => {
  const newest = db.all<{ rowid: number }>(
    compiled(sql`
      SELECT rowid FROM search_words WHERE search_words MATCH ${match} ORDER BY rowid DESC LIMIT ${mostRanked}`) as never,
  );
  if (newest.length < mostRanked) {
    return db.all(
      compiled(sql`
        SELECT d.kind, d.machine_id, d.visit_id, d.finding_id, w.words
        FROM (SELECT rowid, rank FROM search_words WHERE search_words MATCH ${match} ORDER BY rank LIMIT ${most}) AS found
        JOIN search_document AS d ON d.rowid = found.rowid
        JOIN search_words AS w ON w.rowid = found.rowid
        ORDER BY found.rank`) as never,
    );
  }
  const rowids = JSON.stringify(newest.map(({ rowid }) => rowid));
  return db.all(
    compiled(sql`
      SELECT d.kind, d.machine_id, d.visit_id, d.finding_id, w.words
      FROM (
        SELECT document.rowid, kind, machine_id, visit_id, finding_id
        FROM json_each(${rowids}) AS found
        JOIN search_document AS document ON document.rowid = found.value
        ORDER BY CASE kind WHEN 'machine' THEN 0 WHEN 'visit' THEN 1 ELSE 2 END, document.rowid DESC
        LIMIT ${most}
      ) AS d
      JOIN search_words AS w ON w.rowid = d.rowid`) as never,
  );
};

/** Machines whose serial holds the fragment, three letters or more. */
export const hitsOfSerial = (db: ReadableDb, fragment: string, most: number): Hit[] =>
  db.all(
    compiled(sql`
      SELECT d.kind, d.machine_id, d.visit_id, d.finding_id, w.words
      FROM search_serials AS s
      JOIN search_document AS d ON d.rowid = s.rowid
      JOIN search_words AS w ON w.rowid = s.rowid
      WHERE s.serial MATCH ${fragment}
      LIMIT ${most}`) as never,
  );

export const isIndexed = (db: ReadableDb): boolean =>
  db.first(build.selectFrom('search_document').select('rowid').limit(1)) !== undefined;
