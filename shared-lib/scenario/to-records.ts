import { defectOf } from '../defects/index.ts';
import type { Finding, FindingLink, FindingProof } from '../model/finding.ts';
import type { FittedPart, LayoutVersion, Machine, Meter, Owner } from '../model/machine.ts';
import type { Quantity } from '../model/quantity.ts';
import type { Reading, ResultLine } from '../model/reading.ts';
import type { Person, Shop } from '../model/shop.ts';
import type { ScopeItem, Visit } from '../model/visit.ts';
import { quantityKind } from '../quantities/dictionary.ts';
import { readQuantity } from '../quantities/read-quantity.ts';
import type { Scenario } from './schema.ts';
import type { ScenarioFinding, ScenarioReading, ScenarioShot, ScenarioVisit } from './shape.ts';

/** A photo that a file asks for: a named one, or `null` for the plain labelled picture that shows a finding. */
export interface WantedShot {
  readonly id: string;
  readonly visitId: string;
  readonly shot: ScenarioShot | null;
  /** The findings it shows, with or without a mark. */
  readonly findingIds: readonly string[];
}

export interface VisitRecords {
  /** The file's own id of the visit. */
  readonly name: string;
  readonly visit: Visit;
  readonly scope: readonly ScopeItem[];
  readonly findings: readonly Finding[];
  readonly links: readonly FindingLink[];
  readonly proofs: readonly FindingProof[];
  readonly readings: readonly Reading[];
  readonly shots: readonly WantedShot[];
  /** From the file's id of a finding to the record's. */
  readonly findingIdOf: ReadonlyMap<string, string>;
}

export interface ScenarioRecords {
  readonly shop: Shop;
  readonly people: readonly Person[];
  readonly owner: Owner;
  readonly machine: Machine;
  readonly layout: LayoutVersion;
  readonly meters: readonly Meter[];
  readonly fittedParts: readonly FittedPart[];
  readonly visits: readonly VisitRecords[];
}

/** Where ids come from; the mapper makes none itself. `what` names the record, for those who want readable ids. */
export type MakeId = (what: string) => string;

interface Place {
  readonly scenario: Scenario;
  readonly makeId: MakeId;
  readonly machineId: string;
  readonly layoutId: string;
  readonly personIdOf: ReadonlyMap<string, string>;
  readonly meterIdOf: ReadonlyMap<string, string>;
  /** Findings of earlier visits, as `V1/F1`. */
  readonly tracked: Map<string, Finding>;
}

/** A whole file as the record would hold it, pure: no clock, and ids only from `makeId`. */
export function toRecords(scenario: Scenario, makeId: MakeId): ScenarioRecords {
  const machineId = makeId('machine');
  const layoutId = makeId('layout');
  const personIdOf = new Map(scenario.people.map(({ id }) => [id, makeId(`person ${id}`)]));
  const meterIdOf = new Map(scenario.machine.meters.map(({ id }) => [id, makeId(`meter ${id}`)]));
  const place: Place = { scenario, makeId, machineId, layoutId, personIdOf, meterIdOf, tracked: new Map() };
  const visitIdOf = new Map(scenario.visits.map(({ id }) => [id, makeId(`visit ${id}`)]));
  const { plate } = scenario.machine;
  return {
    shop: {
      name: scenario.shop.name,
      address: scenario.shop.address ?? '',
      phone: '',
      units: scenario.shop.units,
      paper: scenario.shop.units === 'us' ? 'us-letter' : 'a4',
      timeZone: scenario.shop.timeZone,
    },
    people: scenario.people.map(({ id, name, trade }) => ({
      id: wanted(personIdOf, id),
      name,
      trade: trade ?? '',
      here: true,
    })),
    owner: { id: makeId('owner'), ...scenario.owner },
    machine: { id: machineId, createdAtMs: startOfDayMs(scenario.visits[0]?.date), ...plate },
    layout: { id: layoutId, machineId, version: 1, layout: scenario.machine.layout },
    meters: scenario.machine.meters.map((meter) => ({
      id: wanted(meterIdOf, meter.id),
      machineId,
      name: meter.id,
      offsetHours: readQuantity(String(meter.offset), 'h', 'measured').value ?? 0,
      from: meter.from ?? null,
      until: meter.until ?? null,
      dead: meter.dead ?? false,
    })),
    fittedParts: (scenario.machine.fittedParts ?? []).map((part) => ({
      id: makeId(`part ${part.at}`),
      machineId,
      path: part.at,
      kind: part.kind,
      fittedVisitId: visitIdOf.get(part.visit) ?? null,
      fittedHours: part.hours === undefined ? null : readQuantity(String(part.hours), 'h', 'measured').value,
      removedVisitId: part.removed === undefined ? null : (visitIdOf.get(part.removed) ?? null),
      removedHours: null,
    })),
    visits: scenario.visits.map((visit) => visitRecords(visit, wanted(visitIdOf, visit.id), place)),
  };
}

