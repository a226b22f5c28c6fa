import { z } from 'zod';
import type { MarkCollection } from '../annotations/collection.ts';
import type { WireError } from './errors.ts';
import { query, step } from './operation.ts';

/** What became of the annotations of a file. */
export interface ImportedMarks {
  readonly added: number;
  /** Marks that are here as the file has them. */
  readonly alreadyHere: number;
  /** Marks that were changed here since; they stay as they are. */
  readonly changedHere: number;
  readonly refused: readonly { readonly id: string; readonly error: WireError }[];
}

const of = {
  visitId: z.string(),
  /** One photo alone. */
  shotId: z.string().optional(),
};

export const annotationOperations = {
  /** The marks as W3C Web Annotations. */
  'annotations.get': query<MarkCollection>()(z.strictObject(of)),
  /** The same, written where a save dialog's token says. */
  'annotations.export': query<{ path: string; marks: number }>()(z.strictObject({ ...of, token: z.string() })),
  /**
   * Marks out of a file, ours unchanged. Each finds its photo by the digest of its bytes; one that names its photo another
   * way goes to the photo that is named here.
   */
  'annotations.import': step<ImportedMarks>()(z.strictObject({ ...of, token: z.string() })),
};
