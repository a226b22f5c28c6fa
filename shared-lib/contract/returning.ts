import { z } from 'zod';
import type { Decision } from '../choices/records.ts';
import type { Finding } from '../model/finding.ts';
import { FittedPart } from '../model/machine.ts';
import { AnswerKind, type ReturnAnswer } from '../returning/answer.ts';
import { query, step } from './operation.ts';
import type { StandingTag } from './standing.ts';

/** Two numbers of one question, then and now, in words and in the shop's units. */
export interface Compared {
  readonly what: string;
  readonly was: string;
  readonly now: string;
  /** `+9 ± 1 mm, 4.3 mm per 100 h`, or why nothing can be told. */
  readonly change: string;
  readonly state: 'worse' | 'better' | 'changed' | 'no-change-told' | 'not-comparable';
}

/** A size that a condition carries, by the id of its quantity. */
export interface ComparedSize extends Compared {
  readonly quantity: string;
}

export interface ComparedReading extends Compared {
  readonly place: string;
  readonly readingId: string;
  readonly date: string;
}

/** A condition of an earlier visit that is not closed, as this visit meets it. */
export interface OldFinding {
  readonly tag: StandingTag;
  readonly title: string;
  readonly words: string;
  readonly visitId: string;
  readonly date: string;
  readonly trueHours: number | null;
  readonly hoursSince: number | null;
  readonly firstDate: string;
  readonly timesTold: number;
  /** The last word on it, if there was one. */
  readonly decided: Pick<Decision, 'decision' | 'completed' | 'words' | 'by'> | null;
  /** It was mended here since. */
  readonly mended: boolean;
  /** Whether work that was written down says so, not the plan alone; a record made before it was told apart has none. */
  readonly mendedOnRecord?: boolean;
  /** Its time has come, in words; null where it has not or nobody can tell. */
  readonly due: string | null;
  /** The newest photo that shows it: one with a mark of it first. */
  readonly photo: {
    readonly visitId: string;
    readonly date: string;
    readonly shotId: string;
    readonly digest: string;
    readonly sequence: number;
  } | null;
  readonly answer: ReturnAnswer | null;
  /** The finding of this visit that goes on with it. */
  readonly takenUpAs: string | null;
  readonly sizes: readonly ComparedSize[];
  /** Findings of this visit at the same place that go on with nothing yet. */
  readonly maybe: readonly { readonly findingId: string; readonly number: number; readonly title: string }[];
}

/** The same part failed in the same way after a repair of ours. */
export interface RepeatFailure {
  readonly findingId: string;
  readonly number: number;
  readonly earlierNumber: number;
  readonly mendedOn: string;
  readonly hoursSince: number | null;
  /** Causes of it then that were not mended. */
  readonly rootsLeft: readonly string[];
}

export interface ReturnView {
  /** The visit just before. */
  readonly visitId: string;
  readonly date: string;
  readonly trueHours: number | null;
  readonly hoursSince: number | null;
  /** The worst first. */
  readonly old: readonly OldFinding[];
  readonly readings: readonly ComparedReading[];
  readonly repeats: readonly RepeatFailure[];
}

const id = z.string();

export const returnOperations = {
  /** What earlier visits left, and what has become of it; null where the machine was never here before. */
  'return.get': query<ReturnView | null>()(z.strictObject({ visitId: id })),
  /**
   * Answers one old finding. One that still stands is taken up under its number (or joined to the finding of this visit
   * named by `asFindingId`); what showed it then does not show it now.
   */
  'return.answer': step<{ answer: ReturnAnswer; finding: Finding | null }>()(
    z
      .strictObject({
        visitId: id,
        findingId: id,
        answer: AnswerKind,
        because: z.string().trim().max(400).default(''),
        asFindingId: id.optional(),
        /** With 'part-replaced': what was fitted, noted with the machine so that comparisons end there. */
        part: FittedPart.shape.kind.optional(),
      })
      .refine(({ answer, because }) => answer !== 'not-re-examined' || because !== '', {
        message: 'why it was not looked at again is not said',
        path: ['because'],
      }),
  ),
};
