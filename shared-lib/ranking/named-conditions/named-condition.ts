import type { FindingFact } from '../../model/finding.ts';
import type { ComponentClass } from '../../parts/component.ts';
import type { RankingUse } from '../rankable.ts';

/** One place of a finding, as a do-not-operate condition sees it. */
export interface ConditionContext {
  readonly defect: string | null;
  /** What the part is: its own classes, those above it, and its role on this machine. */
  readonly classes: ReadonlySet<ComponentClass>;
  readonly facts: ReadonlySet<FindingFact>;
  readonly use: RankingUse;
}

/**
 * A condition that makes a finding do-not-operate, confirmed or suspected. It is proposed; the mechanic may say why not.
 * Source of the list: the handbook's 6.5, common practice, no source, except where a file names one.
 */
export interface NamedCondition {
  readonly id: string;
  /** After a colon, in the line that says why: 'Do not operate: the interlock is defeated.' */
  readonly words: string;
  readonly matches: (context: ConditionContext) => boolean;
}

export function oneOf(defect: string | null, ...ids: readonly string[]): boolean {
  return defect !== null && ids.includes(defect);
}
