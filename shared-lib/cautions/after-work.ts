import type { VisitWork } from '../contract/work.ts';
import type { Finding } from '../model/finding.ts';
import type { Reading } from '../model/reading.ts';
import { isBelow } from '../parts/is-below.ts';
import { type WorkedOn, type WorkOnRecord, workedOn } from '../work/after-work.ts';
import type { CautionCall, CautionRecord } from './calls.ts';
import type { Caution } from './caution.ts';
import type { WorkStep } from './work-step.ts';

type OnFindings = ReadonlyMap<string, WorkedOn>;

/** A caution that speaks until a test is not done with when the part is in. */
function isOver({ is, isTested }: WorkedOn, { untilTested }: Caution): boolean {
  return is === 'mended' && (isTested || untilTested !== true);
}

/** The same sheet at the same place, taken after the work as its test: the earlier one speaks of what was there before. */
function isTakenAgain(reading: Reading, { work, readings }: WorkOnRecord): boolean {
  const tests = new Set(work.items.flatMap(({ proofs }) => proofs.flatMap(({ readingId }) => readingId ?? [])));
  return readings.some(
    ({ id, sheet, at, takenAtMs }) =>
      id !== reading.id &&
      tests.has(id) &&
      sheet === reading.sheet &&
      at === reading.at &&
      takenAtMs > reading.takenAtMs,
  );
}

/** Everything that this reading shows is over. One that is a test after the work speaks for itself, whatever it shows. */
function showsOnlyWhatIsOver(
  reading: Reading,
  on: OnFindings,
  { work, proofs }: WorkOnRecord,
  caution: Caution,
): boolean {
  if (work.items.some((item) => item.proofs.some(({ readingId }) => readingId === reading.id))) return false;
  const shown = proofs.filter(({ readingId }) => readingId === reading.id);
  return (
    shown.length > 0 &&
    shown.every(({ findingId }) => {
      const worked = on.get(findingId);
      return worked !== undefined && isOver(worked, caution);
    })
  );
}

/** All that was found at a place has been worked on and done. */
function isDoneAt(place: string, { items, planned }: VisitWork, findings: readonly Finding[]): boolean {
  const there = new Set(
    findings.filter(({ locations }) => locations.some((each) => isBelow(each, place))).map(({ id }) => id),
  );
  const worked = items.filter(({ findingId }) => findingId !== null && there.has(findingId));
  return (
    worked.length > 0 &&
    worked.every(({ outcome }) => outcome === 'done') &&
    !planned.some(({ findingId }) => there.has(findingId))
  );
}

/** What of a choice's own work is still to come: none of it once all is done, else what lies where something is not. */
export function stepsToCome(
  steps: readonly WorkStep[],
  work: VisitWork,
  findings: readonly Finding[],
): readonly WorkStep[] {
  const { items, planned } = work;
  if (items.length === 0) return steps;
  if (planned.length === 0 && items.every(({ outcome }) => outcome === 'done')) return [];
  return steps.filter(({ at }) => at === null || !isDoneAt(at, work, findings));
}

/**
 * The calls that still stand after the work that is on record: none by what it has mended, and of the rest each with what
 * the work made of it. Without any work all stand.
 *
 * Source: the handbook's rule (chapter 9): only what applies to findings left open, or to use.
 */
export function standingAfter(calls: readonly CautionCall[], caution: Caution, record: CautionRecord): CautionCall[] {
  const done = record.done ?? null;
  if (done === null || done.work.items.length === 0) return [...calls];
  const on = workedOn(done.work, done.readings);
  return calls.flatMap((call): CautionCall[] => {
    if (call.by === 'finding') {
      const worked = on.get(call.findingId);
      if (worked === undefined) return [call];
      return isOver(worked, caution) ? [] : [{ ...call, worked }];
    }
    if (call.by === 'sheet') {
      const reading = done.readings.find(({ id }) => id === call.readingId);
      const isGone =
        reading !== undefined && (isTakenAgain(reading, done) || showsOnlyWhatIsOver(reading, on, done, caution));
      return isGone ? [] : [call];
    }
    return [call];
  });
}
