import canonicalize from 'canonicalize';
import type { Tier } from '../contract/standing.ts';
import type { Finding } from '../model/finding.ts';

/**
 * What was told of a finding, as far as a decision rests on it: a decision covers this and no more. Words may change, the
 * condition, its sizes and its judgements may not.
 *
 * Source: the handbook's carry-over rule (chapter 8): the old signature does not cover the new severity.
 */
export function toldOf(finding: Finding, tier: Tier | null): string {
  const { defect, state, safety, urgency, runWorse, damageClass, facts } = finding;
  const quantities = Object.entries(finding.quantities).map(([id, { typed }]) => [id, typed.trim()]);
  const told = { defect, state, safety, urgency, runWorse, damageClass, facts: facts.toSorted(), quantities, tier };
  const text = canonicalize(told);
  if (text === undefined) throw new TypeError('what was told is an object');
  return text;
}
