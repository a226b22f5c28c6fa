import type { IssuedReport } from '../../../shared-lib/contract/reports.ts';
import { build, type ReadableDb } from '../database/connection.ts';
import { all, first, type Param } from '../database/query.ts';
import type { Tables } from '../database/tables.ts';

export const rowToIssued = (row: Tables['report']): IssuedReport => ({
  id: row.id,
  number: row.number,
  revision: row.revision,
  issuedAtMs: row.issued_at_ms,
  pdfDigest: row.pdf_digest,
});

export const issuedOf = all((visitId: Param<string>) =>
  build.selectFrom('report').selectAll().where('visit_id', '=', visitId).orderBy('revision'),
);

const highest = first(() =>
  build.selectFrom('report').select(({ fn }) => fn.max<number | null>('number').as('number')),
);

export const highestNumber = (db: ReadableDb): number => highest(db)?.number ?? 0;

const newest = first((number: Param<number>) =>
  build
    .selectFrom('report')
    .select(({ fn }) => fn.max<number | null>('revision').as('revision'))
    .where('number', '=', number),
);

export const newestRevision = (db: ReadableDb, number: number): number | null => newest(db, number)?.revision ?? null;

const issuedFrom = first((visitId: Param<string>, atMs: Param<number>) =>
  build.selectFrom('report').select('id').where('visit_id', '=', visitId).where('issued_at_ms', '>=', atMs).limit(1),
);

/** Issued then or later: the report has what was there as it was. */
export const issuedSince = (db: ReadableDb, visitId: string, atMs: number): boolean =>
  issuedFrom(db, visitId, atMs) !== undefined;
