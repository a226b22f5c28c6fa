import type { Tier } from '../contract/standing.ts';
import { safetyStanding } from '../judgement/risk-matrix.ts';
import type { Urgency } from '../model/finding.ts';
import { isJudged, type Rankable, type RankingUse } from './rankable.ts';

/** What decided the tier; the one-line reason is made from it. */
export type TierGround =
  | 'must-be-examined'
  | 'named'
  | 'safety'
  | 'critical-in-use'
  | 'running-makes-it-worse'
  | 'time-or-cost'
  | 'not-judged'
  | 'nothing-more';

export interface TierPlace {
  readonly tier: Tier;
  readonly headOfTier: boolean;
  readonly ground: TierGround;
  /** It stands one tier lower than it would if it were confirmed. */
  readonly loweredByDoubt: boolean;
}

const tierAt = (value: number): Tier => (value <= 0 ? 0 : value >= 4 ? 4 : (value as Tier));

/** An urgency nobody has given counts as 'within 250 hours': silence must not make a finding a mere note. */
export const urgencyOrUnsaid = (urgency: Urgency | null): Urgency => urgency ?? 3;

/**
 * The tier of one finding. An order of rules, never a product of ordinal numbers.
 *
 * @param leadsToConfirmed  whether some confirmed finding lies downstream, through any number of links
 * Source: the handbook's ranking rule; its levels are MIL-STD-882E Table III, the tiers are common practice, no source.
 */
export function tierOf(finding: Rankable, use: RankingUse, leadsToConfirmed: boolean): TierPlace {
  const notExamined = finding.state === 'not-examined';
  const suspected = finding.state === 'suspected';
  if (notExamined && finding.criticalSystem) {
    return { tier: 1, headOfTier: true, ground: 'must-be-examined', loweredByDoubt: false };
  }
  if (finding.named !== null && finding.namedDeclinedBecause === null && !notExamined) {
    return { tier: 0, headOfTier: false, ground: 'named', loweredByDoubt: false };
  }

  const { level, severity } = safetyStanding(finding.safety);
  const raised = level === 'Medium' && finding.criticalSystem && (use.road || use.slope || use.peopleNear);
  const safetySure = { High: 0, Serious: 1, Medium: raised ? 1 : 3, Low: 4 }[level];
  const safetyDoubt = suspected && severity >= 3 && safetySure > 0 ? Math.min(4, safetySure + 1) : safetySure;
  const safety = notExamined ? Math.max(safetyDoubt, 1) : safetyDoubt;

  const urgency = urgencyOrUnsaid(finding.urgency);
  const growing = finding.runWorse === true && urgency <= 1;
  const costly = finding.damageClass !== null && finding.damageClass <= 2;
  const lastingSure = growing ? 2 : urgency <= 3 || costly ? 3 : 4;
  const doubted = notExamined || (suspected && !leadsToConfirmed);
  const lowered = doubted ? Math.min(4, lastingSure + 1) : lastingSure;
  const lasting = finding.damageClass === 1 ? Math.min(lowered, 3) : lowered;

  const reached = Math.min(safety, lasting);
  const loweredByDoubt = reached > Math.min(safetySure, lastingSure);
  if (reached === 4 && !isJudged(finding)) {
    return { tier: 3, headOfTier: false, ground: 'not-judged', loweredByDoubt: false };
  }
  const ground: TierGround =
    reached === 4
      ? 'nothing-more'
      : safety <= lasting
        ? raised
          ? 'critical-in-use'
          : 'safety'
        : lasting === 2
          ? 'running-makes-it-worse'
          : 'time-or-cost';
  return { tier: tierAt(reached), headOfTier: false, ground, loweredByDoubt };
}
