import { describe, expect, it } from 'vitest';
import { actionWords } from '../../../../shared-lib/judgement/actions.ts';
import { damageClasses } from '../../../../shared-lib/judgement/damage-class.ts';
import { factWords } from '../../../../shared-lib/judgement/facts.ts';
import { exposureReminders, probabilities } from '../../../../shared-lib/judgement/probability.ts';
import { severities } from '../../../../shared-lib/judgement/severity.ts';
import { stateWords } from '../../../../shared-lib/judgement/states.ts';
import { tiers, tierWords } from '../../../../shared-lib/judgement/tiers.ts';
import { urgencies } from '../../../../shared-lib/judgement/urgency.ts';
import { findingActions, findingFacts, findingStates } from '../../../../shared-lib/model/finding.ts';

describe('words for people', () => {
  it('says the five tiers in order', () => {
    expect(tiers.map(({ words }) => words)).toEqual([
      'do not operate',
      'fix before work',
      'do not run',
      'will fail or cost more',
      'note',
    ]);
    for (const { tier, heading, words } of tiers) {
      expect(tierWords(tier).heading).toBe(heading);
      expect(heading.toLowerCase()).toBe(words);
    }
  });

  it('has words for every state, action and fact of the record', () => {
    expect(findingStates.map((state) => stateWords(state).label)).toEqual([
      'Confirmed',
      'Suspected',
      'Not examined',
      'Examined, none found',
    ]);
    expect(Object.keys(actionWords)).toEqual(findingActions);
    expect(Object.keys(factWords)).toEqual(findingFacts);
  });

  it('says when, without a code', () => {
    expect(urgencies.map(({ urgency }) => urgency)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(urgencies[0]?.within).toBe('at the next start');
    expect(urgencies[1]?.within).toBe('within 10 hours');
  });

  it('divides what waiting costs without a gap', () => {
    expect(damageClasses.map(({ damageClass }) => damageClass)).toEqual([1, 2, 3, 4]);
    for (const [index, { fromShare }] of damageClasses.entries()) {
      expect(damageClasses[index + 1]?.toShare ?? 0).toBe(fromShare);
    }
  });

  it('gives examples of this trade and shows no code, no grade and no lamp', () => {
    const all = [
      ...severities.flatMap(({ sense, examples }) => [sense, ...examples]),
      ...probabilities.map(({ sense }) => sense),
      ...urgencies.flatMap(({ label, within }) => [label, within]),
      ...damageClasses.flatMap(({ label, sense }) => [label, sense]),
      ...tiers.flatMap(({ heading, sense }) => [heading, sense]),
      ...exposureReminders,
      ...Object.values(factWords),
      ...Object.values(actionWords),
    ];
    for (const text of all) {
      expect(text.trim().length).toBeGreaterThan(2);
      expect(text).not.toMatch(/\b[TUD]\d\b|\b(red|amber|green|safe|OK)\b/);
    }
  });
});
