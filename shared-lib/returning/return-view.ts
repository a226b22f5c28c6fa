import type { OldFinding, ReturnView } from '../contract/returning.ts';
import type { Urgency } from '../model/finding.ts';
import type { FittedPart } from '../model/machine.ts';
import { samePlace } from '../parts/same-place.ts';
import { compareReadings } from './compare-readings.ts';
import { compareSizes } from './compare-sizes.ts';
import { openTracks, type Track } from './old-findings.ts';
import { partChanged } from './part-changed.ts';
import { repeatFailures } from './repeat-failures.ts';
import type { VisitNow, VisitThen } from './visit-then.ts';

/** Hours after which each urgency has come; the others have no clock. */
const comesAfterHours: Readonly<Partial<Record<Urgency, number>>> = { 0: 0, 1: 10, 2: 50, 3: 250 };

const between = (from: number | null, to: number | null): number | null =>
  from === null || to === null ? null : to - from;

/** All that earlier visits left and what has become of it; null where the machine was never here before. */
export function returnView(
  now: VisitNow,
  earlier: readonly VisitThen[],
  fittedParts: readonly FittedPart[],
): ReturnView | null {
  const before = earlier.at(-1);
  if (before === undefined) return null;
  const stays = [...earlier, now].map(({ id, trueHours }) => ({ id, hours: trueHours }));
  const changedAt = (place: string, then: string) => partChanged(place, [then, now.id], stays, fittedParts);
  const old = openTracks(earlier).flatMap((track) => oldFinding(track, now, changedAt) ?? []);
  return {
    visitId: before.id,
    date: before.date,
    trueHours: before.trueHours,
    hoursSince: between(before.trueHours, now.trueHours),
    old: old.toSorted((a, b) => a.tag.tier - b.tag.tier || b.date.localeCompare(a.date) || a.tag.number - b.tag.number),
    readings: compareReadings(now, earlier, fittedParts),
    repeats: repeatFailures(now, earlier),
  };
}

function oldFinding(
  { tellings, mended, mendedOnRecord }: Track,
  now: VisitNow,
  changedAt: (place: string, then: string) => string | null,
): OldFinding | null {
  const [first, last] = [tellings[0], tellings.at(-1)];
  if (first === undefined || last === undefined) return null;
  const { visit, finding, line } = last;
  const { findingId, number, tier, state, title } = line;
  const hours = between(visit.trueHours, now.trueHours);
  const live = now.input.findings.filter(({ binned }) => !binned);
  const takenUp = live.find(({ trackOf }) => trackOf === findingId);
  const decided = visit.decisions.filter((decision) => decision.findingId === findingId).at(-1);
  const comes = finding.urgency === null ? undefined : comesAfterHours[finding.urgency];
  return {
    tag: { findingId, number, tier, state },
    title,
    words: finding.words,
    visitId: visit.id,
    date: visit.date,
    trueHours: visit.trueHours,
    hoursSince: hours,
    firstDate: first.visit.date,
    timesTold: tellings.length,
    decided: decided ?? null,
    mended,
    mendedOnRecord,
    due:
      !mended && comes !== undefined && hours !== null && hours >= comes
        ? `due: it was likely to show ${comes === 0 ? 'at the next start' : `within ${comes}\u202fh`}, and ${Math.round(hours)}\u202fh ${Math.round(hours) === 1 ? 'has' : 'have'} passed`
        : null,
    photo: photoOf(tellings),
    answer: now.answers.find((answer) => answer.findingId === findingId) ?? null,
    takenUpAs: takenUp?.id ?? null,
    sizes:
      takenUp === undefined
        ? []
        : compareSizes(finding, takenUp, {
            hours,
            units: now.input.units ?? 'metric',
            stop: takenUp.locations.map((place) => changedAt(place, visit.id)).find((why) => why !== null) ?? null,
          }),
    maybe:
      takenUp === undefined
        ? live
            .filter(
              (each) =>
                each.kind === 'condition' && each.trackOf === null && mayBeOne(finding.locations, each.locations),
            )
            .map((each) => ({ findingId: each.id, number: each.number, title: titleIn(now, each.id) }))
        : [],
  };
}

const titleIn = ({ standing }: VisitNow, id: string): string =>
  [...standing.lines, ...standing.unranked].find(({ findingId }) => findingId === id)?.title ?? '';

const mayBeOne = (then: readonly string[], now: readonly string[]): boolean =>
  then.some((place) => now.some((other) => samePlace(place, other)));

/** The newest picture of it: a visit that told of it again may have taken none. */
function photoOf(tellings: Track['tellings']): OldFinding['photo'] {
  for (const { visit, finding } of tellings.toReversed()) {
    const { marks, shots, input } = visit;
    const marked = marks.filter((mark) => mark.findingId === finding.id).map(({ shotId }) => shotId);
    const shown = input.proofs.filter((proof) => proof.findingId === finding.id).map(({ shotId }) => shotId);
    const wanted = [...marked, ...shown].find((id) => shots.some((shot) => shot.id === id && !shot.binned));
    const shot = shots.find(({ id }) => id === wanted);
    if (shot !== undefined)
      return { visitId: visit.id, date: visit.date, shotId: shot.id, digest: shot.digest, sequence: shot.sequence };
  }
  return null;
}
