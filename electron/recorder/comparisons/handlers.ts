import { registerPairs } from '../../../shared-lib/comparison/check-pairs.ts';
import { spreadPairs } from '../../../shared-lib/comparison/spread-pairs.ts';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { Context, Handlers } from '../context.ts';
import { measurerOf } from '../measuring/measurer-of.ts';
import { photosOf } from '../photos/photo-service.ts';
import { earlierPicture } from './earlier-picture.ts';
import { earlierShots, shotOrThrow, twoShots } from './earlier-shots.ts';
import { comparisonBetween, rowToComparison } from './queries.ts';
import { thenAndNow } from './then-and-now.ts';

const originalsOf = (context: Context, pair: { shotId: string; earlierShotId: string }) => {
  const { shot, earlier } = twoShots(context.db, pair);
  const { store } = photosOf(context);
  return { path: store.originalPath(earlier.shot.digest), laterPath: store.originalPath(shot.digest) };
};

export const comparisonHandlers: Handlers = {
  'comparison.earlier': { read: ({ db }, { shotId }) => earlierShots(db, shotId) },
  'comparison.see': { read: ({ db }, pair) => thenAndNow(db, pair) },
  'comparison.suggest': {
    read: async (context, pair) => {
      const { suggestion } = await measurerOf(context).run({ kind: 'register', ...originalsOf(context, pair) });
      if (suggestion.state === 'nothing-in-common') throw new AppError('comparison-nothing-in-common', {});
      const pairs = spreadPairs(suggestion).map((each) => ({ ...each, by: 'found' as const }));
      return { pairs, found: suggestion.pairs.length };
    },
  },
  'comparison.keep': {
    change: ({ db, newId }, writer, { shotId, earlierShotId, pairs }) => {
      const { shot, visit, earlier } = twoShots(db, { shotId, earlierShotId });
      writer.about({ visitId: visit.id, machineId: visit.machine_id });
      registerPairs(pairs, { earlier: earlier.shot, later: shot });
      const there = comparisonBetween(db, shotId, earlierShotId);
      const id = there?.id ?? newId();
      const row = { id, shot_id: shotId, earlier_shot_id: earlierShotId, pairs: JSON.stringify(pairs) };
      if (there) writer.update('comparison', id, { pairs: row.pairs });
      else writer.insert('comparison', row);
      return rowToComparison(row);
    },
  },
  'comparison.remove': {
    change: ({ db }, writer, { id }) => {
      const row = writer.row('comparison', id);
      const { visit } = twoShots(db, { shotId: String(row.shot_id), earlierShotId: String(row.earlier_shot_id) });
      writer.about({ visitId: visit.id, machineId: visit.machine_id });
      writer.remove('comparison', id);
      return null;
    },
  },
  'comparison.picture': {
    read: async (context, { shotId, earlierShotId, pairs, edge, ...region }) => {
      const { shot, earlier } = twoShots(context.db, { shotId, earlierShotId });
      const registration = registerPairs(pairs, { earlier: earlier.shot, later: shotOrThrow(context.db, shotId) });
      const key = await earlierPicture(context, { earlier: earlier.shot, later: shot, registration, region, edge });
      return { url: `photo://region/${key}` };
    },
  },
};