function visitRecords(source: ScenarioVisit, visitId: string, place: Place): VisitRecords {
  const { makeId } = place;
  const name = (what: string) => makeId(`${source.id}/${what}`);
  const findingIdOf = new Map(source.findings.map(({ id }) => [id, name(id)]));
  const readingIdOf = new Map((source.readings ?? []).map(({ id }) => [id, name(id)]));
  const numbers = numbersOf(source, place);
  const findings = source.findings.map((finding) =>
    findingRecord(finding, {
      id: wanted(findingIdOf, finding.id),
      visitId,
      number: numbers.get(finding.id) ?? 1,
      trackOf: finding.track === undefined ? null : (place.tracked.get(finding.track)?.id ?? null),
      date: source.date,
    }),
  );
  for (const [index, finding] of findings.entries()) {
    place.tracked.set(`${source.id}/${source.findings[index]?.id ?? ''}`, finding);
  }

  const shots: WantedShot[] = (source.shots ?? []).map((shot) => ({
    id: name(`shot ${shot.file}`),
    visitId,
    shot,
    findingIds: [...new Set((shot.marks ?? []).flatMap(({ finding }) => findingIdOf.get(finding ?? '') ?? []))],
  }));
  const proofs: FindingProof[] = shots.flatMap(({ id, findingIds }) =>
    findingIds.map((findingId) => ({ id: name(`proof ${findingId} ${id}`), findingId, shotId: id, readingId: null })),
  );
  for (const finding of source.findings) {
    const findingId = wanted(findingIdOf, finding.id);
    for (const shownBy of finding.shownBy ?? []) {
      const readingId = readingIdOf.get(shownBy) ?? null;
      if (readingId !== null) {
        proofs.push({ id: name(`proof ${finding.id} ${shownBy}`), findingId, shotId: null, readingId });
      } else if (!shots.some(({ findingIds }) => findingIds.includes(findingId))) {
        const id = name(`shot ${finding.id}`);
        shots.push({ id, visitId, shot: null, findingIds: [findingId] });
        proofs.push({ id: name(`proof ${finding.id} photo`), findingId, shotId: id, readingId: null });
      }
    }
  }

  return {
    name: source.id,
    visit: {
      id: visitId,
      machineId: place.machineId,
      layoutId: place.layoutId,
      personId: place.personIdOf.get(source.by) ?? null,
      date: source.date,
      complaint: source.complaint,
      use: source.use,
      conditions: Object.fromEntries(Object.entries(source.conditions).map(([key, value]) => [key, String(value)])),
      meter: {
        meterId: place.meterIdOf.get(source.meter.id) ?? null,
        typed: String(source.meter.reading),
        reading: readQuantity(String(source.meter.reading), 'h', 'measured').value,
        estimate: source.meter.estimate ?? false,
      },
      currentPart: null,
      openedAtMs: startOfDayMs(source.date),
      leftAtMs: leftAtMsOf(source),
    },
    scope: source.scope.map((item, position) => ({
      id: name(`scope ${item.item}`),
      visitId,
      path: item.item,
      position,
      notExaminedBecause: item.notExaminedBecause ?? null,
      notApplicableBecause: item.notApplicableBecause ?? null,
    })),
    findings,
    links: source.findings.flatMap((finding) =>
      (finding.leadsTo ?? []).flatMap((target): FindingLink[] => {
        const to = typeof target === 'string' ? { id: target, certainty: 'suspected' as const } : target;
        const toId = findingIdOf.get(to.id);
        if (toId === undefined) return [];
        return [
          {
            id: name(`link ${finding.id} ${to.id}`),
            fromId: wanted(findingIdOf, finding.id),
            toId,
            certainty: to.certainty,
            join: 'and',
            evidence: 'evidence' in to ? (to.evidence ?? []).join(', ') : '',
          },
        ];
      }),
    ),
    proofs,
    readings: (source.readings ?? []).map((reading) =>
      readingRecord(reading, wanted(readingIdOf, reading.id), visitId, startOfDayMs(source.date)),
    ),
    shots,
    findingIdOf,
  };
}

