import { z } from 'zod';
import type { DispositionIs } from '../choices/records.ts';
import { FittedPart } from '../model/machine.ts';
import { HandOver, Outcome, WorkItem, WorkPart } from '../work/records.ts';
import type { LeftLine, WillReturn } from './choices.ts';
import { query, step } from './operation.ts';

/** The work of a visit against the choice that was taken, and what it leaves. */
export interface VisitWork {
  readonly items: readonly WorkItem[];
  readonly handOver: HandOver | null;
  /** What the choice that was taken sets out to do and no work speaks of yet. */
  readonly planned: readonly { readonly findingId: string; readonly is: DispositionIs }[];
  /** Done or done in part, with nothing that shows it. */
  readonly unproven: readonly string[];
  readonly left: readonly LeftLine[];
  readonly doNotOperateLeft: readonly string[];
  readonly willReturn: readonly WillReturn[];
}

const id = z.string();
const words = WorkItem.shape.words.trim();

export const workOperations = {
  'work.get': query<VisitWork>()(z.strictObject({ visitId: id })),
  /** For a ranked finding of the same visit, or for none. A finding has one entry of work. */
  'work.add': step<WorkItem>()(
    z.strictObject({
      visitId: id,
      findingId: id.optional(),
      words: words.default(''),
      outcome: Outcome.default('done'),
      because: WorkItem.shape.because.trim().default(''),
    }),
  ),
  'work.change': step<WorkItem>()(
    z.strictObject({
      id,
      words: words.optional(),
      outcome: Outcome.optional(),
      because: WorkItem.shape.because.trim().optional(),
    }),
  ),
  'work.remove': step<null>()(z.strictObject({ id })),
  /** With `fit` it stands on the machine's list of fitted parts from this visit on, in the place of what was there. */
  'work.addPart': step<WorkItem>()(
    z.strictObject({
      id,
      words: WorkPart.shape.words.trim().min(1),
      amount: WorkPart.shape.amount.default('1'),
      fit: FittedPart.pick({ path: true, kind: true }).optional(),
    }),
  ),
  'work.removePart': step<WorkItem>()(z.strictObject({ id, partId: id })),
  /** A reading or a photo of the same visit shows that it holds. */
  'work.prove': step<WorkItem>()(
    z
      .strictObject({ id, readingId: id.optional(), shotId: id.optional() })
      .refine(({ readingId, shotId }) => (readingId === undefined) !== (shotId === undefined), {
        message: 'a reading or a photo is needed',
        path: ['readingId'],
      }),
  ),
  'work.unprove': step<WorkItem>()(z.strictObject({ id, proofId: id })),
  'handOver.write': step<HandOver>()(HandOver.partial().extend({ visitId: id })),
};
