import { AppError } from '../../../shared-lib/contract/errors.ts';
import { detectionPower } from '../../../shared-lib/methods/not-found.ts';
import type { Finding } from '../../../shared-lib/model/finding.ts';
import { isoDayAt } from '../../../shared-lib/model/wall-clock.ts';
import { isBelow } from '../../../shared-lib/parts/is-below.ts';
import { type AbsentKnown, impossibleCause, type KnownTimes } from '../../../shared-lib/ranking/cause-timing.ts';
import type { Context } from '../context.ts';
import type { ReadableDb } from '../database/connection.ts';
import { visitById, visitsOf } from '../visits/queries.ts';
import { findingById, findingsOf, linksOf, partsFittedOn } from './queries.ts';

type Absence = NonNullable<KnownTimes['absentOn']>;

/** The same condition in this visit and the ones before it, newest first. */
const trackOf = (db: ReadableDb, finding: Finding): Finding[] => {
  const before = finding.trackOf === null ? undefined : findingById(db, finding.trackOf);
  return before === undefined ? [finding] : [finding, ...trackOf(db, before)];
};

const lookedFor = (finding: Finding, other: Finding): boolean =>
  !other.binned &&
  other.state === 'none-found' &&
  other.defect === finding.defect &&
  other.locations.some((place) => finding.locations.some((own) => isBelow(own, place))) &&
  other.methods.some((method) => detectionPower(other.defect ?? '', method, other.locations[0] ?? null) === 'good');

/** All that the machine's record says of when a condition was not there yet, and since when it was. */
const knownTimes = ({ db, zoneOffsetMin }: Context, finding: Finding): KnownTimes => {
  const zone = zoneOffsetMin();
  const machineId = visitById(db, finding.visitId)?.machine_id ?? '';
  const seenOn = (each: Finding) => each.foundOn ?? isoDayAt(each.createdAtMs, zone);
  const track = trackOf(db, finding);
  const there = track
    .filter(({ state }) => state === 'confirmed' || state === 'suspected')
    .flatMap((each) => [seenOn(each), ...(each.noticedOn ? [each.noticedOn] : [])])
    .sort();
  const absences: Absence[] = [
    ...track.flatMap(({ absentOn }) => (absentOn ? [{ date: absentOn, known: 'said' as AbsentKnown }] : [])),
    ...[
      ...findingsOf(
        db,
        visitsOf(db, machineId).map(({ id }) => id),
      ).values(),
    ]
      .flat()
      .filter((other) => lookedFor(finding, other))
      .map((other) => ({ date: seenOn(other), known: 'not-found' as AbsentKnown })),
    // A part fitted in this very stay took the place of the one that was found so.
    ...partsFittedOn(db, machineId)
      .filter(({ visit_id: visitId }) => visitId !== finding.visitId)
      .filter(({ path }) => finding.locations.some((place) => isBelow(place, path)))
      .map(({ date }) => ({ date, known: 'part-fitted' as AbsentKnown })),
  ].filter(({ date }) => date <= (there[0] ?? seenOn(finding)));
  return {
    thereOn: there[0] ?? null,
    absentOn: absences.toSorted((a, b) => a.date.localeCompare(b.date)).at(-1) ?? null,
  };
};

/** @throws AppError 'there-before-absent' where its own two days contradict each other */
export const refuseThereBeforeAbsent = ({ noticedOn, absentOn }: Finding, field: string): void => {
  if (noticedOn && absentOn && noticedOn <= absentOn)
    throw new AppError('there-before-absent', { noticedOn, absentOn }, { field });
};

/** @throws AppError 'cause-after-effect' where the cause was not there yet when the effect was */
export const refuseImpossibleCause = (context: Context, cause: Finding, effect: Finding, field?: string): void => {
  const problem = impossibleCause({ ...knownTimes(context, cause), defect: cause.defect }, knownTimes(context, effect));
  if (problem === null) return;
  const details = { cause: cause.number, effect: effect.number, ...problem };
  throw new AppError('cause-after-effect', details, field === undefined ? {} : { field });
};

/** What is changed of a finding may not make one of its links impossible. @throws AppError 'cause-after-effect' */
export const refuseImpossibleLinks = (context: Context, finding: Finding, field: string): void => {
  for (const { from_id: fromId, to_id: toId } of linksOf(context.db, [finding.visitId])) {
    if (fromId !== finding.id && toId !== finding.id) continue;
    const cause = findingById(context.db, fromId);
    const effect = findingById(context.db, toId);
    if (cause && effect) refuseImpossibleCause(context, cause, effect, field);
  }
};
