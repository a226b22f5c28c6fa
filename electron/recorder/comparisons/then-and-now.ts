import type { Measurement } from '../../../shared-lib/calibration/measure.ts';
import { type FindingGrowth, growthOfFinding } from '../../../shared-lib/comparison/growth-of-finding.ts';
import { registerByHand } from '../../../shared-lib/comparison/register.ts';
import type { EarlierShot, KeptComparison, OldMark, ThenAndNow } from '../../../shared-lib/contract/comparisons.ts';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { Standing } from '../../../shared-lib/contract/standing.ts';
import type { Finding } from '../../../shared-lib/model/finding.ts';
import type { Mark } from '../../../shared-lib/model/mark.ts';
import type { ReadableDb } from '../database/connection.ts';
import { findingsOf, proofsOf } from '../findings/queries.ts';
import { metersOf } from '../machines/queries.ts';
import { trueHours } from '../machines/true-hours.ts';
import { marksOf } from '../marks/queries.ts';
import { isSamePart } from '../readings/series.ts';
import { rowToVisit, visitsOf } from '../visits/queries.ts';
import { trackOf, twoShots } from './earlier-shots.ts';
import { comparisonBetween, comparisonsOf } from './queries.ts';
import { sizesIn } from './sizes-in.ts';

/** What only the visit's record knows. */
export type StandingOf = (db: ReadableDb, visitId: string) => Standing;

interface Pair {
  readonly shotId: string;
  readonly earlierShotId: string;
}

const findingMarks = (db: ReadableDb, visitId: string, shotId: string): Mark[] =>
  marksOf(db, visitId).filter((mark) => mark.shotId === shotId && mark.role === 'finding');

/** What two photos tell of each other: the marks of then, and what became of the findings that go on. */
const compared = (db: ReadableDb, pair: Pair, standingOf: StandingOf) => {
  const { shot, visit, earlier, earlierVisit } = twoShots(db, pair);
  const visits = visitsOf(db, visit.machine_id).map(({ id }) => id);
  const all = [...findingsOf(db, visits).values()].flat().filter(({ binned }) => !binned);
  const byId = new Map(all.map((finding) => [finding.id, finding]));
  const going = all
    .filter((finding) => finding.visitId === visit.id)
    .flatMap((today) => {
      const track = trackOf(today, byId);
      const before = all.find(({ id, visitId }) => track.has(id) && visitId === earlierVisit.id);
      return before ? [{ today, before }] : [];
    });
  const marksThen = findingMarks(db, earlierVisit.id, earlier.shot.id);
  const marksNow = findingMarks(db, visit.id, shot.id);
  const lines = new Map(standingOf(db, earlierVisit.id).lines.map((line) => [line.findingId, line]));
  const oldMarks = marksThen.flatMap((mark): OldMark[] => {
    const finding = byId.get(mark.findingId ?? '');
    if (!finding) return [];
    const line = lines.get(finding.id);
    const state = line?.state ?? finding.state;
    return [
      {
        mark,
        tag: { findingId: finding.id, number: finding.number, tier: line?.tier ?? 4, state },
        todayFindingId: going.find(({ before }) => before.id === finding.id)?.today.id ?? null,
        takenOverAs:
          marksNow.find(({ origin }) => origin.by === 'carried' && origin.fromMarkId === mark.id)?.id ?? null,
      },
    ];
  });
  const side = (
    finding: Finding,
    of: readonly Mark[],
    sizeOf: (mark: Mark) => Measurement | null,
    hours: number | null,
  ) => ({
    marks: of.filter(({ findingId }) => findingId === finding.id),
    sizeOf,
    hours,
  });
  const shownThen = new Set(
    proofsOf(db, [earlierVisit.id]).flatMap((proof) => (proof.shot_id === earlier.shot.id ? proof.finding_id : [])),
  );
  const [sizesThen, sizesNow] = [sizesIn(db, earlierVisit.id), sizesIn(db, visit.id)];
  const hoursNow = trueHours(rowToVisit(visit).meter, metersOf(db, visit.machine_id));
  const growth = going.flatMap(({ today, before }): FindingGrowth[] => {
    const then = side(before, marksThen, sizesThen, earlier.trueHours);
    const now = side(today, marksNow, sizesNow, hoursNow);
    if (then.marks.length === 0 && !shownThen.has(before.id)) return [];
    const place = today.locations[0];
    const isOtherPart = place !== undefined && !isSamePart(db, visit.machine_id, place, earlierVisit.id, visit.id);
    return [{ findingId: today.id, earlierFindingId: before.id, ...growthOfFinding(then, now, { isOtherPart }) }];
  });
  return { earlier, oldMarks, growth };
};

/** @throws AppError 'not-found', 'comparison-not-earlier' */
export const thenAndNow = (db: ReadableDb, pair: Pair, standingOf: StandingOf): ThenAndNow => {
  const { earlier, oldMarks, growth } = compared(db, pair, standingOf);
  const comparison = comparisonBetween(db, pair.shotId, pair.earlierShotId);
  const because: EarlierShot['because'] = oldMarks.some(({ todayFindingId }) => todayFindingId !== null)
    ? 'same-finding'
    : 'same-machine';
  return { earlier: { ...earlier, because, isKept: comparison !== null }, comparison, oldMarks, growth };
};

/** What a visit's report tells of then and now. */
export const keptComparisons = (db: ReadableDb, visitId: string, standingOf: StandingOf): KeptComparison[] =>
  comparisonsOf(db, visitId).flatMap((comparison) => {
    try {
      const { model, rmsPx } = registerByHand(comparison.pairs);
      const { earlier, oldMarks, growth } = compared(db, comparison, standingOf);
      return [{ ...comparison, model, rmsPx, earlier, oldMarks, growth }];
    } catch (error) {
      // A visit's day was changed since, so that the other photo is no earlier one any more: nothing to tell.
      if (error instanceof AppError) return [];
      throw error;
    }
  });
