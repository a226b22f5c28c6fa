import type { Verdict } from '../../../../../shared-lib/model/reading.ts';
import type { SheetInput } from '../../../../../shared-lib/sheets/outcome.ts';

/**
 * Lines that the handbook's worked examples leave out. Each value was worked out beside the project, by the arithmetic in
 * its title from the figures of the source named there or above it; where no source is named the arithmetic is plain
 * geometry, a difference or a share. Limits are common practice, no source, unless a row says otherwise.
 */
export interface LineByHand {
  readonly title: string;
  readonly sheet: string;
  readonly input: SheetInput;
  readonly of: string;
  readonly value?: number | readonly number[];
  readonly within?: number;
  /** What stands beside the value, by the rounded formula of the handbook or a second way of measuring. */
  readonly beside?: number | readonly number[];
  readonly uncertainty?: number;
  readonly limit?: { readonly min?: number; readonly max?: number; readonly badAbove?: number } | null;
  readonly verdict?: Verdict;
}
