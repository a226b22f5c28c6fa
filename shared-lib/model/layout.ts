import { z } from 'zod';

/** What a mechanic says of a machine so that its component tree can be made. Stored versioned; a finding keeps the version it was placed on. */
export const Layout = z.strictObject({
  engine: z.strictObject({
    arrangement: z.enum(['inline', 'V', 'opposed']),
    cylinders: z.int().min(1).max(24),
    heads: z.int().min(1).max(24),
    valves: z.strictObject({ intake: z.int().min(1).max(3), exhaust: z.int().min(1).max(3) }),
    liner: z.enum(['parent', 'dry', 'wet', 'unknown']),
    linerStop: z.enum(['top-flange', 'mid-stop', 'bottom-stop']).optional(),
    /** As typed, with its unit: `"105 mm"`. */
    bore: z.string().optional(),
    /** Seen from the free (fan) end. */
    rotation: z.enum(['CW', 'CCW']),
    /** How the engine stands in the machine: 0 when its free end faces the direction of travel. */
    heading: z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]),
    fuel: z.enum(['diesel', 'petrol', 'LPG', 'gas']),
    cooling: z.enum(['liquid', 'air', 'oil']),
  }),
  /** The index in a place is the number of this scheme; the ordinal from the free end is computed from it. */
  numbering: z.strictObject({
    scheme: z.enum(['free-first', 'drive-first', 'list']),
    list: z
      .array(
        z.strictObject({
          number: z.int().min(1),
          bank: z.enum(['L', 'R', 'A', 'B']).optional(),
          fromFreeEnd: z.int().min(1),
        }),
      )
      .optional(),
  }),
  /** Function words of the hydraulic cylinders and hoses: boom, blade, jack ... */
  hydraulics: z.array(z.string().regex(/^[a-z]+$/)),
  volts: z.union([z.literal(6), z.literal(12), z.literal(24), z.literal(48)]),
  articulated: z.boolean().optional(),
  stationary: z.boolean().optional(),
  /** Optional parts this machine has, as paths, where a caution or a named condition asks. */
  has: z.array(z.string()).optional(),
  /** What a general component is for when its code does not say: `{"ELEC/SW.1": "shut-down"}`. */
  roles: z
    .record(z.string(), z.enum(['shut-down', 'interlock', 'guard', 'stop-control', 'lift-structure', 'hook']))
    .optional(),
});
export type Layout = z.infer<typeof Layout>;
