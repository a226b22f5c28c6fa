import { mendedBy } from '../work/after-work.ts';
import type { RankedFinding, ReportContext } from './context.ts';

/** What stands after the work that is on record, each at its place of then; without any, all that was found. */
export function standingAfterWork({ ranked, record }: ReportContext): readonly RankedFinding[] {
  if (record.work === undefined || record.work.items.length === 0) return ranked;
  const byId = new Map(ranked.map((entry) => [entry.finding.id, entry]));
  return record.work.left.flatMap(({ findingId, tier }): RankedFinding[] => {
    const entry = byId.get(findingId);
    return entry === undefined ? [] : [{ ...entry, line: { ...entry.line, tier }, tag: { ...entry.tag, tier } }];
  });
}

/** Findings that the work has mended. */
export const mendedByWork = ({ record }: ReportContext): ReadonlySet<string> => mendedBy(record.work);
