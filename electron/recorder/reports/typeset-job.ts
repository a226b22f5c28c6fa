import type { Report } from '../../../shared-lib/report/model.ts';

export type PaperName = 'a4' | 'us-letter';

/** What goes to the typesetter's thread. Photos are files of the store, by the digest of their original. */
export interface TypesetJob {
  readonly id: number;
  readonly make: 'pdf' | 'preview';
  readonly report: Report;
  readonly paper: PaperName;
  readonly photoFiles: ReadonlyMap<string, string>;
}

export type TypesetAnswer =
  | { readonly id: number; readonly pdf: Uint8Array; readonly pages: number }
  | { readonly id: number; readonly svgs: readonly string[] }
  | { readonly id: number; readonly failed: string };
