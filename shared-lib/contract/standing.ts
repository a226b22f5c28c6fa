import type { FindingState, Safety } from '../model/finding.ts';

/** 0 do not operate, 1 fix before work, 2 do not run, 3 will fail or cost more, 4 note. */
export type Tier = 0 | 1 | 2 | 3 | 4;
export type RiskLevel = 'High' | 'Serious' | 'Medium' | 'Low';

/** All that a stamped tag shows. */
export interface StandingTag {
  readonly findingId: string;
  readonly number: number;
  readonly tier: Tier;
  readonly state: FindingState;
}

/** One ranked finding and why it stands there. */
export interface StandingLine extends StandingTag {
  readonly title: string;
  /** One sentence a mechanic can read out. */
  readonly why: string;
  /** 1-based place in the order shown, and in the computed order; they differ when the line was moved by hand. */
  readonly place: number;
  readonly computedPlace: number;
  readonly movedBecause: string | null;
  readonly level: RiskLevel;
  readonly safety: Safety | null;
  /** The named do-not-operate condition it matches, also when the mechanic does not follow it. */
  readonly named: string | null;
  readonly namedDeclinedBecause: string | null;
  readonly headOfTier: boolean;
  /** What still stops it from being a finished finding, in words; empty when nothing. */
  readonly missing: readonly string[];
}

export interface NotLookedAt {
  readonly path: string;
  readonly spoken: string;
  readonly because: string | null;
}

export interface Coverage {
  readonly examined: number;
  readonly notExamined: number;
  readonly notApplicable: number;
}

export interface Standing {
  readonly lines: readonly StandingLine[];
  /** Findings of the state none-found, and observations: listed, never ranked. */
  readonly unranked: readonly {
    readonly findingId: string;
    readonly number: number;
    readonly title: string;
    readonly state: FindingState | 'observation';
  }[];
  readonly notLookedAt: readonly NotLookedAt[];
  readonly coverage: Coverage;
}
