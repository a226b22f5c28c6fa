import type { Finding, FindingProof } from '../model/finding.ts';
import type { Layout } from '../model/layout.ts';
import { isCriticalSystem } from '../parts/critical-system.ts';
import { honestState } from './honest-state.ts';
import { proposeNamedCondition } from './named-conditions/index.ts';
import type { Rankable, RankingUse } from './rankable.ts';

export interface RankableContext {
  readonly layout: Layout;
  readonly use: RankingUse;
  readonly proofs: readonly FindingProof[];
}

/** A recorded condition as the order sees it; null for an observation and for what was looked for and not found. */
export function toRankable(finding: Finding, { layout, use, proofs }: RankableContext): Rankable | null {
  const honest = honestState(finding, proofs);
  if (honest === null) return null;
  const declined = finding.namedConditionDeclinedBecause?.trim() ?? '';
  return {
    id: finding.id,
    number: finding.number,
    state: honest.state,
    safety: finding.safety,
    urgency: finding.urgency,
    runWorse: finding.runWorse,
    damageClass: finding.damageClass,
    place: finding.locations[0] ?? null,
    criticalSystem: finding.locations.some((place) => isCriticalSystem(place, layout)),
    named: honest.state === 'not-examined' ? null : (proposeNamedCondition(finding, layout, use)?.id ?? null),
    namedDeclinedBecause: declined === '' ? null : declined,
    foundOn: finding.foundOn,
    loopStart: finding.loopStart,
  };
}

/** Findings that still stand: neither in the bin nor replaced by a later conclusion. */
export function standingFindings(findings: readonly Finding[]): Finding[] {
  const kept = findings.filter(({ binned }) => !binned);
  const superseded = new Set(kept.map(({ supersedes }) => supersedes));
  return kept.filter(({ id }) => !superseded.has(id));
}
