import { z } from 'zod';

/** A point in pixels of the upright original; pixel centres at whole numbers, x right, y down. */
export const ImagePoint = z.strictObject({ x: z.number(), y: z.number() });
export type ImagePoint = z.infer<typeof ImagePoint>;

export const shapeNames = ['point', 'line', 'path', 'area', 'arrow', 'span'] as const;
export const ShapeName = z.enum(shapeNames);
export type ShapeName = z.infer<typeof ShapeName>;

/** How many points each shape has: fewest and most. A point has one, a line, arrow or span two, a path two or more, an area three or more. */
export const shapePointCounts: Record<ShapeName, { fewest: number; most: number }> = {
  point: { fewest: 1, most: 1 },
  line: { fewest: 2, most: 2 },
  path: { fewest: 2, most: 5000 },
  area: { fewest: 3, most: 5000 },
  arrow: { fewest: 2, most: 2 },
  span: { fewest: 2, most: 2 },
};

/** What a tracer read along a path, beside its points. */
export const TraceReading = z.strictObject({
  /** Per point: full width at half depth, px; null where the line does not stand out. */
  widthsPx: z.array(z.number().nonnegative().nullable()).max(5000),
  /** Stretches, from point to point by index, where the way is a guess. */
  unsure: z.array(z.tuple([z.int().nonnegative(), z.int().nonnegative()])).max(2500),
  /** Why a person has to look; empty for a sure trace. */
  doubts: z.array(z.string().max(60)).max(20),
});
export type TraceReading = z.infer<typeof TraceReading>;

/** What a grower read along an outline, beside its points. */
export const GrowReading = z.strictObject({
  /** Stretches, from point to point by index, where the border is hardly to be seen. */
  unsure: z.array(z.tuple([z.int().nonnegative(), z.int().nonnegative()])).max(2500),
  /** Why a person has to look; empty for a sure outline. */
  doubts: z.array(z.string().max(60)).max(20),
  /** How surely the border lies where it is drawn, px of the photo. */
  borderPx: z.number().positive().max(100),
});
export type GrowReading = z.infer<typeof GrowReading>;

export const MarkOrigin = z.discriminatedUnion('by', [
  z.strictObject({
    by: z.literal('hand'),
    /** Standard uncertainty of each point along x and along y, px of the photo: how far off the photo was seen. */
    pointPx: z.number().positive().max(100).optional(),
  }),
  z.strictObject({
    by: z.literal('traced'),
    version: z.string(),
    /** `points`: start, way points, end as they were set; `scribble`: a rough line; `pointPx`: of the ends. */
    parameters: z.record(z.string(), z.unknown()),
    reading: TraceReading.optional(),
  }),
  z.strictObject({
    by: z.literal('grown'),
    version: z.string(),
    /** `points`: the spot inside, or a line over the patch. */
    parameters: z.record(z.string(), z.unknown()),
    reading: GrowReading,
  }),
  z.strictObject({
    by: z.literal('carried'),
    fromMarkId: z.string(),
    /** A person has set it where it is today, or said that it is there: until then it tells nothing of today. */
    isSetAnew: z.boolean().optional(),
    pointPx: z.number().positive().max(100).optional(),
  }),
  z.strictObject({ by: z.literal('imported'), from: z.string() }),
]);
export type MarkOrigin = z.infer<typeof MarkOrigin>;

export const Mark = z.strictObject({
  id: z.string(),
  shotId: z.string(),
  findingId: z.string().nullable(),
  shape: ShapeName,
  points: z.array(ImagePoint).min(1).max(5000),
  role: z.enum(['finding', 'calibration', 'matching', 'note']),
  origin: MarkOrigin,
  calibrationId: z.string().nullable(),
  /** Where the stamped tag stands, when the mechanic moved it. */
  tagAt: ImagePoint.nullable(),
  note: z.string().max(1000),
});
export type Mark = z.infer<typeof Mark>;

/** One per named plane of a shot; immutable. */
export const Calibration = z.strictObject({
  id: z.string(),
  shotId: z.string(),
  plane: z.string().max(200),
  method: z.enum(['known-length', 'known-circle', 'known-points']),
  body: z.record(z.string(), z.unknown()),
});
export type Calibration = z.infer<typeof Calibration>;
