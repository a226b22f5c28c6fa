import { z } from 'zod';
import { Moment } from './time.ts';

/** A file's untouched bytes. Width and height are those of the upright picture. */
export const Original = z.strictObject({
  digest: z.string().regex(/^[0-9a-f]{64}$/),
  byteLength: z.int().positive(),
  mediaType: z.string(),
  width: z.int().positive(),
  height: z.int().positive(),
  /** EXIF 1-8 still to be applied by whoever decodes the bytes; 1 where the decoder already turns it (HEIC). */
  orientation: z.int().min(1).max(8),
  camera: z.string().nullable(),
  /** What the taker of the photo should know of the file: damaged, first of 3 pages. */
  remark: z.string().nullable(),
});
export type Original = z.infer<typeof Original>;

/** An original taken into a visit. Captions, marks and calibrations belong to it, never to the bytes. */
export const Shot = z.strictObject({
  id: z.string(),
  visitId: z.string(),
  digest: Original.shape.digest,
  /** The number a mechanic calls it by: photo 14. Never given twice in a visit. */
  sequence: z.int().min(1),
  offeredName: z.string(),
  caption: z.string().max(1000),
  component: z.string().nullable(),
  seenFrom: z.string().max(200),
  /** Null where neither camera nor mechanic has said. */
  taken: Moment.nullable(),
  /** EXIF's local text where it names no zone; it becomes an instant once the clock is set. */
  takenLocal: z.string().nullable(),
  camera: z.string().nullable(),
  clockOffsetMs: z.int(),
  takenBy: z.string().nullable(),
  width: z.int().positive(),
  height: z.int().positive(),
  mediaType: z.string(),
  remark: z.string().nullable(),
  binned: z.boolean(),
});
export type Shot = z.infer<typeof Shot>;
