import { chosenOf } from '../choices/choices-of.ts';
import type { Choice, Decision } from '../choices/records.ts';
import type { Standing } from '../contract/standing.ts';
import type { Mark } from '../model/mark.ts';
import type { Shot } from '../model/shot.ts';
import type { StandingInput } from '../ranking/standing.ts';
import type { WorkItem } from '../work/records.ts';
import type { ReturnAnswer } from './answer.ts';

/** One visit of the machine, with all but its photos. */
export interface VisitNow {
  readonly id: string;
  readonly date: string;
  readonly trueHours: number | null;
  readonly conditions: Readonly<Record<string, string>>;
  readonly input: StandingInput;
  readonly standing: Standing;
  readonly decisions: readonly Decision[];
  readonly choices: readonly Choice[];
  readonly work: readonly WorkItem[];
  readonly answers: readonly ReturnAnswer[];
}

/** An earlier one, with all that a later one asks of it. */
export interface VisitThen extends VisitNow {
  readonly shots: readonly Shot[];
  readonly marks: readonly Mark[];
}

/** What was mended in a visit: the work that is written down, and where none is, what the choice taken sets out to mend. */
export function mendedIn({
  decisions,
  choices,
  work,
}: Pick<VisitThen, 'decisions' | 'choices' | 'work'>): ReadonlySet<string> {
  if (work.length > 0)
    return new Set(work.filter(({ outcome }) => outcome === 'done').flatMap(({ findingId }) => findingId ?? []));
  const taken = choices.find(({ id }) => id === chosenOf(decisions));
  return new Set(taken?.dispositions.filter(({ is }) => is === 'fixed').map(({ findingId }) => findingId));
}
