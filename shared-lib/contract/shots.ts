import { z } from 'zod';
import { Mark, ShapeName } from '../model/mark.ts';
import { Shot } from '../model/shot.ts';
import type { WireError } from './errors.ts';
import { change, query, step } from './operation.ts';

/** What became of one offered file. */
export type OfferedFile =
  | {
      readonly name: string;
      readonly accepted: true;
      readonly shotId: string;
      readonly digest: string;
      readonly remark: string | null;
      readonly alreadyHere: boolean;
    }
  | { readonly name: string; readonly accepted: false; readonly error: WireError };

/** An import runs on; `import` events tell its progress and end. */
export interface ImportJob {
  readonly jobId: string;
  readonly files: number;
}

const id = z.string();

export const shotOperations = {
  /** Files are named by one-use tokens that the shell made; a path never comes from the window. */
  'shot.take': step<ImportJob>()(z.strictObject({ visitId: id, tokens: z.array(z.string()).min(1).max(2000) })),
  /** A pasted picture, as bytes. */
  'shot.paste': step<ImportJob>()(
    z.strictObject({ visitId: id, name: z.string().max(300), bytes: z.instanceof(Uint8Array) }),
  ),
  'shot.stopTaking': change<null>()(z.strictObject({ jobId: id })),
  'shot.change': step<Shot>()(
    Shot.pick({ caption: true, component: true, seenFrom: true, takenBy: true, taken: true }).partial().extend({ id }),
  ),
  'shot.bin': step<null>()(z.strictObject({ id })),
  'shot.restore': step<null>()(z.strictObject({ id })),
  /** Shifts every shot of this visit taken by the camera; the offset is added to what the camera said. */
  'camera.setClock': step<Shot[]>()(
    z.strictObject({
      visitId: id,
      camera: z.string().nullable(),
      offsetMs: z.int().min(-31_622_400_000).max(31_622_400_000),
    }),
  ),
  /** Bytes of a region of a large photo, as a photo:// address at the wanted size. */
  'shot.region': query<{ url: string }>()(
    z.strictObject({
      id,
      x: z.int().nonnegative(),
      y: z.int().nonnegative(),
      width: z.int().positive(),
      height: z.int().positive(),
      /** Longest edge wanted, in pixels. */
      edge: z.int().min(16).max(4096),
    }),
  ),
};

export const markOperations = {
  'mark.add': step<Mark>()(
    Mark.pick({ shotId: true, shape: true, points: true }).extend({
      findingId: Mark.shape.findingId.default(null),
      role: Mark.shape.role.default('finding'),
      origin: Mark.shape.origin.default({ by: 'hand' }),
      note: Mark.shape.note.default(''),
      /** The plane it lies in; left out, the photo's newest one that fits the finding's part. Null: in none of them. */
      calibrationId: Mark.shape.calibrationId.optional(),
    }),
  ),
  'mark.change': step<Mark>()(
    Mark.pick({ points: true, tagAt: true, note: true, findingId: true, role: true, calibrationId: true, origin: true })
      .partial()
      .extend({ id, shape: ShapeName.optional() }),
  ),
  'mark.remove': step<null>()(z.strictObject({ id })),
};
