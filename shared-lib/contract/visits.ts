import { z } from 'zod';
import type { CalibratedPlane } from '../measuring/calibrated-plane.ts';
import type { MarkSize } from '../measuring/mark-size.ts';
import type { Finding, FindingLink, FindingProof } from '../model/finding.ts';
import type { Intake } from '../model/intake.ts';
import type { FittedPart, LayoutVersion, Machine, Meter, Owner } from '../model/machine.ts';
import type { Mark } from '../model/mark.ts';
import type { Reading } from '../model/reading.ts';
import type { Instrument } from '../model/shop.ts';
import type { Shot } from '../model/shot.ts';
import { MeterReading, ScopeItem, Use, Visit } from '../model/visit.ts';
import type { VisitChoices } from './choices.ts';
import type { KeptComparison } from './comparisons.ts';
import { change, query, step } from './operation.ts';
import type { ReturnView } from './returning.ts';
import type { Standing } from './standing.ts';
import type { VisitWork } from './work.ts';

/** Everything of one visit, in one answer: what the window draws from. */
export interface VisitRecord {
  readonly visit: Visit;
  readonly machine: Machine;
  readonly layout: LayoutVersion;
  readonly owner: Owner | null;
  readonly meters: readonly Meter[];
  readonly trueHours: number | null;
  readonly scope: readonly ScopeItem[];
  readonly shots: readonly Shot[];
  readonly marks: readonly Mark[];
  /** Oldest first; a newer one of the same plane takes the place of an older. */
  readonly calibrations: readonly CalibratedPlane[];
  /** Of every mark that has a size. */
  readonly sizes: readonly MarkSize[];
  readonly findings: readonly Finding[];
  readonly links: readonly FindingLink[];
  readonly proofs: readonly FindingProof[];
  readonly readings: readonly Reading[];
  readonly standing: Standing;
  /** Absent where nothing was suspected, offered or decided. */
  readonly choices?: VisitChoices;
  /** Absent where nothing was written down of how it was received. */
  readonly intake?: Intake;
  /** Earlier photos laid under this visit's; absent where there are none. */
  readonly comparisons?: readonly KeptComparison[];
  /** Absent where the machine was never here before. */
  readonly before?: ReturnView;
  /** Absent while no work is written down. */
  readonly work?: VisitWork;
  /** Those its readings were taken with; absent where none is named. */
  readonly instruments?: readonly Instrument[];
  /** What went into the machine, then or now; absent where nothing did. */
  readonly fittedParts?: readonly FittedPart[];
}

const id = z.string();

export const visitOperations = {
  'visit.get': query<VisitRecord>()(z.strictObject({ id })),
  /** The first entry of a stay: what the owner says, and the hours as seen. Everything but the machine may follow later. */
  'visit.open': change<VisitRecord>()(
    z.strictObject({
      machineId: id,
      date: z.iso.date(),
      complaint: z.string().max(4000).default(''),
      meter: MeterReading.optional(),
      use: Use.optional(),
      conditions: z.record(z.string(), z.string().max(400)).optional(),
      personId: id.optional(),
      /** What was agreed to look at; proposed from the layout when left out. */
      scope: z
        .array(
          ScopeItem.pick({ path: true }).extend({
            notExaminedBecause: ScopeItem.shape.notExaminedBecause.default(null),
            notApplicableBecause: ScopeItem.shape.notApplicableBecause.default(null),
          }),
        )
        .optional(),
    }),
  ),
  /** Conditions are merged name by name; null takes one away. */
  'visit.change': step<Visit>()(
    Visit.pick({
      complaint: true,
      use: true,
      meter: true,
      date: true,
      currentPart: true,
      leftAtMs: true,
    })
      .partial()
      .extend({ id, conditions: z.record(z.string(), z.string().max(400).nullable()).optional() }),
  ),
  'scope.add': step<ScopeItem>()(z.strictObject({ visitId: id, path: z.string() })),
  'scope.change': step<ScopeItem>()(
    z.strictObject({
      id,
      notExaminedBecause: z.string().max(400).nullable().optional(),
      notApplicableBecause: z.string().max(400).nullable().optional(),
    }),
  ),
  /** One reason for every agreed item that nobody has come to and nobody has answered. */
  'scope.answerRest': step<ScopeItem[]>()(
    z.strictObject({ visitId: id, notExaminedBecause: z.string().trim().min(1).max(400) }),
  ),
  'scope.remove': step<null>()(z.strictObject({ id })),
};
