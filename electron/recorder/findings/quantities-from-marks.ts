import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { CheckedInputOf } from '../../../shared-lib/contract/operations.ts';
import { type KeptCalibration, keptCalibration } from '../../../shared-lib/measuring/calibrated-plane.ts';
import { coverageOf, coverageWords } from '../../../shared-lib/measuring/coverage.ts';
import { markSize } from '../../../shared-lib/measuring/mark-size.ts';
import { sizeWords } from '../../../shared-lib/measuring/words.ts';
import type { Mark } from '../../../shared-lib/model/mark.ts';
import type { Shot } from '../../../shared-lib/model/shot.ts';
import type { UnitSystem } from '../../../shared-lib/quantities/units.ts';
import type { Context } from '../context.ts';
import { calibrationById, markById, marksOn } from '../marks/queries.ts';
import { shotById } from '../photos/queries.ts';
import { locationRows } from './queries.ts';

type Sent = NonNullable<CheckedInputOf<'finding.change'>['quantities']>;
type FromMark = Extract<NonNullable<Sent[string]>, { fromMark: string }>;
export type Typed = Record<string, Exclude<NonNullable<Sent[string]>, FromMark> | null>;

/**
 * What a mark measures, as it would have been typed: `38.4 ± 0.9 mm`, from a photo, in which plane.
 *
 * @throws AppError 'not-found', 'mark-without-size', 'mark-not-calibrated', 'mark-beyond-horizon'
 */
const readOff = ({ db }: Pick<Context, 'db'>, { fromMark, measure }: FromMark, units: UnitSystem) => {
  const mark = markById(db, fromMark);
  const shot = mark && shotById(db, mark.shotId);
  if (!mark || !shot) throw new AppError('not-found', { record: 'mark', id: fromMark });
  const calibration = mark.calibrationId === null ? null : (calibrationById(db, mark.calibrationId) ?? null);
  const place = mark.findingId === null ? undefined : locationRows(db, mark.findingId)[0]?.place;
  const kept = calibration && { id: calibration.id, ...keptCalibration(calibration) };
  if (measure === 'coverage') return coverageRead({ db }, mark, shot, kept);
  const measured = markSize(mark, shot, kept, place);
  if (measured?.refused) throw new AppError(measured.refused.code, { ...measured.refused.details });
  if (!calibration) throw new AppError('mark-not-calibrated', {});
  const measurement = measured?.[measure];
  if (!measurement) throw new AppError('mark-without-size', { measure });
  const how = `photo ${shot.sequence}, ${calibration.plane}`.slice(0, 200);
  return { typed: sizeWords(measurement, units), origin: 'photo' as const, how };
};

/** Coverage needs no scale: a share of a zone is a share in pixels too, seen square on. */
const coverageRead = ({ db }: Pick<Context, 'db'>, mark: Mark, shot: Shot, kept: KeptCalibration | null) => {
  const coverage = coverageOf(mark, marksOn(db, mark.shotId), shot, kept);
  if (!coverage) throw new AppError('mark-without-size', { measure: 'coverage' });
  const how = `photo ${shot.sequence}, of the area drawn round it`;
  return { typed: coverageWords(coverage), origin: 'photo' as const, how };
};

/** Quantities as they are typed, those named by a mark read off it first. */
export const typedQuantities = (
  context: Pick<Context, 'db'>,
  sent: Sent | undefined,
  units: UnitSystem,
): Typed | undefined =>
  sent &&
  Object.fromEntries(
    Object.entries(sent).map(([id, quantity]) => [
      id,
      quantity !== null && 'fromMark' in quantity ? readOff(context, quantity, units) : quantity,
    ]),
  );
