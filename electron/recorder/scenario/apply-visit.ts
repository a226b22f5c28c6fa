import { join } from 'node:path';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import type { OfferedFile } from '../../../shared-lib/contract/shots.ts';
import { defectOf } from '../../../shared-lib/defects/index.ts';
import type { ResultLine } from '../../../shared-lib/model/reading.ts';
import type { Shot } from '../../../shared-lib/model/shot.ts';
import type { Moment } from '../../../shared-lib/model/time.ts';
import type { Scenario } from '../../../shared-lib/scenario/schema.ts';
import type { CallAs, Context } from '../context.ts';
import { shotById } from '../photos/queries.ts';
import { takeIntoVisit } from '../photos/run-import.ts';
import { withTestPicture } from '../photos/test-picture.ts';
import { applyChoices } from './apply-choices.ts';
import { applyWork } from './apply-work.ts';
import { fillSheet } from './fill-sheet.ts';
import { timesOfVisit } from './times-of-visit.ts';

type ScenarioVisit = Scenario['visits'][number];
type ScenarioFinding = NonNullable<ScenarioVisit['findings']>[number];
type ScenarioReading = NonNullable<ScenarioVisit['readings']>[number];
type ScenarioShot = NonNullable<ScenarioVisit['shots']>[number];

export interface Applying {
  readonly context: Context;
  readonly folder: string;
  readonly machineId: string;
  readonly personIds: ReadonlyMap<string, string>;
  readonly meterIds: ReadonlyMap<string, string>;
  readonly applied: {
    readonly visits: Map<string, string>;
    readonly findings: Map<string, string>;
    readonly leftOut: Set<string>;
  };
}

const text = (value: string | number): string => String(value);

const takenOrThrow = (file: OfferedFile | undefined): string => {
  if (file?.accepted) return file.shotId;
  throw file ? new AppError(file.error.code, { ...file.error.details }) : new Error('no file was taken in');
};

const openVisit = async (
  { context, machineId, personIds, meterIds }: Applying,
  visit: ScenarioVisit,
  as: CallAs,
): Promise<string> => {
  const personId = personIds.get(visit.by);
  const input = {
    machineId,
    date: visit.date,
    complaint: visit.complaint,
    use: visit.use,
    conditions: visit.conditions,
    ...(personId === undefined ? {} : { personId }),
    meter: {
      meterId: meterIds.get(visit.meter.id) ?? null,
      typed: text(visit.meter.reading),
      reading: Number.parseFloat(text(visit.meter.reading)),
      estimate: visit.meter.estimate ?? false,
    },
    scope: visit.scope.map(({ item, notExaminedBecause = null, notApplicableBecause = null }) => ({
      path: item,
      notExaminedBecause,
      notApplicableBecause,
    })),
  };
  const record = await context.call('visit.open', input, as);
  return record.visit.id;
};

const findingInput = (finding: ScenarioFinding) => ({
  kind: finding.kind,
  defect: finding.defect ?? null,
  locations: finding.locations,
  words: finding.words,
  state: finding.state ?? ('confirmed' as const),
  methods: finding.methods ?? [],
  quantities: Object.fromEntries(
    Object.entries(finding.quantities ?? {}).map(([id, typed]) => [
      id,
      { typed: text(typed), origin: finding.origin ?? ('measured' as const) },
    ]),
  ),
  // A none-found and an observation have no judgements; the file then leaves them out.
  safety: finding.safety === undefined ? null : (finding.safety ?? ('none' as const)),
  urgency: finding.urgency ?? null,
  runWorse: finding.runWorse ?? null,
  damageClass: finding.damageClass ?? null,
  facts: finding.facts ?? [],
  notExaminedBecause: finding.notExaminedBecause ?? null,
  namedConditionDeclinedBecause: finding.namedConditionDeclinedBecause ?? null,
  loopStart: finding.loopStart ?? false,
  foundOn: finding.found ?? null,
  ifLeft: finding.ifLeft ?? '',
  watchFor: finding.watchFor ?? '',
  action: finding.action ?? null,
  actionWords: finding.actionWords ?? '',
  doNotOperate: finding.doNotOperate ?? false,
  doNotRun: finding.doNotRun ?? false,
});

