import type { VisitWork } from '../contract/work.ts';
import type { FindingProof } from '../model/finding.ts';
import type { Reading, Verdict } from '../model/reading.ts';
import type { WorkItem, WorkProof } from './records.ts';

/** The work that is on record, with the readings of its visit and what each shows of a finding. */
export interface WorkOnRecord {
  readonly work: VisitWork;
  readonly readings: readonly Reading[];
  readonly proofs: readonly FindingProof[];
}

/** A finding that work is on record for. Only one that is mended is gone. */
export interface WorkedOn {
  readonly is: 'mended' | 'partly' | 'made-safe' | 'not-done';
  /** Why it was not done, or not all of it. */
  readonly because: string;
  /** A test after the work shows that it holds. */
  readonly isTested: boolean;
}

const failed: readonly Verdict[] = ['beyond', 'shown', 'void', 'not taken'];

/** A photo, or a reading that no limit speaks against: one that is beyond its limit is on record, and shows nothing mended. */
function showsItHolds({ readingId, shotId }: WorkProof, readings: readonly Reading[]): boolean {
  if (shotId !== null) return true;
  const results = readings.find(({ id }) => id === readingId)?.results ?? [];
  return results.length > 0 && !results.some(({ verdict }) => failed.includes(verdict));
}

const isOf = ({ outcome }: WorkItem, isLeft: boolean): WorkedOn['is'] => {
  if (outcome !== 'done') return outcome;
  return isLeft ? 'made-safe' : 'mended';
};

/** What the work has made of each finding it speaks of. */
export function workedOn({ items, left }: VisitWork, readings: readonly Reading[]): ReadonlyMap<string, WorkedOn> {
  const isLeft = new Set(left.map(({ findingId }) => findingId));
  return new Map(
    items.flatMap((item) =>
      item.findingId === null
        ? []
        : [
            [
              item.findingId,
              {
                is: isOf(item, isLeft.has(item.findingId)),
                because: item.outcome === 'done' ? '' : item.because.trim(),
                isTested: item.proofs.some((proof) => showsItHolds(proof, readings)),
              },
            ] as const,
          ],
    ),
  );
}

/** Findings that the work has mended. */
export function mendedBy(work: VisitWork | undefined): ReadonlySet<string> {
  if (work === undefined) return new Set();
  return new Set([...workedOn(work, [])].flatMap(([id, { is }]) => (is === 'mended' ? [id] : [])));
}