/** A tracked finding keeps its tag number; the others take the file's own number where it is free, else the next free one. */
function numbersOf(source: ScenarioVisit, { tracked }: Place): ReadonlyMap<string, number> {
  const numbers = new Map<string, number>();
  for (const { id, track } of source.findings) {
    const before = track === undefined ? undefined : tracked.get(track)?.number;
    if (before !== undefined) numbers.set(id, before);
  }
  for (const { id } of source.findings) {
    if (numbers.has(id)) continue;
    const taken = new Set(numbers.values());
    const own = id.startsWith('F') ? Number(id.slice(1)) : source.findings.length;
    let number = Math.max(1, own);
    while (taken.has(number)) number += 1;
    numbers.set(id, number);
  }
  return numbers;
}

function findingRecord(
  source: ScenarioFinding,
  at: { id: string; visitId: string; number: number; trackOf: string | null; date: string },
): Finding {
  return {
    id: at.id,
    visitId: at.visitId,
    number: at.number,
    trackOf: at.trackOf,
    supersedes: null,
    supersededBecause: null,
    moved: null,
    createdAtMs: startOfDayMs(at.date),
    binned: false,
    kind: source.kind,
    defect: source.defect ?? null,
    words: source.words,
    state: source.state ?? 'confirmed',
    methods: source.methods ?? [],
    quantities: findingQuantities(source),
    safety: source.safety === null ? 'none' : (source.safety ?? null),
    urgency: source.urgency ?? null,
    runWorse: source.runWorse ?? null,
    damageClass: source.damageClass ?? null,
    facts: source.facts ?? [],
    locations: source.locations,
    notExaminedBecause: source.notExaminedBecause ?? null,
    namedConditionDeclinedBecause: source.namedConditionDeclinedBecause ?? null,
    ifLeft: source.ifLeft ?? '',
    watchFor: source.watchFor ?? '',
    action: source.action ?? null,
    actionWords: source.actionWords ?? '',
    doNotOperate: source.doNotOperate ?? false,
    doNotRun: source.doNotRun ?? false,
    loopStart: source.loopStart ?? false,
    foundOn: source.found ?? at.date,
  };
}

/** Quantities as typed. Their order is kept, the most telling one of the defect first. */
function findingQuantities(source: ScenarioFinding): Record<string, Quantity> {
  const order: readonly string[] = defectOf(source.defect ?? null)?.quantities ?? [];
  const rankOf = (id: string) => (order.includes(id) ? order.indexOf(id) : order.length);
  return Object.fromEntries(
    Object.entries(source.quantities ?? {})
      .sort(([a], [b]) => rankOf(a) - rankOf(b))
      .map(([id, typed]) => {
        const kind = quantityKind(id);
        return [id, readQuantity(String(typed), kind?.unit ?? '', source.origin ?? 'measured', kind)];
      }),
  );
}

function readingRecord(source: ScenarioReading, id: string, visitId: string, takenAtMs: number): Reading {
  const strings = (record: Record<string, string | number> | undefined) =>
    Object.fromEntries(Object.entries(record ?? {}).map(([key, value]) => [key, String(value)]));
  const typed = (value: string | number | undefined): string | null => (value === undefined ? null : String(value));
  return {
    id,
    visitId,
    sheet: source.sheet,
    sheetVersion: 0,
    at: source.at,
    inputs: strings(source.inputs),
    conditions: strings(source.conditions),
    remark: source.remark ?? '',
    notTakenBecause: null,
    instrumentId: null,
    takenAtMs,
    results: source.results.map((line): ResultLine => {
      const { limit } = line;
      return {
        of: line.of,
        value: typed(line.value),
        seen: line.seen ?? null,
        limit:
          limit === undefined
            ? null
            : {
                ...(limit.min === undefined ? {} : { min: String(limit.min) }),
                ...(limit.max === undefined ? {} : { max: String(limit.max) }),
                ...(limit.badBelow === undefined ? {} : { badBelow: String(limit.badBelow) }),
                ...(limit.badAbove === undefined ? {} : { badAbove: String(limit.badAbove) }),
                source: limit.source,
                ...(limit.page === undefined ? {} : { page: limit.page }),
              },
        uncertainty: typed(line.u),
        uncertaintyFrom: line.uFrom ?? null,
        verdict: line.verdict,
      };
    }),
  };
}

/** Midnight UTC of the visit's day: a file says no hour. */
const leftAtMsOf = ({ left, date }: Scenario['visits'][number]): number | null =>
  left === undefined || left === false ? null : left === true ? startOfDayMs(date) : Date.parse(left);

function startOfDayMs(date: string | undefined): number {
  return date === undefined ? 0 : Date.parse(`${date}T00:00:00Z`);
}

function wanted(ids: ReadonlyMap<string, string>, key: string): string {
  const id = ids.get(key);
  if (id === undefined) throw new RangeError(`no id was made for ${key}`);
  return id;
}