const resultLine = (result: ScenarioReading['results'][number]): ResultLine => ({
  of: result.of,
  // Where a published standard's result stands beside the approximation, the standard is the basis of the verdict.
  value: result.standard !== undefined ? text(result.standard) : result.value !== undefined ? text(result.value) : null,
  seen: result.seen ?? null,
  limit: result.limit
    ? {
        source: result.limit.source,
        ...(result.limit.min === undefined ? {} : { min: text(result.limit.min) }),
        ...(result.limit.max === undefined ? {} : { max: text(result.limit.max) }),
        ...(result.limit.badBelow === undefined ? {} : { badBelow: text(result.limit.badBelow) }),
        ...(result.limit.badAbove === undefined ? {} : { badAbove: text(result.limit.badAbove) }),
        ...(result.limit.page === undefined ? {} : { page: result.limit.page }),
      }
    : null,
  uncertainty: result.u === undefined ? null : text(result.u),
  uncertaintyFrom: result.uFrom ?? null,
  verdict: result.verdict,
});

/** The file's word on when it was taken, where the photo itself does not say. */
const takenAs = ({ takenAt }: ScenarioShot, shot: Shot | undefined): { taken?: Moment } => {
  if (takenAt === undefined || !shot || shot.taken !== null) return {};
  const [, sign, hours = '0', minutes = '0'] = /([+-])(\d{2}):(\d{2})$/.exec(takenAt) ?? [];
  const zoneOffsetMin = (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes));
  return { taken: { atMs: Date.parse(takenAt), zoneOffsetMin, source: 'typed' } };
};

/** Photos of a visit, with the marks that the file draws on them. */
const takeShots = async (
  { context, folder, applied }: Applying,
  visit: ScenarioVisit,
  visitId: string,
  shots: readonly ScenarioShot[],
) => {
  const taken = await takeIntoVisit(
    context,
    visitId,
    shots.map(({ file }) => join(folder, file)),
  );
  for (const [index, shot] of shots.entries()) {
    const shotId = takenOrThrow(taken[index]);
    await context.call('shot.change', {
      id: shotId,
      component: shot.component ?? null,
      caption: shot.caption ?? '',
      seenFrom: shot.seenFrom ?? '',
      ...takenAs(shot, shotById(context.db, shotId)),
    });
    for (const mark of shot.marks ?? []) {
      await context.call('mark.add', {
        shotId,
        shape: mark.shape,
        points: mark.points.map(([x, y]) => ({ x, y })),
        findingId: mark.finding === undefined ? null : (applied.findings.get(`${visit.id}/${mark.finding}`) ?? null),
        role: mark.finding === undefined ? 'note' : 'finding',
      });
    }
    // After the marks: it takes over those that have none yet.
    if (shot.scale) await context.call('calibration.add', { shotId, reference: shot.scale });
  }
};

/** A finding that the file says a photo shows, without naming one, gets a plain labelled test picture with its mark. */
const takeTestPicture = async (
  { context }: Applying,
  visitId: string,
  findingId: string,
  finding: ScenarioFinding,
): Promise<void> => {
  await withTestPicture(`Test picture: ${finding.words}`, async (path, size) => {
    const [file] = await takeIntoVisit(context, visitId, [path]);
    const shotId = takenOrThrow(file);
    await context.call('shot.change', { id: shotId, component: finding.locations[0]?.split('@')[0] ?? null });
    const shape = defectOf(finding.defect ?? null)?.mark ?? 'point';
    const at = (x: number, y: number) => ({ x: x * size.width, y: y * size.height });
    const corners = [at(0.3, 0.4), at(0.7, 0.55), at(0.5, 0.7)];
    const points =
      shape === 'point' ? corners.slice(0, 1) : shape === 'area' || shape === 'path' ? corners : corners.slice(0, 2);
    await context.call('mark.add', { shotId, shape, points, findingId });
  });
};

