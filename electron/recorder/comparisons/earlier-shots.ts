import type { EarlierShot } from '../../../shared-lib/contract/comparisons.ts';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { Finding } from '../../../shared-lib/model/finding.ts';
import type { Shot } from '../../../shared-lib/model/shot.ts';
import { isBelow } from '../../../shared-lib/parts/is-below.ts';
import type { ReadableDb } from '../database/connection.ts';
import type { Tables } from '../database/tables.ts';
import { findingsOf, proofsOf } from '../findings/queries.ts';
import { metersOf } from '../machines/queries.ts';
import { trueHours } from '../machines/true-hours.ts';
import { marksOf } from '../marks/queries.ts';
import { shotById, shotsOf } from '../photos/queries.ts';
import { rowToVisit, visitById, visitsOf } from '../visits/queries.ts';
import { earlierIdsOf } from './queries.ts';

/** Findings of a visit and the photos that show each. */
interface Shown {
  readonly findings: readonly Finding[];
  readonly onShot: (shotId: string) => readonly Finding[];
}

const shownIn = (db: ReadableDb, visitId: string): Shown => {
  const findings = (findingsOf(db, [visitId]).get(visitId) ?? []).filter(({ binned }) => !binned);
  const joined = [
    ...proofsOf(db, [visitId]).map((row) => ({ shotId: row.shot_id, findingId: row.finding_id })),
    ...marksOf(db, visitId),
  ];
  return {
    findings,
    onShot: (shotId) => {
      const ids = new Set(joined.filter((each) => each.shotId === shotId).map(({ findingId }) => findingId));
      return findings.filter(({ id }) => ids.has(id));
    },
  };
};

/** @throws AppError 'not-found' */
export const shotOrThrow = (db: ReadableDb, id: string): Shot => {
  const shot = shotById(db, id);
  if (!shot) throw new AppError('not-found', { record: 'shot', id });
  return shot;
};

const visitOfShot = (db: ReadableDb, shot: Shot): Tables['visit'] => {
  const visit = visitById(db, shot.visitId);
  if (!visit) throw new Error(`shot ${shot.id} has no visit`);
  return visit;
};

/** The machine's visits before the one of a shot, newest first. */
const visitsBefore = (db: ReadableDb, visit: Tables['visit']): Tables['visit'][] => {
  const all = visitsOf(db, visit.machine_id);
  return all
    .slice(
      0,
      Math.max(
        0,
        all.findIndex(({ id }) => id === visit.id),
      ),
    )
    .toReversed();
};

/** Where a photo is said to be: its own part, else the places of what it shows. */
const partsOf = (shot: Shot, shown: readonly Finding[]): string[] => [
  ...(shot.component === null ? [] : [shot.component]),
  ...shown.flatMap(({ locations }) => locations.slice(0, 1)),
];

/** One of two places holds the other. A place that can no longer be read is alike to nothing. */
const isSamePart = (a: string, b: string): boolean => {
  try {
    return isBelow(a, b) || isBelow(b, a);
  } catch (error) {
    if (error instanceof AppError) return false;
    throw error;
  }
};

/** A finding and all that it goes on with, visit by visit. */
export const trackOf = (finding: Finding, byId: ReadonlyMap<string, Finding>): Set<string> => {
  const track = new Set<string>();
  for (let id: string | null = finding.trackOf; id !== null && !track.has(id); id = byId.get(id)?.trackOf ?? null) {
    track.add(id);
  }
  return track;
};

const closeness = ['same-finding', 'same-part', 'same-machine'] as const;

const described = (db: ReadableDb, shot: Shot, visit: Tables['visit']): Omit<EarlierShot, 'because' | 'isKept'> => ({
  shot,
  visitId: visit.id,
  date: visit.date,
  trueHours: trueHours(rowToVisit(visit).meter, metersOf(db, visit.machine_id)),
});

/** Photos of earlier visits that may lie under this one: newest visit first, in each the closest first. */
export const earlierShots = (db: ReadableDb, shotId: string): EarlierShot[] => {
  const shot = shotOrThrow(db, shotId);
  const visits = visitsBefore(db, visitOfShot(db, shot));
  if (visits.length === 0) return [];
  const today = shownIn(db, shot.visitId).onShot(shotId);
  const parts = partsOf(shot, today);
  const then = visits.map((visit) => ({ visit, shown: shownIn(db, visit.id) }));
  const byId = new Map(then.flatMap(({ shown }) => shown.findings).map((finding) => [finding.id, finding]));
  const tracked = new Set(today.flatMap((finding) => [...trackOf(finding, byId)]));
  const kept = earlierIdsOf(db, shotId);
  return then.flatMap(({ visit, shown }) =>
    shotsOf(db, visit.id)
      .filter(({ binned }) => !binned)
      .map((earlier): EarlierShot => {
        const findings = shown.onShot(earlier.id);
        const isTracked = findings.some(({ id }) => tracked.has(id));
        const isPart = partsOf(earlier, findings).some((a) => parts.some((b) => isSamePart(a, b)));
        return {
          ...described(db, earlier, visit),
          because: isTracked ? 'same-finding' : isPart ? 'same-part' : 'same-machine',
          isKept: kept.has(earlier.id),
        };
      })
      .sort((a, b) => closeness.indexOf(a.because) - closeness.indexOf(b.because)),
  );
};

/** Two photos that may be compared. @throws AppError 'not-found', 'comparison-not-earlier' */
export const twoShots = (db: ReadableDb, { shotId, earlierShotId }: { shotId: string; earlierShotId: string }) => {
  const [shot, earlier] = [shotOrThrow(db, shotId), shotOrThrow(db, earlierShotId)];
  const visit = visitOfShot(db, shot);
  const earlierVisit = visitsBefore(db, visit).find(({ id }) => id === earlier.visitId);
  if (!earlierVisit) throw new AppError('comparison-not-earlier', {});
  return { shot, visit, earlier: described(db, earlier, earlierVisit), earlierVisit };
};
