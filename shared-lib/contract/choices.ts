import { z } from 'zod';
import type { SignalWord } from '../cautions/signal-word.ts';
import type { Cost } from '../choices/money.ts';
import {
  Bears,
  Choice,
  type ChoiceDisposition,
  CostLine,
  Decision,
  DecisionKind,
  DispositionIs,
  JudgedAfter,
  Money,
  Step,
  Suspicion,
} from '../choices/records.ts';
import { change, query, step } from './operation.ts';
import type { RiskLevel, StandingTag, Tier } from './standing.ts';

const id = z.string();

/** A finding that a choice does not mend, ranked among what it leaves. */
export interface LeftLine extends StandingTag {
  readonly title: string;
  readonly level: RiskLevel;
}

/** A finding that is mended while a cause of it stays. */
export interface WillReturn {
  readonly findingId: string;
  readonly rootsLeft: readonly string[];
}

/** One choice with all that follows from it. Nothing of it is stored but the choice itself. */
export interface ChoiceView extends Choice {
  /** One for every ranked finding of the visit, in the order of the standing. */
  readonly dispositions: ChoiceDisposition[];
  /** Ranked findings that nobody has disposed of in this choice: counted as left, said by nobody. */
  readonly unspoken: readonly string[];
  readonly left: readonly LeftLine[];
  readonly highestLevelLeft: RiskLevel | 'none';
  readonly doNotOperateLeft: readonly string[];
  readonly willReturn: readonly WillReturn[];
  /** For whoever uses the machine afterwards. */
  readonly cautions: readonly { readonly id: string; readonly word: SignalWord; readonly text: string }[];
  readonly cost: Cost;
  /** The owner has taken it. */
  readonly chosen: boolean;
}

export interface DecisionView extends Decision {
  /** Whether what was told then is what stands now; a choice cannot change once it is decided on. */
  readonly covers: boolean;
}

/** What an earlier visit told of a condition, beside what stands now. */
export interface CarriedOver {
  readonly findingId: string;
  readonly firstDate: string;
  readonly timesTold: number;
  readonly rankBefore: number | null;
  readonly rankNow: number | null;
  readonly tierBefore: Tier | null;
  readonly tierNow: Tier | null;
  readonly newDecision: boolean;
  /** What was decided of it then, newest first. */
  readonly decidedBefore: readonly (Pick<Decision, 'decision' | 'completed' | 'words' | 'by'> & {
    readonly date: string;
  })[];
}

export interface VisitChoices {
  readonly money: Money;
  readonly suspicions: readonly Suspicion[];
  readonly steps: readonly Step[];
  /** What leaves most comes first; none is put forward. */
  readonly choices: readonly ChoiceView[];
  /** In the order they were taken. */
  readonly decisions: readonly DecisionView[];
  /** Ranked findings without a decision, in the order of the standing. */
  readonly undecided: readonly string[];
  readonly carriedOver: readonly CarriedOver[];
}

const stepFields = Step.omit({ id: true }).extend({ at: Step.shape.at.default(null) });
const costFields = CostLine.omit({ id: true });
const reason = z.string().trim().min(1).max(400);

export const choiceOperations = {
  'choices.get': query<VisitChoices>()(z.strictObject({ visitId: id })),
  'suspicion.add': step<Suspicion>()(
    Suspicion.pick({ what: true }).extend({
      visitId: id,
      at: Suspicion.shape.at.default(null),
      defect: Suspicion.shape.defect.default(null),
    }),
  ),
  'suspicion.change': step<Suspicion>()(
    Suspicion.pick({ what: true, at: true, defect: true }).partial().extend({ id }),
  ),
  /** Given up, or (null) taken up again, and why. What bore on it stays, and so does every turn before. */
  'suspicion.close': step<Suspicion>()(
    z.strictObject({ id, because: reason.nullable(), again: z.string().trim().max(400).default('') }),
  ),
  /** It was so: a finding of the same visit that stands as confirmed shows it. */
  'suspicion.find': step<Suspicion>()(z.strictObject({ id, findingId: id })),
  /**
   * A finding, an observation or a reading of the same visit bears on it. Said again with the same word it is the reason
   * that changes; with another word the earlier one stays, and this one counts.
   */
  'suspicion.bear': step<Suspicion>()(
    z
      .strictObject({
        id,
        findingId: id.optional(),
        readingId: id.optional(),
        bears: Bears,
        because: z.string().max(400).default(''),
      })
      .refine(({ findingId, readingId }) => (findingId === undefined) !== (readingId === undefined), {
        message: 'a finding or a reading is needed',
        path: ['findingId'],
      }),
  ),
  'visitStep.add': step<Step>()(stepFields.extend({ visitId: id })),
  'visitStep.remove': step<null>()(z.strictObject({ id })),
  /** Currency and tax of all choices of a visit. */
  'money.set': step<Money>()(Money.partial().extend({ visitId: id })),
  'choice.add': step<Choice>()(
    Choice.pick({ name: true }).extend({
      visitId: id,
      conditions: Choice.shape.conditions.default(''),
      holdPoints: Choice.shape.holdPoints.default(''),
    }),
  ),
  'choice.change': step<Choice>()(
    Choice.pick({ name: true, conditions: true, holdPoints: true }).partial().extend({ id }),
  ),
  'choice.remove': step<null>()(z.strictObject({ id })),
  /** What a choice does to one ranked finding of its own visit. */
  'choice.dispose': step<Choice>()(
    z.strictObject({
      id,
      findingId: id,
      is: DispositionIs,
      after: JudgedAfter.nullable().default(null),
      why: z.string().max(400).default(''),
    }),
  ),
  'choice.addStep': step<Choice>()(stepFields.extend({ id })),
  'choice.removeStep': step<Choice>()(z.strictObject({ id, stepId: id })),
  'choice.addCost': step<Choice>()(costFields.extend({ id })),
  'choice.changeCost': step<Choice>()(costFields.partial().extend({ id, costId: id })),
  'choice.removeCost': step<Choice>()(z.strictObject({ id, costId: id })),
  /** Written once, of a finding or of a choice; refused without the statement that was read back. Never undone. */
  'decision.take': change<Decision>()(
    z
      .strictObject({
        visitId: id,
        findingId: id.optional(),
        choiceId: id.optional(),
        decision: DecisionKind,
        completed: Decision.shape.completed.default(''),
        words: Decision.shape.words.default(''),
        by: Decision.shape.by.trim().min(1),
        capacity: Decision.shape.capacity.default(''),
        howTold: Decision.shape.howTold.default(''),
        shownShotIds: Decision.shape.shownShotIds.default([]),
        statement: z.string().trim().max(8000).default(''),
        signature: Decision.shape.signature.default(null),
        unsignedBecause: Decision.shape.unsignedBecause.default(''),
      })
      .refine(({ findingId, choiceId }) => (findingId === undefined) !== (choiceId === undefined), {
        message: 'a finding or a choice is needed',
        path: ['findingId'],
      })
      .refine(({ decision, completed }) => decision !== 'accepted-with-changes' || completed.trim() !== '', {
        message: 'the change is not said',
        path: ['completed'],
      }),
  ),
};
