import { z } from 'zod';
import {
  Certainty,
  type Finding,
  FindingFields,
  type FindingLink,
  type FindingProof,
  LinkEvidence,
} from '../model/finding.ts';
import { query, step } from './operation.ts';
import type { Standing } from './standing.ts';

const id = z.string();

/** A typed quantity as the window sends it; the recorder reads number and unit from the text. */
export const TypedQuantity = z.strictObject({
  typed: z.string().max(200),
  origin: z.enum(['measured', 'photo', 'estimate', 'owner-reported']).default('measured'),
  how: z.string().max(200).optional(),
});

/** A quantity read off a photo: the recorder takes value and uncertainty from the mark, never from the window. */
export const QuantityFromMark = z.strictObject({
  fromMark: z.string(),
  measure: z.enum(['size', 'width', 'angle', 'coverage']).default('size'),
});

const fields = FindingFields.omit({ quantities: true })
  .partial()
  .extend({ quantities: z.record(z.string(), z.union([TypedQuantity, QuantityFromMark]).nullable()).optional() });

export const findingOperations = {
  /** A half-filled finding is legal. A mark that has no finding yet may be handed over with it. */
  'finding.add': step<Finding>()(
    fields.extend({
      visitId: id,
      markId: id.optional(),
      shotId: id.optional(),
      readingId: id.optional(),
      trackOf: id.optional(),
    }),
  ),
  /** Quantities are merged key by key; null takes one away. */
  'finding.change': step<Finding>()(fields.extend({ id })),
  'finding.bin': step<null>()(z.strictObject({ id })),
  'finding.restore': step<null>()(z.strictObject({ id })),
  /** The earlier conclusion stays, struck through; the new one names it and says why. */
  'finding.supersede': step<Finding>()(z.strictObject({ id, because: z.string().trim().min(1).max(400) })),
  'finding.link': step<FindingLink>()(
    z.strictObject({
      fromId: id,
      toId: id,
      certainty: Certainty.default('suspected'),
      join: z.enum(['and', 'or']).default('and'),
      evidence: z.string().max(1000).default(''),
      shownBy: z.array(LinkEvidence).max(20).default([]),
    }),
  ),
  /** How sure it is, how it is joined with others, and what it rests on. */
  'finding.changeLink': step<FindingLink>()(
    z.strictObject({
      id,
      certainty: Certainty.optional(),
      join: z.enum(['and', 'or']).optional(),
      evidence: z.string().max(1000).optional(),
      shownBy: z.array(LinkEvidence).max(20).optional(),
    }),
  ),
  'finding.unlink': step<null>()(z.strictObject({ id })),
  /** A shot or a reading shows it, with or without a mark. */
  'finding.showBy': step<FindingProof>()(
    z.strictObject({ findingId: id, shotId: id.optional(), readingId: id.optional() }),
  ),
  'finding.unshow': step<null>()(z.strictObject({ id })),
  /** Moves a line of the standing by hand, to stand before another; null puts it back where it was computed. */
  'finding.move': step<Finding>()(
    z.strictObject({
      id,
      to: z.strictObject({ beforeFindingId: id.nullable(), reason: z.string().trim().min(1).max(400) }).nullable(),
    }),
  ),
  /** Takes one up: the same number, place and judgements. What showed it then does not show it now. */
  'finding.carry': step<Finding>()(z.strictObject({ visitId: id, findingId: id })),
  'standing.get': query<Standing>()(z.strictObject({ visitId: id })),
  /** Defect ids by how lately they were used, newest first. */
  'finding.lastUsed': query<{ defects: string[]; action: string | null }>()(z.strictObject({})),
};
