import { z } from 'zod';
import type { FindingGrowth } from '../comparison/growth-of-finding.ts';
import { ImagePoint, type Mark } from '../model/mark.ts';
import type { Shot } from '../model/shot.ts';
import { query, step } from './operation.ts';
import type { StandingTag } from './standing.ts';

/** One spot of the part in both photos: `from` in the earlier one, `to` in today's, each in pixels of its upright original. */
export const MatchedPair = z.strictObject({
  from: ImagePoint,
  to: ImagePoint,
  by: z.enum(['found', 'hand']).default('hand'),
});
export type MatchedPair = z.infer<typeof MatchedPair>;

/** How an earlier shot lies under a later one, as it is kept. */
export interface Comparison {
  readonly id: string;
  /** Today's. */
  readonly shotId: string;
  readonly earlierShotId: string;
  readonly pairs: readonly MatchedPair[];
}

/** A photo of an earlier visit that may lie under today's. */
export interface EarlierShot {
  readonly shot: Shot;
  readonly visitId: string;
  readonly date: string;
  readonly trueHours: number | null;
  /** Why it is offered, the closest first. */
  readonly because: 'same-finding' | 'same-part' | 'same-machine';
  /** Whether it has been laid under today's already. */
  readonly isKept: boolean;
}

/** A mark of then, with the tag that its finding wore. */
export interface OldMark {
  readonly mark: Mark;
  readonly tag: StandingTag;
  /** Today's finding that goes on with it. */
  readonly todayFindingId: string | null;
  /** Today's mark that was taken over from it. */
  readonly takenOverAs: string | null;
}

export interface ThenAndNow {
  readonly earlier: EarlierShot;
  readonly comparison: Comparison | null;
  readonly oldMarks: readonly OldMark[];
  readonly growth: readonly FindingGrowth[];
}

/** What the report tells of a comparison: it goes into the record of a visit. */
export interface KeptComparison extends Comparison {
  readonly model: 'homography' | 'similarity';
  /** How far the matched points lie apart once laid over each other, px of today's photo; 0 where nothing is left over. */
  readonly rmsPx: number;
  readonly earlier: Pick<EarlierShot, 'shot' | 'visitId' | 'date' | 'trueHours'>;
  readonly oldMarks: readonly OldMark[];
  readonly growth: readonly FindingGrowth[];
}

const id = z.string();
const both = { shotId: id, earlierShotId: id };

export const comparisonOperations = {
  /** Photos of the machine's earlier visits, newest visit first; in each, those of the same finding and part first. */
  'comparison.earlier': query<EarlierShot[]>()(z.strictObject({ shotId: id })),
  'comparison.see': query<ThenAndNow>()(z.strictObject(both)),
  /** Spots found in both photos, spread over them. That there are none is a refusal. */
  'comparison.suggest': query<{ pairs: MatchedPair[]; found: number }>()(z.strictObject(both)),
  /** The last good one stays when these are refused. */
  'comparison.keep': step<Comparison>()(z.strictObject({ ...both, pairs: z.array(MatchedPair).max(60) })),
  'comparison.remove': step<null>()(z.strictObject({ id })),
  /** A region of today's photo as the earlier one shows it, straightened onto today's, as a photo:// address. */
  'comparison.picture': query<{ url: string }>()(
    z.strictObject({
      ...both,
      pairs: z.array(MatchedPair).max(60),
      x: z.int().nonnegative(),
      y: z.int().nonnegative(),
      width: z.int().positive(),
      height: z.int().positive(),
      /** Longest edge wanted, in pixels. */
      edge: z.int().min(16).max(4096),
    }),
  ),
};
