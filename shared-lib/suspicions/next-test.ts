import type { Suspicion } from '../choices/records.ts';
import type { VisitRecord } from '../contract/visits.ts';
import { defectOf } from '../defects/index.ts';
import { type Detector, detectionTable, type Power } from '../methods/detection-power.ts';
import { methodOf } from '../methods/index.ts';
import { detectionPower } from '../methods/not-found.ts';
import type { MethodCode } from '../model/finding.ts';
import type { Reading } from '../model/reading.ts';
import { isBelow } from '../parts/is-below.ts';
import { standingFindings } from '../ranking/to-rankable.ts';
import { fitsPart, usualPlace } from '../readings/sheet-places.ts';
import { sheets } from '../sheets/index.ts';
import type { OpenQuestion, Sheet } from '../sheets/sheet-kind.ts';
import { worstVerdict } from '../verdict/worst.ts';
import { leftOpenBy } from './own-limit.ts';
import { suspicionState } from './table.ts';

/** A test that has not been made, and what it could say of each open suspicion. */
export interface NextTest {
  readonly key: string;
  readonly name: string;
  /** A sheet to fill, with where it is taken; a method is looked with and becomes a finding. */
  readonly open: { readonly sheet: string; readonly at: string | null } | null;
  /** It was made already, but not so that it could tell: what has to be different. Else empty. */
  readonly again: string;
  /** Something has to be taken apart for it. */
  readonly isOpened: boolean;
  readonly shows: readonly { readonly suspicionId: string; readonly power: Power }[];
}

/** In one line, for people. */
export const nextTestRule =
  'First what tells open suspicions apart as the machine stands, then what does so once it is opened; then what can show most.';

/** How many are offered: a list to choose from, not a programme. */
const mostOffered = 4;

const worth: Readonly<Record<Power, number>> = { good: 2, partial: 1, cannot: 0 };

/** Sheets that stand in the published table of what can show what. */
const detectorOf: Readonly<Record<string, Detector>> = {
  'MS-09': 'gas-test',
  'MS-10': 'compression',
  'MS-11': 'cylinder-leakage',
  'MS-29': 'PR',
};

/** Sheets and methods that ask for an opened engine or a bared surface. Handbook chapters 4 and 5; common practice, no source. */
const opened: ReadonlySet<string> = new Set([
  ...['MS-12', 'MS-13', 'MS-14', 'MS-15', 'MS-16', 'MS-17', 'MS-29'],
  ...['PT', 'MT', 'MG', 'UT', 'VAC'],
]);

/** These follow a thing once it is found, or write a size down: they find nothing out. */
const followsOnly: ReadonlySet<string> = new Set(['MS-23', 'MS-24', 'MS-31', 'MS-32']);

const isTabled = (defect: string): boolean => detectionTable.some(({ defects }) => defects.includes(defect));

/** What a sheet could say: by the table where it speaks of the defect, else by what it points to, else by its place. */
function powerOfSheet(sheet: Sheet, { defect, at }: Suspicion): Power {
  const detector = detectorOf[sheet.id];
  if (defect !== null && detector !== undefined && isTabled(defect)) return detectionPower(defect, detector, at);
  const near = at !== null && fitsPart(sheet, at);
  if (defect === null) return near ? 'partial' : 'cannot';
  const points = Object.values(sheet.results).some(({ suggests }) => suggests === defect);
  return points && (near || at === null || sheet.takenAt.length === 0) ? 'partial' : 'cannot';
}

/** Clauses a test taken otherwise would answer: one taken cold, that could be taken hot. */
function answeredOtherwise(sheet: Sheet, reading: Reading): string {
  const { open } = leftOpenBy(reading);
  const settled = sheet.leavesOpen.passed.find(
    (question): question is Exclude<OpenQuestion, string> =>
      typeof question !== 'string' && open.includes(question.what),
  );
  if (settled === undefined) return '';
  const { field, atLeast } = settled.unless;
  const spec = { ...sheet.inputs, ...sheet.conditions }[field];
  if (spec === undefined || !('unit' in spec)) return '';
  return `with ${spec.label.toLowerCase()} ${atLeast} ${spec.unit} or more`;
}

