import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Finding } from '../../shared-lib/model/finding.ts';
import type { FindingEdit } from './use-finding-change.ts';

/** What each part of the card gets. */
export interface SectionProps {
  readonly record: VisitRecord;
  readonly finding: Finding;
  readonly edit: (fields: FindingEdit) => void;
}
