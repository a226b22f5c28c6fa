import type { Coverage } from '../contract/standing.ts';
import type { Finding } from '../model/finding.ts';
import type { Reading } from '../model/reading.ts';
import type { ScopeItem } from '../model/visit.ts';
import { isBelow } from '../parts/is-below.ts';

export type ScopeState = 'examined' | 'not-examined' | 'not-applicable';

export interface CoveredItem {
  readonly item: ScopeItem;
  readonly state: ScopeState;
}

export interface Looked {
  readonly scope: readonly ScopeItem[];
  readonly findings: readonly Finding[];
  readonly readings: readonly Reading[];
}

/** A finding shows that somebody looked when it was made by some method. A bare suspicion on a closed part shows nothing. */
function placesLookedAt(findings: readonly Finding[], readings: readonly Reading[]): string[] {
  const made = findings.filter(
    ({ binned, kind, state, methods }) =>
      !binned && kind === 'condition' && state !== 'not-examined' && methods.length > 0,
  );
  const taken = readings.filter(
    ({ notTakenBecause, results }) =>
      notTakenBecause === null && !(results.length > 0 && results.every(({ verdict }) => verdict === 'not taken')),
  );
  return [...made.flatMap(({ locations }) => locations), ...taken.map(({ at }) => at)];
}

/** Each agreed item: what was looked at counts as examined, whatever reason stood there before. */
export function coverItems({ scope, findings, readings }: Looked): CoveredItem[] {
  const looked = placesLookedAt(findings, readings);
  return scope.map((item) => {
    const examined = looked.some((place) => isBelow(place, item.path));
    const state = examined ? 'examined' : item.notApplicableBecause !== null ? 'not-applicable' : 'not-examined';
    return { item, state };
  });
}

/** The coverage line's three figures, of items that are computed already. */
export function countCovered(items: readonly CoveredItem[]): Coverage {
  const count = (wanted: ScopeState) => items.filter(({ state }) => state === wanted).length;
  return {
    examined: count('examined'),
    notExamined: count('not-examined'),
    notApplicable: count('not-applicable'),
  };
}

/** The coverage line's three figures. */
export function coverage(looked: Looked): Coverage {
  return countCovered(coverItems(looked));
}
