import type { IssuedReport } from '../../../shared-lib/contract/reports.ts';
import { build, type ReadableDb } from '../database/connection.ts';
import type { Tables } from '../database/tables.ts';

export const rowToIssued = (row: Tables['report']): IssuedReport => ({
  id: row.id,
  number: row.number,
  revision: row.revision,
  issuedAtMs: row.issued_at_ms,
  pdfDigest: row.pdf_digest,
});

export const issuedOf = (db: ReadableDb, visitId: string) =>
  db.all(build.selectFrom('report').selectAll().where('visit_id', '=', visitId).orderBy('revision'));

export const highestNumber = (db: ReadableDb): number =>
  db.first(build.selectFrom('report').select(({ fn }) => fn.max<number | null>('number').as('highest')))?.highest ?? 0;

export const newestRevision = (db: ReadableDb, number: number): number | null =>
  db.first(
    build
      .selectFrom('report')
      .select(({ fn }) => fn.max<number | null>('revision').as('newest'))
      .where('number', '=', number),
  )?.newest ?? null;
