import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { FindingProof } from '../../../shared-lib/model/finding.ts';
import type { Context } from '../context.ts';
import type { RecordWriter } from '../journal/record-writer.ts';
import { proofBy, rowToProof } from './queries.ts';

/**
 * Joins a finding to the shot or reading that shows it, once.
 *
 * @throws AppError 'not-found', 'finding-of-another-visit'
 */
export const showFinding = (
  { db, newId }: Pick<Context, 'db' | 'newId'>,
  writer: RecordWriter,
  findingId: string,
  by: { shotId: string } | { readingId: string },
): FindingProof => {
  const finding = writer.row('finding', findingId);
  const shown = 'shotId' in by ? writer.row('shot', by.shotId) : writer.row('reading', by.readingId);
  if (finding.visit_id !== shown.visit_id) throw new AppError('finding-of-another-visit', {});
  const there = proofBy(db, findingId, by);
  if (there) return rowToProof(there);
  const row = {
    id: newId(),
    finding_id: findingId,
    shot_id: 'shotId' in by ? by.shotId : null,
    reading_id: 'readingId' in by ? by.readingId : null,
  };
  writer.insert('proof', row);
  return rowToProof(row);
};
