import { reportWords } from '../wording/report.ts';
import type { ReportSource } from './source.ts';

/** What every page says of the report's standing: a draft, or its number and revision. */
export function markOf({ issue }: Pick<ReportSource, 'issue'>): string {
  if (issue === undefined) return reportWords.draftMark;
  return reportWords.issued.replace('{number}', String(issue.number)).replace('{revision}', String(issue.revision));
}
