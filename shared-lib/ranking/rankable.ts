import type { DamageClass, FindingState, Safety, Urgency } from '../model/finding.ts';

export type RankedState = Exclude<FindingState, 'none-found'>;

/** A condition as the order sees it: judged or not, and with what the record says about it already worked out. */
export interface Rankable {
  readonly id: string;
  /** The number on its tag; settles what nothing else settles. */
  readonly number: number;
  /** The state it counts as: a confirmed finding that nothing shows counts as suspected. */
  readonly state: RankedState;
  readonly safety: Safety | 'none' | null;
  readonly urgency: Urgency | null;
  readonly runWorse: boolean | null;
  readonly damageClass: DamageClass | null;
  /** Where it stands in the component tree; null while nobody has said. */
  readonly place: string | null;
  readonly criticalSystem: boolean;
  /** The named do-not-operate condition it matches, or null. */
  readonly named: string | null;
  /** The mechanic's reason for not following the named condition. */
  readonly namedDeclinedBecause: string | null;
  /** ISO date, for breaking a loop of causes at its earliest. */
  readonly foundOn: string | null;
  readonly loopStart: boolean;
}

/** One finding leads to another. Every link counts, suspected or confirmed. */
export interface Cause {
  readonly fromId: string;
  readonly toId: string;
}

/** What of the machine's use raises a medium risk on a critical system. */
export interface RankingUse {
  readonly road: boolean;
  readonly slope: boolean;
  readonly peopleNear: boolean;
}

/** Tree order of two places: negative when the first comes first. */
export type ComparePlaces = (a: string, b: string) => number;

/** True when each of the three judgements has been given. Only then may a finding stand as a mere note. */
export function isJudged(finding: Pick<Rankable, 'safety' | 'urgency' | 'damageClass' | 'runWorse'>): boolean {
  return (
    finding.safety !== null && finding.urgency !== null && finding.damageClass !== null && finding.runWorse !== null
  );
}
