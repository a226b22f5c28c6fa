import { z } from 'zod';
import { query } from './operation.ts';

/** Asked through the same `call`, answered by the shell itself: only it can open a dialog. */
export const shellOperations = {
  /** Null when the mechanic closes the dialog. */
  'shell.choosePhotos': query<{ tokens: string[] } | null>()(z.strictObject({})),
  'shell.choosePdf': query<{ token: string } | null>()(z.strictObject({ suggestedName: z.string().max(200) })),
  /** A file of Web Annotations to write, or to read. */
  'shell.saveAnnotations': query<{ token: string } | null>()(z.strictObject({ suggestedName: z.string().max(200) })),
  'shell.chooseAnnotations': query<{ token: string } | null>()(z.strictObject({})),
  /** Opens a PDF that was just written with the system's own reader. */
  'shell.showFile': query<null>()(z.strictObject({ path: z.string() })),
};
