import { z } from 'zod';
import { query } from './operation.ts';

export interface ReportPreview {
  /** One SVG per page, from the very document that prints. */
  readonly pages: readonly string[];
  readonly missing: readonly ReportGap[];
}

/** Something a report still lacks, with the place in the window where it is mended. */
export interface ReportGap {
  readonly what: string;
  readonly at: { readonly place: 'visit' | 'finding' | 'shot' | 'machine' | 'shop' | 'scope'; readonly id: string };
}

export const Paper = z.enum(['a4', 'us-letter']);

export const reportOperations = {
  'report.preview': query<ReportPreview>()(z.strictObject({ visitId: z.string(), paper: Paper.optional() })),
  /** Writes the draft PDF where a save dialog's token says. */
  'report.print': query<{ path: string; pages: number; digest: string }>()(
    z.strictObject({ visitId: z.string(), token: z.string(), paper: Paper.optional() }),
  ),
};
