import type { Verdict } from '../model/reading.ts';

/** How heavily a verdict is set: in ink, never in colour. */
export type VerdictWeight = 'solid' | 'heavy' | 'dashed' | 'plain';

const weights: Readonly<Partial<Record<Verdict, VerdictWeight>>> = {
  beyond: 'solid',
  shown: 'solid',
  watch: 'heavy',
  'too close to tell': 'dashed',
};

export const verdictWeight = (verdict: Verdict): VerdictWeight => weights[verdict] ?? 'plain';

/** Verdicts that may be worth a finding; the mechanic says whether they are. */
export const asksForFinding = (verdict: Verdict): boolean => ['beyond', 'shown', 'watch'].includes(verdict);
