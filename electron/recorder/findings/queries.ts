import { Finding, FindingLink, type FindingProof } from '../../../shared-lib/model/finding.ts';
import { build, type ReadableDb } from '../database/connection.ts';
import { all, first, listed, type Param } from '../database/query.ts';
import type { Tables } from '../database/tables.ts';

const asFlag = (value: 0 | 1 | null): boolean | null => (value === null ? null : value === 1);

const safetyOf = (row: Tables['finding']): Finding['safety'] => {
  if (row.severity !== null && row.probability !== null)
    return { severity: row.severity, probability: row.probability };
  return row.safety_judged === 1 ? 'none' : null;
};

/** The only way out of the table: its JSON columns are checked here. */
export const rowToFinding = (row: Tables['finding'], locations: readonly string[]): Finding =>
  Finding.parse({
    id: row.id,
    visitId: row.visit_id,
    number: row.number,
    kind: row.kind,
    defect: row.defect,
    words: row.words,
    state: row.state,
    methods: JSON.parse(row.methods),
    quantities: JSON.parse(row.quantities),
    safety: safetyOf(row),
    urgency: row.urgency,
    runWorse: asFlag(row.run_worse),
    damageClass: row.damage_class,
    facts: JSON.parse(row.facts),
    locations,
    notExaminedBecause: row.not_examined_because,
    namedConditionDeclinedBecause: row.named_condition_declined_because,
    ifLeft: row.if_left,
    watchFor: row.watch_for,
    action: row.action,
    actionWords: row.action_words,
    doNotOperate: row.do_not_operate === 1,
    doNotRun: row.do_not_run === 1,
    loopStart: row.loop_start === 1,
    foundOn: row.found_on,
    ...(row.noticed_on === null ? {} : { noticedOn: row.noticed_on }),
    ...(row.absent_on === null ? {} : { absentOn: row.absent_on }),
    trackOf: row.track_of,
    supersedes: row.supersedes,
    supersededBecause: row.superseded_because,
    moved: row.moved_reason === null ? null : { beforeFindingId: row.moved_before, reason: row.moved_reason },
    createdAtMs: row.created_at_ms,
    binned: row.binned === 1,
  });

export const rowToLink = (row: Tables['finding_link']): FindingLink => {
  const shownBy: unknown[] = JSON.parse(row.shown_by);
  return FindingLink.parse({
    id: row.id,
    fromId: row.from_id,
    toId: row.to_id,
    certainty: row.certainty,
    join: row.joined_by,
    evidence: row.evidence,
    ...(shownBy.length === 0 ? {} : { shownBy }),
  });
};

export const rowToProof = (row: Tables['proof']): FindingProof => ({
  id: row.id,
  findingId: row.finding_id,
  shotId: row.shot_id,
  readingId: row.reading_id,
});

const grouped = <T>(rows: readonly T[], key: (row: T) => string): Map<string, T[]> => Map.groupBy(rows, key);

const rowsOfVisits = all((visitIds: Param<readonly string[]>) =>
  build.selectFrom('finding').selectAll().where('visit_id', 'in', listed(visitIds)).orderBy('number').orderBy('id'),
);

const placesOfVisits = all((visitIds: Param<readonly string[]>) =>
  build
    .selectFrom('finding_location')
    .innerJoin('finding', 'finding.id', 'finding_location.finding_id')
    .select(['finding_location.finding_id', 'finding_location.place'])
    .where('finding.visit_id', 'in', listed(visitIds))
    .orderBy('finding_location.position'),
);

/** Findings of visits, by visit, each in the order of its number. */
export const findingsOf = (db: ReadableDb, visitIds: readonly string[]): Map<string, Finding[]> => {
  const places = grouped(placesOfVisits(db, visitIds), (row) => row.finding_id);
  const findings = rowsOfVisits(db, visitIds).map((row) =>
    rowToFinding(
      row,
      (places.get(row.id) ?? []).map(({ place }) => place),
    ),
  );
  return grouped(findings, (finding) => finding.visitId);
};

const rowById = first((id: Param<string>) => build.selectFrom('finding').selectAll().where('id', '=', id));

export const findingById = (db: ReadableDb, id: string): Finding | undefined => {
  const row = rowById(db, id);
  if (!row) return undefined;
  return rowToFinding(
    row,
    locationRows(db, id).map(({ place }) => place),
  );
};

