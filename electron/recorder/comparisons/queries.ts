import { z } from 'zod';
import { type Comparison, MatchedPair } from '../../../shared-lib/contract/comparisons.ts';
import { build, type ReadableDb } from '../database/connection.ts';
import { all, first, type Param } from '../database/query.ts';
import type { Tables } from '../database/tables.ts';

const Pairs = z.array(MatchedPair);

export const rowToComparison = (row: Tables['comparison']): Comparison => ({
  id: row.id,
  shotId: row.shot_id,
  earlierShotId: row.earlier_shot_id,
  pairs: Pairs.parse(JSON.parse(row.pairs)),
});

const rowBetween = first((shotId: Param<string>, earlierShotId: Param<string>) =>
  build.selectFrom('comparison').selectAll().where('shot_id', '=', shotId).where('earlier_shot_id', '=', earlierShotId),
);

export const comparisonBetween = (db: ReadableDb, shotId: string, earlierShotId: string): Comparison | null => {
  const row = rowBetween(db, shotId, earlierShotId);
  return row ? rowToComparison(row) : null;
};

const comparisonRows = all((visitId: Param<string>) =>
  build
    .selectFrom('comparison')
    .innerJoin('shot', 'shot.id', 'comparison.shot_id')
    .innerJoin('shot as earlier', 'earlier.id', 'comparison.earlier_shot_id')
    .selectAll('comparison')
    .where('shot.visit_id', '=', visitId)
    .where('shot.binned', '=', 0)
    .where('earlier.binned', '=', 0)
    .orderBy('comparison.id'),
);

/** Of the photos of a visit; neither photo is in the bin. */
export const comparisonsOf = (db: ReadableDb, visitId: string): Comparison[] =>
  comparisonRows(db, visitId).map(rowToComparison);

const earlierIds = all((shotId: Param<string>) =>
  build.selectFrom('comparison').select('earlier_shot_id').where('shot_id', '=', shotId),
);

/** Earlier photos that lie under this one already. */
export const earlierIdsOf = (db: ReadableDb, shotId: string): Set<string> =>
  new Set(earlierIds(db, shotId).map((row) => row.earlier_shot_id));
