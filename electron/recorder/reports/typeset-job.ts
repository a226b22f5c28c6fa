import type { Report } from '../../../shared-lib/report/model.ts';
import type { ReportSource } from '../../../shared-lib/report/source.ts';
import type { CardSheet } from '../../../shared-lib/wording/card-sheet.ts';

export type PaperName = 'a4' | 'us-letter';

/** A record goes to the typesetter's thread and comes back as a report: a long one takes long to assemble. */
export interface BuildJob {
  readonly make: 'report';
  readonly source: ReportSource;
}

/** What goes to be typeset. Photos are files of the store, by the digest of their original. */
export interface TypesetJob {
  readonly make: 'pdf' | 'preview';
  readonly report: Report;
  readonly paper: PaperName;
  readonly photoFiles: ReadonlyMap<string, string>;
}

/** The sheet with the calibration cards. */
export interface CardJob {
  readonly make: 'card';
  readonly sheet: CardSheet;
  readonly paper: PaperName;
}

export type ReportJob = { readonly id: number } & (BuildJob | TypesetJob | CardJob);

export type TypesetAnswer =
  | { readonly id: number; readonly report: Report }
  | { readonly id: number; readonly pdf: Uint8Array<ArrayBuffer>; readonly pages: number }
  | { readonly id: number; readonly svgs: readonly string[] }
  | { readonly id: number; readonly failed: string };