export const locationRows = all((findingId: Param<string>) =>
  build.selectFrom('finding_location').selectAll().where('finding_id', '=', findingId).orderBy('position'),
);

/** Links between findings of these visits, by the visit of the cause. */
export const linksOf = all((visitIds: Param<readonly string[]>) =>
  build
    .selectFrom('finding_link')
    .innerJoin('finding', 'finding.id', 'finding_link.from_id')
    .selectAll('finding_link')
    .select('finding.visit_id as visit_id')
    .where('finding.visit_id', 'in', listed(visitIds))
    .orderBy('finding_link.id'),
);

/** Parts of a machine with the day of the visit in which they were fitted. */
export const partsFittedOn = all((machineId: Param<string>) =>
  build
    .selectFrom('fitted_part')
    .innerJoin('visit', 'visit.id', 'fitted_part.fitted_visit_id')
    .select(['fitted_part.path', 'visit.date as date', 'visit.id as visit_id'])
    .where('fitted_part.machine_id', '=', machineId),
);

/** What shows the findings; a photo in the bin shows nothing. */
export const proofsOf = all((visitIds: Param<readonly string[]>) =>
  build
    .selectFrom('proof')
    .innerJoin('finding', 'finding.id', 'proof.finding_id')
    .leftJoin('shot', 'shot.id', 'proof.shot_id')
    .where(({ eb, or }) => or([eb('shot.id', 'is', null), eb('shot.binned', '=', 0)]))
    .selectAll('proof')
    .select('finding.visit_id as visit_id')
    .where('finding.visit_id', 'in', listed(visitIds))
    .orderBy('proof.id'),
);

const highestNumber = first((machineId: Param<string>) =>
  build
    .selectFrom('finding')
    .innerJoin('visit', 'visit.id', 'finding.visit_id')
    .select(({ fn }) => fn.max<number | null>('finding.number').as('number'))
    .where('visit.machine_id', '=', machineId),
);

/** A number is stamped once per machine, so that a tracked finding can keep it from visit to visit. */
export const nextNumber = (db: ReadableDb, machineId: string): number =>
  (highestNumber(db, machineId)?.number ?? 0) + 1;

const usedDefects = all(() =>
  build
    .selectFrom('finding')
    .select(({ fn }) => ['defect', fn.max<number>('created_at_ms').as('at')])
    .where('defect', 'is not', null)
    .groupBy('defect')
    .orderBy('at', 'desc'),
);

export const lastUsedDefects = (db: ReadableDb): string[] =>
  usedDefects(db).flatMap(({ defect }) => (defect === null ? [] : [defect]));

const usedAction = first(() =>
  build
    .selectFrom('finding')
    .select('action')
    .where('action', 'is not', null)
    .orderBy('created_at_ms', 'desc')
    .limit(1),
);

export const lastUsedAction = (db: ReadableDb): string | null => usedAction(db)?.action ?? null;

export const linkBetween = first((fromId: Param<string>, toId: Param<string>) =>
  build.selectFrom('finding_link').selectAll().where('from_id', '=', fromId).where('to_id', '=', toId),
);

const proofByShot = first((findingId: Param<string>, shotId: Param<string>) =>
  build.selectFrom('proof').selectAll().where('finding_id', '=', findingId).where('shot_id', '=', shotId),
);

const proofByReading = first((findingId: Param<string>, readingId: Param<string>) =>
  build.selectFrom('proof').selectAll().where('finding_id', '=', findingId).where('reading_id', '=', readingId),
);

export const proofBy = (db: ReadableDb, findingId: string, by: { shotId: string } | { readingId: string }) =>
  'shotId' in by ? proofByShot(db, findingId, by.shotId) : proofByReading(db, findingId, by.readingId);

const superseding = all((visitId: Param<string>) =>
  build.selectFrom('finding').select('supersedes').where('visit_id', '=', visitId).where('binned', '=', 0),
);

/** Findings that say they replace this one. */
export const supersededIds = (db: ReadableDb, visitId: string): Set<string> =>
  new Set(superseding(db, visitId).flatMap(({ supersedes }) => (supersedes === null ? [] : [supersedes])));