type Told = Pick<VisitRecord, 'findings' | 'readings' | 'layout' | 'choices'>;

function sheetTests(open: readonly Suspicion[], record: Told): NextTest[] {
  return sheets.flatMap((sheet): NextTest[] => {
    if (followsOnly.has(sheet.id)) return [];
    const taken = record.readings.filter(
      ({ sheet: id, results }) =>
        id === sheet.id && !['void', 'not taken'].includes(worstVerdict(results.map(({ verdict }) => verdict))),
    );
    const last = taken.at(-1);
    const otherwise = taken.map((reading) => answeredOtherwise(sheet, reading));
    // One that was once taken as it should be need not be taken again.
    const again = otherwise.every((each) => each !== '') ? (otherwise.at(-1) ?? '') : '';
    if (last !== undefined && again === '') return [];
    const place = open.find(({ at }) => at !== null && fitsPart(sheet, at))?.at ?? null;
    const at = last?.at ?? (place !== null && sheet.takenAt.some((part) => isBelow(place, part)) ? place : null);
    return [
      {
        key: sheet.id,
        name: sheet.name,
        open: { sheet: sheet.id, at: at ?? usualPlace(sheet, record.layout.layout) },
        again,
        isOpened: opened.has(sheet.id),
        shows: open.map((suspicion) => ({ suspicionId: suspicion.id, power: powerOfSheet(sheet, suspicion) })),
      },
    ];
  });
}

/** Ways to look, where it is said what is looked for. */
function methodTests(open: readonly Suspicion[], record: Told): NextTest[] {
  const codes = new Set(open.flatMap(({ defect }) => defectOf(defect)?.confirmedBy ?? []));
  const used = (code: MethodCode, { defect, at }: Suspicion): boolean =>
    standingFindings(record.findings).some(
      (finding) =>
        finding.defect === defect &&
        finding.state !== 'not-examined' &&
        finding.methods.includes(code) &&
        (at === null || finding.locations.some((place) => isBelow(place, at) || isBelow(at, place))),
    );
  // A pressure test, a size, a function and an electrical test each have their sheets.
  const own = [...codes].filter((code) => !['PR', 'M', 'F', 'E'].includes(code));
  return own.map((code) => ({
    key: code,
    name: methodOf(code).name,
    open: null,
    again: '',
    isOpened: opened.has(code),
    shows: open.map((suspicion) => ({
      suspicionId: suspicion.id,
      power:
        suspicion.defect === null || used(code, suspicion)
          ? ('cannot' as const)
          : detectionPower(suspicion.defect, code, suspicion.at),
    })),
  }));
}

const total = ({ shows }: NextTest): number => shows.reduce((sum, { power }) => sum + worth[power], 0);

/** How far it tells the open suspicions apart: the differences of what it can show, over every two of them. */
const splits = ({ shows }: NextTest): number =>
  shows.reduce(
    (sum, { power }, index) =>
      sum + shows.slice(index + 1).reduce((inner, other) => inner + Math.abs(worth[power] - worth[other.power]), 0),
    0,
  );

/**
 * The tests still to be made that would tell most of the open suspicions, best first. It proposes; which is made, and
 * whether it may be made safely, the mechanic says.
 *
 * Source: the handbook's 1.2 step 8 (the next cheapest test that would split them) with its table 4.1a; common practice,
 * no source.
 */
export function nextTests(record: Told): readonly NextTest[] {
  const open = (record.choices?.suspicions ?? []).filter((suspicion) => suspicionState(suspicion) === 'open');
  return [...sheetTests(open, record), ...methodTests(open, record)]
    .filter((test) => total(test) > 0)
    .map((test, order) => ({ test, order }))
    .toSorted(
      (a, b) =>
        Number(splits(a.test) === 0) - Number(splits(b.test) === 0) ||
        Number(a.test.isOpened) - Number(b.test.isOpened) ||
        splits(b.test) - splits(a.test) ||
        total(b.test) - total(a.test) ||
        a.order - b.order,
    )
    .slice(0, mostOffered)
    .map(({ test }) => test);
}
