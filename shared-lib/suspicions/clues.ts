import type { Suspicion } from '../choices/records.ts';
import type { Defect } from '../defects/defect.ts';
import { defectOf, defects } from '../defects/index.ts';
import { says } from './said.ts';
import { type Symptom, symptomsIn } from './symptoms.ts';

/** What can be gone by to find a test for a suspicion. */
export interface Clues {
  /** As the mechanic said, or else as the suspicion's own words read. */
  readonly kinds: readonly Defect[];
  readonly isKindSaid: boolean;
  /** Symptoms that the suspicion's own words name. */
  readonly own: readonly Symptom[];
  /** What the owner said of the machine. */
  readonly complaint: readonly Symptom[];
}

/** A kind that is said settles it; where none is, words are read for what they may mean. */
export function cluesOf({ what, defect }: Pick<Suspicion, 'what' | 'defect'>, complaint: string): Clues {
  const said = defectOf(defect);
  if (defect !== null) return { kinds: said === null ? [] : [said], isKindSaid: true, own: [], complaint: [] };
  const kinds = defects.filter((kind: Defect) => says(what, [kind.name.toLowerCase(), ...(kind.said ?? [])]));
  return { kinds, isKindSaid: false, own: symptomsIn(what), complaint: symptomsIn(complaint) };
}