/** One visit of a scenario, in the order a mechanic would enter it: findings, readings, photos, and what shows what. */
export const applyVisit = async (applying: Applying, visit: ScenarioVisit): Promise<void> => {
  const { context, applied } = applying;
  const times = timesOfVisit(visit, context.zoneOffsetMin());
  const at = (atMs: number) => ({ clock: () => atMs });
  const visitId = await openVisit(applying, visit, at(times.openedAtMs));
  applied.visits.set(visit.id, visitId);
  for (const work of visit.received?.earlierWork ?? []) await context.call('earlierWork.add', { visitId, ...work });
  for (const fluid of visit.received?.fluids ?? []) await context.call('fluid.note', { visitId, ...fluid });
  const idOf = (id: string): string => {
    const found = applied.findings.get(`${visit.id}/${id}`);
    if (found === undefined) throw new AppError('not-found', { record: 'finding', id });
    return found;
  };
  for (const finding of visit.findings) {
    const trackOf = finding.track === undefined ? undefined : applied.findings.get(finding.track);
    const input = { visitId, ...findingInput(finding), ...(trackOf === undefined ? {} : { trackOf }) };
    const added = await context.call('finding.add', input, at(times.findingAtMs(finding.id)));
    applied.findings.set(`${visit.id}/${finding.id}`, added.id);
  }
  const readingIds = new Map<string, string>();
  const opened = await context.call('visit.get', { id: visitId });
  const around = { conditions: opened.visit.conditions, volts: opened.layout.layout.volts };
  for (const reading of visit.readings ?? []) {
    const asText = (values: Record<string, string | number> = {}) =>
      Object.fromEntries(Object.entries(values).map(([id, value]) => [id, text(value)]));
    const head = { visitId, sheet: reading.sheet, at: reading.at, remark: reading.remark ?? '' };
    const filled = fillSheet(reading, around);
    const takenAt = at(times.readingAtMs(reading.id));
    const { id } = filled
      ? await context.call('reading.fill', { ...head, ...filled }, takenAt)
      : await context.call(
          'reading.record',
          {
            ...head,
            inputs: asText(reading.inputs),
            conditions: asText(reading.conditions),
            results: reading.results.map(resultLine),
          },
          takenAt,
        );
    readingIds.set(reading.id, id);
  }
  for (const finding of visit.findings) {
    for (const link of finding.leadsTo ?? []) {
      const { id, certainty = 'suspected', evidence = [] } = typeof link === 'string' ? { id: link } : link;
      const shownBy = evidence.map((ref) => {
        const readingId = readingIds.get(ref);
        return readingId === undefined ? { findingId: idOf(ref) } : { readingId };
      });
      await context.call('finding.link', { fromId: idOf(finding.id), toId: idOf(id), certainty, shownBy });
    }
  }
  const shots = visit.shots ?? [];
  await takeShots(applying, visit, visitId, shots);
  const shownOnShots = new Set(shots.flatMap(({ marks = [] }) => marks.flatMap(({ finding }) => finding ?? [])));
  for (const finding of visit.findings) {
    for (const by of finding.shownBy ?? []) {
      const readingId = readingIds.get(by);
      if (readingId !== undefined) await context.call('finding.showBy', { findingId: idOf(finding.id), readingId });
      if (by === 'photo' && !shownOnShots.has(finding.id))
        await takeTestPicture(applying, visitId, idOf(finding.id), finding);
    }
  }
  const decidedAtMs = times.openedAtMs + 7 * 60 * 60_000;
  await applyChoices({ context, visit, visitId, findingId: idOf, readingIds, times, decidedAtMs });
  await applyWork({ context, visit, visitId, findingId: idOf, readingIds });
  if (visit.left) {
    const leftAtMs = Date.parse(visit.left === true ? `${visit.date}T16:00:00Z` : visit.left);
    await context.call('visit.change', { id: visitId, leftAtMs });
  }
};
