import type { RiskLevel, Tier } from '../contract/standing.ts';
import { safetyStanding } from '../judgement/risk-matrix.ts';
import { causeGraph, reachableFrom } from './cause-graph.ts';
import { orderTier, type Precedence } from './order.ts';
import type { Cause, ComparePlaces, Rankable, RankingUse } from './rankable.ts';
import { type TierGround, tierOf } from './tier.ts';

export interface Ranked {
  readonly finding: Rankable;
  readonly tier: Tier;
  readonly headOfTier: boolean;
  readonly level: RiskLevel;
  readonly ground: TierGround;
  readonly loweredByDoubt: boolean;
  /** Whether a confirmed finding lies downstream of it. */
  readonly leadsToConfirmed: boolean;
  /** The finding whose urgency it borrows because it leads to it, or null. */
  readonly urgencyFrom: string | null;
  /** What puts it before the next line of its tier. */
  readonly before: Precedence | null;
}

export interface RankingInput {
  /** The conditions to order: confirmed, suspected or not examined. */
  readonly findings: readonly Rankable[];
  readonly causes: readonly Cause[];
  readonly use: RankingUse;
  readonly comparePlaces: ComparePlaces;
  /**
   * All conditions of the visit, where only some are ordered (what a choice leaves): whether a suspicion is the root of
   * a confirmed finding is asked of the whole visit, since mending the consequence does not clear its root.
   */
  readonly wholeVisit?: readonly Rankable[];
}

const tierNumbers: readonly Tier[] = [0, 1, 2, 3, 4];

/** The severity order of a visit's findings, worst first. Independent of the order in which they are given. */
export function rank(input: RankingInput): Ranked[] {
  const whole = input.wholeVisit ?? input.findings;
  const graph = causeGraph(
    whole.map(({ id }) => id),
    input.causes,
  );
  const confirmed = whole.filter(({ state }) => state === 'confirmed').map(({ id }) => id);
  const upstreamOfConfirmed = reachableFrom(confirmed.flatMap(graph.causesOf), graph.causesOf);
  const placed = input.findings.map((finding) => {
    const leadsToConfirmed = upstreamOfConfirmed.has(finding.id);
    return { finding, leadsToConfirmed, ...tierOf(finding, input.use, leadsToConfirmed) };
  });
  return tierNumbers.flatMap((tier) => {
    const inTier = placed.filter((item) => item.tier === tier);
    const byId = new Map(inTier.map((item) => [item.finding.id, item]));
    return orderTier(inTier, input.causes, input.comparePlaces).flatMap(({ finding, urgencyFrom, before }) => {
      const item = byId.get(finding.id);
      return item === undefined ? [] : [{ ...item, level: safetyStanding(finding.safety).level, urgencyFrom, before }];
    });
  });
}
