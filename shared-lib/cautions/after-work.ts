import type { Reading } from '../model/reading.ts';
import { type WorkedOn, type WorkOnRecord, workedOn } from '../work/after-work.ts';
import type { CautionCall, CautionRecord } from './calls.ts';
import type { Caution } from './caution.ts';

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
