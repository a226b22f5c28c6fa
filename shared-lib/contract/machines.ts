import { z } from 'zod';
import { Layout } from '../model/layout.ts';
import {
  FittedPart,
  type LayoutVersion,
  type Machine,
  MachinePlate,
  Meter,
  type Owner,
  Owner as OwnerSchema,
} from '../model/machine.ts';
import type { Visit } from '../model/visit.ts';
import { change, query, step } from './operation.ts';
import type { StandingTag } from './standing.ts';

/** A machine as it stands on the floor. */
export interface FloorMachine {
  readonly machine: Machine;
  readonly ownerName: string | null;
  /** True hours at the newest visit; null while no meter was read. */
  readonly hours: number | null;
  readonly hoursAreEstimate: boolean;
  readonly visitId: string | null;
  readonly visitDate: string | null;
  readonly visitOpen: boolean;
  readonly complaint: string;
  /** The newest visit's tags, in the order of its standing. */
  readonly tags: readonly StandingTag[];
  readonly doNotOperate: boolean;
  readonly unfinishedFindings: number;
  readonly shots: number;
  /** What the search found it by: words, and the visit or finding they stand in; null without a search. */
  readonly found: { readonly words: string; readonly visitId: string | null; readonly findingId: string | null } | null;
  /** When anything of it last changed: the floor stands in this order. */
  readonly touchedAtMs: number;
}

export interface MachineVisit {
  readonly visit: Visit;
  readonly trueHours: number | null;
  readonly tags: readonly StandingTag[];
  readonly shots: number;
}

export interface MachinePage {
  readonly machine: Machine;
  readonly layout: LayoutVersion;
  readonly owner: Owner | null;
  readonly meters: readonly Meter[];
  readonly fittedParts: readonly FittedPart[];
  readonly visits: readonly MachineVisit[];
}

const id = z.string();

export const machineOperations = {
  /**
   * Machines that stand here or have gone out, as last touched. `find` asks the whole record: plates, owners, complaints,
   * findings and places as they are spoken, serials by fragment; best first. At most `most`, where it is given.
   */
  'machine.floor': query<FloorMachine[]>()(
    z.strictObject({ find: z.string().max(200).optional(), most: z.int().positive().optional() }),
  ),
  'machine.page': query<MachinePage>()(z.strictObject({ id })),
  'machine.add': change<MachinePage>()(
    z.strictObject({
      plate: MachinePlate,
      layout: Layout,
      owner: OwnerSchema.omit({ id: true }).optional(),
      meter: Meter.pick({ name: true, offsetHours: true }).optional(),
    }),
  ),
  'machine.change': change<MachinePage>()(z.strictObject({ id, plate: MachinePlate.partial() })),
  /** Refused with the list of places that the new layout would orphan. */
  'machine.setLayout': change<MachinePage>()(z.strictObject({ id, layout: Layout })),
  'machine.setOwner': change<MachinePage>()(
    z.strictObject({ id, owner: OwnerSchema.omit({ id: true }), from: z.iso.date().optional() }),
  ),
  'owner.change': change<Owner>()(OwnerSchema.omit({ id: true }).partial().extend({ id })),
  /** A replaced meter ends the one before it; `offsetHours` makes its readings true hours. */
  'meter.add': change<Meter>()(Meter.omit({ id: true })),
  'meter.change': change<Meter>()(Meter.omit({ id: true, machineId: true }).partial().extend({ id })),
  /** Ends every comparison across it. What stood at the very same place comes out with it. */
  'part.fit': step<FittedPart>()(FittedPart.omit({ id: true, removedVisitId: true, removedHours: true })),
  /** Puts right what was written down wrongly. */
  'part.change': step<FittedPart>()(FittedPart.omit({ id: true, machineId: true }).partial().extend({ id })),
  /** It was never fitted. */
  'part.strike': step<null>()(z.strictObject({ id })),
  'part.remove': step<FittedPart>()(z.strictObject({ id, visitId: id, hours: z.number().nullable() })),
};
