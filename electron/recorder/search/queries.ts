import { sql } from 'kysely';
import { build, type ReadableDb, type WritableDb } from '../database/connection.ts';
import { all, first, type Param, run } from '../database/query.ts';
import type { Tables } from '../database/tables.ts';
import { difference } from '../journal/change.ts';

export type SearchDocument = Omit<Tables['search_document'], 'rowid'> & {
  readonly words: string;
  readonly serial: string;
};

type Kept = Omit<SearchDocument, 'serial'> & { readonly rowid: number; readonly serial: string | null };

const keptOf = first(
  (record: Param<string>) => sql<Kept>`
    SELECT d.*, w.words, s.serial
    FROM search_document AS d
    JOIN search_words AS w ON w.rowid = d.rowid
    LEFT JOIN search_serials AS s ON s.rowid = d.rowid
    WHERE d.record = ${record}`,
);

const dropWords = run((rowid: Param<number>) => sql`DELETE FROM search_words WHERE rowid = ${rowid}`);
const dropSerial = run((rowid: Param<number>) => sql`DELETE FROM search_serials WHERE rowid = ${rowid}`);
const dropRow = run((rowid: Param<number>) => build.deleteFrom('search_document').where('rowid', '=', rowid));

const drop = (db: WritableDb, { rowid, serial }: Kept): void => {
  dropWords(db, rowid);
  if (serial !== null) dropSerial(db, rowid);
  dropRow(db, rowid);
};

export const dropDocument = (db: WritableDb, record: string): void => {
  const old = keptOf(db, record);
  if (old !== undefined) drop(db, old);
};

const addRow = first(
  (
    record: Param<string>,
    kind: Param<SearchDocument['kind']>,
    machineId: Param<string>,
    visitId: Param<string | null>,
    findingId: Param<string | null>,
  ) =>
    build
      .insertInto('search_document')
      .values({ record, kind, machine_id: machineId, visit_id: visitId, finding_id: findingId })
      .returning('rowid'),
);

const addWords = run(
  (rowid: Param<number>, words: Param<string>) =>
    sql`INSERT INTO search_words (rowid, words) VALUES (${rowid}, ${words})`,
);

const addSerial = run(
  (rowid: Param<number>, serial: Param<string>) =>
    sql`INSERT INTO search_serials (rowid, serial) VALUES (${rowid}, ${serial})`,
);

const changeWords = run(
  (rowid: Param<number>, words: Param<string>) => sql`UPDATE search_words SET words = ${words} WHERE rowid = ${rowid}`,
);

const addDocument = (db: WritableDb, document: SearchDocument): void => {
  const { record, kind, machine_id, visit_id, finding_id, words, serial } = document;
  const { rowid } = addRow(db, record, kind, machine_id, visit_id, finding_id) ?? {};
  if (rowid === undefined) throw new Error(`no search document was written for ${record}`);
  addWords(db, rowid, words);
  if (serial !== '') addSerial(db, rowid, serial);
};

/** Most changes of a record touch none of its words: only what differs is written anew. */
export const putDocument = (db: WritableDb, document: SearchDocument): void => {
  const { words, serial, ...about } = document;
  const old = keptOf(db, document.record);
  if (!old || (old.serial ?? '') !== serial || Object.keys(difference({ ...old }, about)).length > 0) {
    if (old) drop(db, old);
    addDocument(db, document);
  } else if (old.words !== words) {
    changeWords(db, old.rowid, words);
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

const newestWith = all(
  (match: Param<string>) => sql<{ rowid: number }>`
    SELECT rowid FROM search_words WHERE search_words MATCH ${match} ORDER BY rowid DESC LIMIT ${mostRanked}`,
);

const ranked = all(
  (match: Param<string>, most: Param<number>) => sql<Hit>`
    SELECT d.kind, d.machine_id, d.visit_id, d.finding_id, w.words
    FROM (SELECT rowid, rank FROM search_words WHERE search_words MATCH ${match} ORDER BY rank LIMIT ${most}) AS found
    JOIN search_document AS d ON d.rowid = found.rowid
    JOIN search_words AS w ON w.rowid = found.rowid
    ORDER BY found.rank`,
);

const byKind = all(
  (rowids: Param<readonly number[]>, most: Param<number>) => sql<Hit>`
    SELECT d.kind, d.machine_id, d.visit_id, d.finding_id, w.words
    FROM (
      SELECT document.rowid, kind, machine_id, visit_id, finding_id
      FROM json_each(${rowids}) AS found
      JOIN search_document AS document ON document.rowid = found.value
      ORDER BY CASE kind WHEN 'machine' THEN 0 WHEN 'visit' THEN 1 ELSE 2 END, document.rowid DESC
      LIMIT ${most}
    ) AS d
    JOIN search_words AS w ON w.rowid = d.rowid`,
);

/** Documents that hold all the words, the last one as a beginning; best first. */
export const hitsOfWords = (db: ReadableDb, match: string, most: number): Hit[] => {
  const newest = newestWith(db, match);
  if (newest.length < mostRanked) return ranked(db, match, most);
  return byKind(
    db,
    newest.map(({ rowid }) => rowid),
    most,
  );
};

/** Machines whose serial holds the fragment, three letters or more. */
export const hitsOfSerial = all(
  (fragment: Param<string>, most: Param<number>) => sql<Hit>`
    SELECT d.kind, d.machine_id, d.visit_id, d.finding_id, w.words
    FROM search_serials AS s
    JOIN search_document AS d ON d.rowid = s.rowid
    JOIN search_words AS w ON w.rowid = s.rowid
    WHERE s.serial MATCH ${fragment}
    LIMIT ${most}`,
);

const anyDocument = first(() => build.selectFrom('search_document').select('rowid').limit(1));

export const isIndexed = (db: ReadableDb): boolean => anyDocument(db) !== undefined;

export const machineIds = all(() => build.selectFrom('machine').select('id'));
export const visitIds = all(() => build.selectFrom('visit').select('id'));
export const findingIds = all(() => build.selectFrom('finding').select('id'));
