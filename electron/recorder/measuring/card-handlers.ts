import { cardCalibration } from '../../../shared-lib/calibration/card/card-calibration.ts';
import { mapPlane } from '../../../shared-lib/calibration/plane-mapping.ts';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { Handlers } from '../context.ts';
import { photosOf } from '../photos/photo-service.ts';
import { shotById } from '../photos/queries.ts';
import { typesetterOf } from '../reports/typesetter-of.ts';
import { writeWholeFile } from '../reports/write-file.ts';
import { shopRow } from '../shop/queries.ts';
import { measurerOf } from './measurer-of.ts';

export const cardHandlers: Handlers = {
  'calibration.findCard': {
    read: async (context, { shotId, barMm }) => {
      const shot = shotById(context.db, shotId);
      if (!shot) throw new AppError('not-found', { record: 'shot', id: shotId });
      const path = photosOf(context).store.originalPath(shot.digest);
      const { card, photo } = await measurerOf(context).run({ kind: 'find-card', path });
      if (!card) throw new AppError('card-not-found', {});
      const reference = cardCalibration(card, photo, { barMm, plane: '' });
      const { bend, residualsPx } = mapPlane(reference);
      const rmsPx = Math.sqrt(residualsPx.reduce((sum, r) => sum + r * r, 0) / residualsPx.length);
      return { ...card, reference, rmsPx, bend: bend ?? 0 };
    },
  },
  'card.print': {
    read: async (context, { token, paper }) => {
      const path = context.tokens.spend(token, 'write');
      await writeWholeFile(path, await typesetterOf(context).card(paper ?? shopRow(context.db).paper));
      return { path };
    },
  },
};
