import { z } from 'zod';
import { checkBar } from '../calibration/card/check-bar.ts';
import type { FoundCard } from '../calibration/card/find-card.ts';
import type { CalibrationInput } from '../calibration/input.ts';
import { query } from './operation.ts';
import { Paper } from './reports.ts';

/** A calibration card seen in a photo, ready to be kept as its plane's scale (`calibration.add`). */
export interface SeenCard extends Pick<FoundCard, 'face' | 'points' | 'outline'> {
  /** How well the points fit the card, root mean square. */
  readonly rmsPx: number;
  /** How the lens bends straight lines (`Lens.bend`); sizes are taken with that taken out. */
  readonly bend: number;
  /** Without a plane's name: only the mechanic knows what the card lies on. */
  readonly reference: Extract<CalibrationInput, { method: 'known-points' }>;
}

export const cardOperations = {
  /** Refused with 'card-not-found' where there is none. */
  'calibration.findCard': query<SeenCard>()(
    z.strictObject({
      shotId: z.string(),
      /** What a rule reads on the printed sheet's check bar; null where nobody has looked. */
      barMm: z.number().min(checkBar.least).max(checkBar.most).nullable().default(null),
    }),
  ),
  /** Writes the sheet with the cards where a save dialog's token says. */
  'card.print': query<{ path: string }>()(z.strictObject({ token: z.string(), paper: Paper.optional() })),
};
