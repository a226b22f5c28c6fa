import { defectOf } from '../defects/index.ts';
import type { Finding, FindingProof } from '../model/finding.ts';
import type { RankedState } from './rankable.ts';

/** Why a finding that is called confirmed counts as suspected. */
export type Doubt = 'nothing-shows-it' | 'no-able-method' | 'no-defect';

export interface HonestState {
  readonly state: RankedState;
  /** What keeps a confirmed finding from counting as confirmed; empty otherwise. */
  readonly doubts: readonly Doubt[];
}

/**
 * The state a condition counts as. Confirmed needs a photo or a reading, by a method that can confirm that defect; without
 * them it is held as suspected until they come. Null for what is never ranked.
 */
export function honestState(
  finding: Pick<Finding, 'id' | 'kind' | 'state' | 'defect' | 'methods'>,
  proofs: readonly FindingProof[],
): HonestState | null {
  if (finding.kind !== 'condition' || finding.state === 'none-found') return null;
  if (finding.state !== 'confirmed') return { state: finding.state, doubts: [] };
  const defect = defectOf(finding.defect);
  const shown = proofs.some(
    ({ findingId, shotId, readingId }) => findingId === finding.id && (shotId !== null || readingId !== null),
  );
  const doubts: Doubt[] = [];
  if (defect === null) doubts.push('no-defect');
  if (!shown) doubts.push('nothing-shows-it');
  if (defect !== null && !finding.methods.some((method) => defect.confirmedBy.includes(method))) {
    doubts.push('no-able-method');
  }
  return { state: doubts.length === 0 ? 'confirmed' : 'suspected', doubts };
}
