import { z } from 'zod';
import { Layout } from './layout.ts';

const text = (max: number) => z.string().trim().max(max);

/** The identity plate, as the mechanic reads it. Only the kind of machine is needed to begin. */
export const MachinePlate = z.strictObject({
  kind: text(120).min(1),
  year: text(20).optional(),
  serial: text(80),
  engineSerial: text(80).optional(),
  note: text(500).optional(),
  /** Where it stands in the shop: bay 2, yard. */
  bay: text(60).optional(),
});
export type MachinePlate = z.infer<typeof MachinePlate>;

export const Machine = MachinePlate.extend({ id: z.string(), createdAtMs: z.int() });
export type Machine = z.infer<typeof Machine>;

export const Owner = z.strictObject({
  id: z.string(),
  name: text(200).min(1),
  kind: z.enum(['person', 'company']),
  capacity: text(120),
  place: text(200).optional(),
  phone: text(60).optional(),
  note: text(500).optional(),
});
export type Owner = z.infer<typeof Owner>;

/** An hour meter in its time on the machine. True hours are reading + offset. */
export const Meter = z.strictObject({
  id: z.string(),
  machineId: z.string(),
  name: text(60),
  offsetHours: z.number(),
  from: z.iso.date().nullable(),
  until: z.iso.date().nullable(),
  dead: z.boolean(),
});
export type Meter = z.infer<typeof Meter>;

/** A part whose change ends every comparison across it. */
export const FittedPart = z.strictObject({
  id: z.string(),
  machineId: z.string(),
  path: z.string(),
  kind: z.enum(['new', 'used', 'donor']),
  fittedVisitId: z.string().nullable(),
  fittedHours: z.number().nullable(),
  removedVisitId: z.string().nullable(),
  removedHours: z.number().nullable(),
});
export type FittedPart = z.infer<typeof FittedPart>;

export const LayoutVersion = z.strictObject({
  id: z.string(),
  machineId: z.string(),
  version: z.int().min(1),
  layout: Layout,
});
export type LayoutVersion = z.infer<typeof LayoutVersion>;
