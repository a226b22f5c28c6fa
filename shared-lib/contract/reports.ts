import { z } from 'zod';
import { change, query } from './operation.ts';

export interface ReportPreview {
  /** One SVG per page, from the very document that prints. Photos stand in it by their `photo://` addresses. */
  readonly pages: readonly string[];
  readonly missing: readonly ReportGap[];
}

/** Something a report still lacks, with the place in the window where it is mended. */
export interface ReportGap {
  readonly what: string;
  readonly at: {
    readonly place: 'visit' | 'finding' | 'shot' | 'machine' | 'shop' | 'scope' | 'decision' | 'before' | 'work';
    readonly id: string;
  };
  /** It must be answered before the report is issued; what need not costs the reader comfort, not knowledge. */
  readonly needed: boolean;
}

/** One issued revision. Its record is frozen; a correction is the next revision. */
export interface IssuedReport {
  readonly id: string;
  readonly number: number;
  readonly revision: number;
  readonly issuedAtMs: number;
  /** SHA-256 of the sealed PDF. */
  readonly pdfDigest: string;
}

/** What a PDF's seal says, and which revision it is. */
export interface VerifiedReport {
  readonly state: 'genuine' | 'altered' | "another shop's" | 'not signed';
  readonly number: number | null;
  readonly revision: number | null;
  /** A later revision of the same report that this shop has issued; null where there is none, or it is not ours. */
  readonly replacedBy: number | null;
}

export const Paper = z.enum(['a4', 'us-letter']);

export const reportOperations = {
  'report.preview': query<ReportPreview>()(z.strictObject({ visitId: z.string(), paper: Paper.optional() })),
  /** Writes the draft PDF where a save dialog's token says. */
  'report.print': query<{ path: string; pages: number; digest: string }>()(
    z.strictObject({ visitId: z.string(), token: z.string(), paper: Paper.optional() }),
  ),
  /** Issued revisions of a visit, first to last. */
  'report.issued': query<IssuedReport[]>()(z.strictObject({ visitId: z.string() })),
  /**
   * Freezes the record, numbers and seals the report, keeps it with the data and writes it where the token says. Refused
   * with the list of what is missing. With `undecidedBecause` it goes out before all is decided, and says so.
   */
  'report.issue': change<IssuedReport & { path: string; pages: number }>()(
    z.strictObject({
      visitId: z.string(),
      token: z.string(),
      paper: Paper.optional(),
      undecidedBecause: z.string().trim().max(400).optional(),
    }),
  ),
  /** Any PDF, named by a token: is it one of ours, untouched? */
  'report.verify': query<VerifiedReport>()(z.strictObject({ token: z.string() })),
};
