import type { Measurement } from '../../../shared-lib/calibration/measure.ts';
import { type FindingGrowth, growthOfFinding } from '../../../shared-lib/comparison/growth-of-finding.ts';
import { registerByHand } from '../../../shared-lib/comparison/register.ts';
import type { EarlierShot, KeptComparison, OldMark, ThenAndNow } from '../../../shared-lib/contract/comparisons.ts';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { Finding } from '../../../shared-lib/model/finding.ts';
import type { Mark } from '../../../shared-lib/model/mark.ts';
import type { ReadableDb } from '../database/connection.ts';
import { metersOf } from '../machines/queries.ts';
import { trueHours } from '../machines/true-hours.ts';
import { marksOn } from '../marks/queries.ts';
import { samePartOf } from '../readings/series.ts';
import { rowToVisit } from '../visits/queries.ts';
import { type StoodVisit, type VisitAndEarlier, visitAndEarlier } from '../visits/stood-visit.ts';
import { shotOrThrow, trackOf, twoShots } from './earlier-shots.ts';
import { comparisonBetween, comparisonsOf } from './queries.ts';
import { sizesOn } from './sizes-on.ts';

interface Pair {
  readonly shotId: string;
  readonly earlierShotId: string;
}

const findingMarks = (db: ReadableDb, shotId: string): Mark[] =>
  marksOn(db, shotId).filter(({ role }) => role === 'finding');

const shownFindings = ({ input }: StoodVisit): readonly Finding[] => input.findings.filter(({ binned }) => !binned);

/** What two photos tell of each other: the marks of then, and what became of the findings that go on. */
const compared = (db: ReadableDb, pair: Pair, visits: VisitAndEarlier) => {
  const { shot, visit, earlier, earlierVisit } = twoShots(db, pair);
  const visitThen = visits.earlier.find(({ row }) => row.id === earlierVisit.id);
  if (!visitThen) throw new Error(`visit ${earlierVisit.id} was not loaded`);
  const [findingsThen, findingsNow] = [shownFindings(visitThen), shownFindings(visits.now)];
  const byId = new Map([...visits.earlier.flatMap(shownFindings), ...findingsNow].map((each) => [each.id, each]));
  const going = findingsNow.flatMap((today) => {
    const track = trackOf(today, byId);
    const before = findingsThen.find(({ id }) => track.has(id));
    return before ? [{ today, before }] : [];
  });
  const marksThen = findingMarks(db, earlier.shot.id);
  const marksNow = findingMarks(db, shot.id);
  const lines = new Map(visitThen.standing.lines.map((line) => [line.findingId, line]));
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
    visitThen.input.proofs.flatMap((proof) => (proof.shotId === earlier.shot.id ? proof.findingId : [])),
  );
  const sizesThen = sizesOn(db, earlier.shot, marksThen, findingsThen);
  const sizesNow = sizesOn(db, shot, marksNow, findingsNow);
  const hoursNow = trueHours(rowToVisit(visit).meter, metersOf(db, visit.machine_id));
  const isSamePart = samePartOf(db, visit.machine_id);
  const growth = going.flatMap(({ today, before }): FindingGrowth[] => {
    const then = side(before, marksThen, sizesThen, earlier.trueHours);
    const now = side(today, marksNow, sizesNow, hoursNow);
    if (then.marks.length === 0 && !shownThen.has(before.id)) return [];
    const place = today.locations[0];
    const isOtherPart = place !== undefined && !isSamePart(place, earlierVisit.id, visit.id);
    return [{ findingId: today.id, earlierFindingId: before.id, ...growthOfFinding(then, now, { isOtherPart }) }];
  });
  return { earlier, oldMarks, growth };
};

/** @throws AppError 'not-found', 'comparison-not-earlier' */
export const thenAndNow = (db: ReadableDb, pair: Pair): ThenAndNow => {
  const visits = visitAndEarlier(db, shotOrThrow(db, pair.shotId).visitId);
  const { earlier, oldMarks, growth } = compared(db, pair, visits);
  const comparison = comparisonBetween(db, pair.shotId, pair.earlierShotId);
  const because: EarlierShot['because'] = oldMarks.some(({ todayFindingId }) => todayFindingId !== null)
    ? 'same-finding'
    : 'same-machine';
  return { earlier: { ...earlier, because, isKept: comparison !== null }, comparison, oldMarks, growth };
};

/** What a visit's report tells of then and now. */
export const keptComparisons = (db: ReadableDb, visits: VisitAndEarlier): KeptComparison[] =>
  comparisonsOf(db, visits.now.row.id).flatMap((comparison) => {
    try {
      const { model, rmsPx } = registerByHand(comparison.pairs);
      const { earlier, oldMarks, growth } = compared(db, comparison, visits);
      return [{ ...comparison, model, rmsPx, earlier, oldMarks, growth }];
    } catch (error) {
      // A visit's day was changed since, so that the other photo is no earlier one any more: nothing to tell.
      if (error instanceof AppError) return [];
      throw error;
    }
  });
