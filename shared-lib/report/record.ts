import canonicalize from 'canonicalize';
import type { ReportSource } from './source.ts';

export const recordFormat = 'witness-mark-record/1';
export const recordFileName = 'record.json';

/** Lone surrogates have no UTF-8 form, so a file can't hold them; everything else stays as it is. */
function wellFormed(value: unknown): unknown {
  if (typeof value === 'string') return value.toWellFormed();
  if (Array.isArray(value)) return value.map(wellFormed);
  if (value !== null && typeof value === 'object') {
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key.toWellFormed(), wellFormed(each)]));
  }
  return value;
}

/**
 * The record that the PDF carries: canonical JSON, so that two programs that hold the same record get the same bytes and
 * the same digest.
 *
 * Source: RFC 8785 (JSON Canonicalization Scheme).
 */
export function canonicalRecord({
  record,
  shop,
  people,
  nowMs,
  zoneOffsetMin,
  programVersion,
  issue,
}: ReportSource): string {
  const canonical = canonicalize(
    wellFormed({
      format: recordFormat,
      madeAtMs: nowMs,
      ...(issue === undefined
        ? {}
        : {
            issue: {
              number: issue.number,
              revision: issue.revision,
              ...(issue.undecidedBecause === undefined ? {} : { undecidedBecause: issue.undecidedBecause }),
            },
          }),
      zoneOffsetMin,
      program: { name: 'Witness Mark', version: programVersion },
      shop,
      people,
      record,
    }),
  );
  if (canonical === undefined) throw new TypeError('a record is an object');
  return canonical;
}
