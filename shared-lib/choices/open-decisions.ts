import type { VisitChoices } from '../contract/choices.ts';

export interface OpenDecision {
  readonly findingId: string;
  /** Nobody has decided, or what was told then has changed since. */
  readonly why: 'undecided' | 'changed';
}

/**
 * Ranked findings that no decision covers: neither one of their own nor the choice that was taken, as far as it speaks of
 * them. Empty while nothing at all was decided: then the report goes out for the owner to decide.
 */
export function openDecisions(choices: VisitChoices, ranked: readonly string[]): OpenDecision[] {
  const { decisions } = choices;
  if (decisions.length === 0) return [];
  const taken = choices.choices.find(({ chosen }) => chosen);
  return ranked.flatMap((findingId): OpenDecision[] => {
    const last = decisions.filter((decision) => decision.findingId === findingId).at(-1);
    if (last?.covers === true) return [];
    if (last === undefined && taken !== undefined && !taken.unspoken.includes(findingId)) return [];
    return [{ findingId, why: last === undefined ? 'undecided' : 'changed' }];
  });
}
