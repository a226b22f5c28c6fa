import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { VisitRecord } from '../../../shared-lib/contract/visits.ts';
import type { Finding, FindingProof } from '../../../shared-lib/model/finding.ts';
import type { ImagePoint, Mark } from '../../../shared-lib/model/mark.ts';
import type { Shot } from '../../../shared-lib/model/shot.ts';
import { standingOf } from '../../../shared-lib/ranking/standing.ts';
import { buildReport } from '../../../shared-lib/report/build.ts';
import type { Report } from '../../../shared-lib/report/model.ts';
import type { ReportSource } from '../../../shared-lib/report/source.ts';
import { Scenario } from '../../../shared-lib/scenario/schema.ts';
import { toRecords } from '../../../shared-lib/scenario/to-records.ts';

const scenarioFolder = join(import.meta.dirname, '../../reference/scenarios');

export const sha256 = (bytes: string | Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** A photo of a sample: which finding it shows, and a mark in shares of its width and height. */
export interface SamplePhoto {
  readonly finding: number;
  readonly digest: string;
  readonly width: number;
  readonly height: number;
  readonly seenFrom?: string;
  readonly caption?: string;
  readonly shape?: Mark['shape'];
  readonly points?: readonly (readonly [number, number])[];
}

/** Ids that are the same in every run. */
const madeId = (what: string): string => {
  const hex = sha256(what);
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-7${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
};

const takenAtMs = Date.UTC(2026, 5, 8, 10, 12);

function shotOf(photo: SamplePhoto, index: number, visitId: string, personId: string | null): Shot {
  return {
    id: madeId(`shot ${index}`),
    visitId,
    digest: photo.digest,
    sequence: index + 1,
    offeredName: `IMG_${index + 1}.jpg`,
    caption: photo.caption ?? '',
    component: null,
    seenFrom: photo.seenFrom ?? 'the left',
    taken: { atMs: takenAtMs + index * 300_000, zoneOffsetMin: 0, source: 'camera' },
    takenLocal: null,
    camera: 'bench camera',
    clockOffsetMs: 0,
    takenBy: personId,
    width: photo.width,
    height: photo.height,
    mediaType: 'image/jpeg',
    remark: null,
    binned: false,
  };
}

const standardMark: readonly (readonly [number, number])[] = [
  [0.35, 0.5],
  [0.45, 0.46],
  [0.6, 0.52],
];

function markOf(photo: SamplePhoto, shot: Shot, findingId: string): Mark {
  const points = (photo.points ?? standardMark).map(
    ([x, y]): ImagePoint => ({ x: x * photo.width, y: y * photo.height }),
  );
  return {
    id: madeId(`mark ${shot.id}`),
    shotId: shot.id,
    findingId,
    shape: photo.shape ?? 'path',
    points,
    role: 'finding',
    origin: { by: 'hand' },
    calibrationId: null,
    tagAt: null,
    note: '',
  };
}

/** Takes photos into a record as the recorder would: shot, mark, proof; then the standing is made anew. */
export function withPhotos(source: ReportSource, photos: readonly SamplePhoto[]): ReportSource {
  const { record } = source;
  const shots = photos.map((photo, index) => shotOf(photo, index, record.visit.id, record.visit.personId));
  const findingOf = (number: number) => record.findings.find((finding) => finding.number === number);
  const shown = photos.flatMap((photo, index) => {
    const [shot, finding] = [shots[index], findingOf(photo.finding)];
    return shot && finding ? [{ photo, shot, finding }] : [];
  });
  const marks = shown.flatMap(({ photo, shot, finding }) =>
    photo.points?.length === 0 ? [] : [markOf(photo, shot, finding.id)],
  );
  const proofs: FindingProof[] = [
    ...record.proofs.filter(({ shotId }) => shotId === null),
    ...shown.map(({ shot, finding }) => ({
      id: madeId(`proof ${shot.id}`),
      findingId: finding.id,
      shotId: shot.id,
      readingId: null,
    })),
  ];
  return restood({ ...source, record: { ...record, shots, marks, proofs } });
}

/** The standing follows from the rest of the record. */
export function restood(source: ReportSource): ReportSource {
  const { record, shop } = source;
  const standing = standingOf({ ...record, layout: record.layout.layout, units: shop.units });
  return { ...source, record: { ...record, standing } };
}

export function changedFindings(source: ReportSource, change: (finding: Finding) => Partial<Finding>): ReportSource {
  const findings = source.record.findings.map((finding) => ({ ...finding, ...change(finding) }));
  return restood({ ...source, record: { ...source.record, findings } });
}

/** One visit of a worked case of the handbook, as the recorder would hold it. */
export function scenarioSource(file: string, visit = 0): ReportSource {
  const scenario = Scenario.parse(JSON.parse(readFileSync(join(scenarioFolder, file), 'utf8')));
  const records = toRecords(scenario, madeId);
  const chosen = records.visits[visit];
  if (!chosen) throw new RangeError(`${file} has no visit ${visit}`);
  const reading = chosen.visit.meter.reading;
  const meter = records.meters.find(({ id }) => id === chosen.visit.meter.meterId);
  const record: VisitRecord = {
    visit: chosen.visit,
    machine: records.machine,
    layout: records.layout,
    owner: records.owner,
    meters: records.meters,
    trueHours: reading === null ? null : reading + (meter?.offsetHours ?? 0),
    scope: chosen.scope,
    shots: [],
    marks: [],
    calibrations: [],
    sizes: [],
    findings: chosen.findings,
    links: chosen.links,
    proofs: chosen.proofs,
    readings: chosen.readings,
    standing: { lines: [], unranked: [], notLookedAt: [], coverage: { examined: 0, notExamined: 0, notApplicable: 0 } },
  };
  return restood({
    record,
    shop: { ...records.shop, phone: '0000 555 0142' },
    people: records.people,
    nowMs: Date.UTC(2026, 5, 8, 14, 30),
    zoneOffsetMin: 60,
    programVersion: '0.0.0',
  });
}

export const reportOf = (source: ReportSource): Report => buildReport(source, sha256);
