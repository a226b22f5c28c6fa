import type { Suspicion } from '../choices/records.ts';
import type { VisitRecord } from '../contract/visits.ts';
import { type Detector, detectionTable, type Power } from '../methods/detection-power.ts';
import { methodOf } from '../methods/index.ts';
import { detectionPower } from '../methods/not-found.ts';
import type { MethodCode } from '../model/finding.ts';
import type { Reading } from '../model/reading.ts';
import { isBelow } from '../parts/is-below.ts';
import { parseLocation } from '../parts/parse-location.ts';
import { standingFindings } from '../ranking/to-rankable.ts';
import { fitsPart, usualPlace } from '../readings/sheet-places.ts';
import { sheets } from '../sheets/index.ts';
import type { OpenQuestion, Sheet } from '../sheets/sheet-kind.ts';
import { worstVerdict } from '../verdict/worst.ts';
import { type Clues, cluesOf } from './clues.ts';
import { leftOpenBy } from './own-limit.ts';
import { type Symptom, symptoms } from './symptoms.ts';
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
  readonly shows: readonly Shows[];
}

/** Why a test is thought to say something: the kind of defect, what the words or the owner complain of, or its place alone. */
export type Reason = { readonly by: 'kind' | 'words' | 'complaint' | 'place'; readonly said: string };

/** What a test could say of one suspicion. */
export interface Shows {
  readonly suspicionId: string;
  readonly power: Power;
  /** Null where it says nothing of it. */
  readonly because: Reason | null;
}

/** In one line, for people. */
export const nextTestRule =
  'First what tells open suspicions apart as the machine stands, then what does so once it is opened; then what can show most. What is gone by is the kind that is said, else the words of the suspicion, then the complaint; a place alone comes last.';

/** How many are offered: a list to choose from, not a programme. */
const mostOffered = 4;

const worth: Readonly<Record<Power, number>> = { good: 2, partial: 1, cannot: 0 };

const reasons: readonly Reason['by'][] = ['kind', 'words', 'complaint', 'place'];
const reasonOrder = ({ because }: Shows): number => (because === null ? reasons.length : reasons.indexOf(because.by));

/** A place alone says nothing of what is wrong there: it neither shows nor tells apart. */
const tells = (shows: Shows): number => (shows.because?.by === 'place' ? 0 : worth[shows.power]);

/** Sheets that stand in the published table of what can show what. */
const detectors: ReadonlyMap<string, Detector> = new Map([
  ['MS-09', 'gas-test'],
  ['MS-10', 'compression'],
  ['MS-11', 'cylinder-leakage'],
  ['MS-29', 'PR'],
]);
const detectorOf = (sheet: string): Detector | null => detectors.get(sheet) ?? null;

/** Sheets and methods that ask for an opened engine or a bared surface. Handbook chapters 4 and 5; common practice, no source. */
const opened: ReadonlySet<string> = new Set([
  ...['MS-12', 'MS-13', 'MS-14', 'MS-15', 'MS-16', 'MS-17', 'MS-29'],
  ...['PT', 'MT', 'MG', 'UT', 'VAC'],
]);

/** These follow a thing once it is found, or write a size down: they find nothing out. */
const followsOnly: ReadonlySet<string> = new Set(['MS-23', 'MS-24', 'MS-31', 'MS-32']);

const isTabled = (defect: string): boolean => detectionTable.some(({ defects }) => defects.includes(defect));

const best = (shows: readonly Shows[]): Shows | null =>
  shows.toSorted((a, b) => worth[b.power] - worth[a.power] || reasonOrder(a) - reasonOrder(b))[0] ?? null;

/** What a sheet could say of one kind of defect: by the table where it speaks of it, else by what it points to. */
function powerForKind(sheet: Sheet, defect: string, at: string | null): Power {
  const detector = detectorOf(sheet.id);
  if (detector !== null && isTabled(defect)) return detectionPower(defect, detector, at);
  const points = Object.values(sheet.results).some(({ suggests }) => suggests === defect);
  const isNear = at === null || sheet.takenAt.length === 0 || fitsPart(sheet, at);
  return points && isNear ? 'partial' : 'cannot';
}

const systemOf = (path: string): string => parseLocation(path).path[0]?.code ?? '';

/** A complaint is of the whole machine: it speaks for a suspicion where the sheet is taken in the same system. */
const isInSystem = ({ takenAt }: Sheet, at: string | null): boolean =>
  at === null || takenAt.some((part) => systemOf(part) === systemOf(at));

/**
 * What a sheet could say of a suspicion, and why it is thought to: by the kind of defect; by what the suspicion's own words,
 * then the owner's, complain of; last by its place alone. A table that says it cannot show the kind stands before any words.
 */
function showsOfSheet(sheet: Sheet, suspicion: Suspicion, clues: Clues): Shows {
  const { id: suspicionId, at } = suspicion;
  const byKind = clues.kinds.map((kind): Shows => {
    const by = clues.isKindSaid ? 'kind' : 'words';
    return { suspicionId, power: powerForKind(sheet, kind.id, at), because: { by, said: kind.name.toLowerCase() } };
  });
  const found = best(byKind);
  const cannot: Shows = { suspicionId, power: 'cannot', because: null };
  if (found !== null && found.power !== 'cannot') return found;
  const isRuledOut = detectorOf(sheet.id) !== null && clues.kinds.some(({ id }) => isTabled(id));
  if (clues.isKindSaid || isRuledOut) return cannot;
  const asks = ({ sheets: ids }: Symptom) => ids.includes(sheet.id);
  const own = clues.own.find(asks);
  if (own !== undefined) return { suspicionId, power: 'partial', because: { by: 'words', said: own.name } };
  const told = isInSystem(sheet, at) ? clues.complaint.find(asks) : undefined;
  if (told !== undefined) return { suspicionId, power: 'partial', because: { by: 'complaint', said: told.name } };
  return at !== null && fitsPart(sheet, at)
    ? { suspicionId, power: 'partial', because: { by: 'place', said: '' } }
    : cannot;
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

type Told = Pick<VisitRecord, 'findings' | 'readings' | 'layout' | 'choices'> & {
  readonly visit: Pick<VisitRecord['visit'], 'complaint'>;
};

interface Open {
  readonly suspicion: Suspicion;
  readonly clues: Clues;
}

/** Taken at another of several like parts, it says nothing of this one: the left cylinder's drift of the right. */
function speaksOf(reading: Reading, { takenAt }: Sheet, { at }: Suspicion): boolean {
  if (at === null || isBelow(at, reading.at) || isBelow(reading.at, at)) return true;
  return !takenAt.some((part) => isBelow(at, part)) || !takenAt.some((part) => isBelow(reading.at, part));
}

const isTaken = ({ results }: Reading): boolean =>
  !['void', 'not taken'].includes(worstVerdict(results.map(({ verdict }) => verdict)));

/** What has to be otherwise for a sheet to tell more than it did; null where it told what it can. */
function askedAgain(sheet: Sheet, taken: readonly Reading[]): string | null {
  const otherwise = taken.map((reading) => answeredOtherwise(sheet, reading));
  // One that was once taken as it should be need not be taken again.
  return otherwise.every((each) => each !== '') ? (otherwise.at(-1) ?? '') : null;
}

function sheetTests(open: readonly Open[], record: Told): NextTest[] {
  return sheets.flatMap((sheet): NextTest[] => {
    if (followsOnly.has(sheet.id)) return [];
    const readings = record.readings.filter((reading) => reading.sheet === sheet.id && isTaken(reading));
    const takenOf = ({ suspicion }: Open) => readings.filter((reading) => speaksOf(reading, sheet, suspicion));
    const stillTells = open.filter((each) => askedAgain(sheet, takenOf(each)) !== null);
    if (stillTells.length === 0) return [];
    const last = stillTells.flatMap(takenOf).at(-1);
    const again = last === undefined ? '' : (askedAgain(sheet, readings) ?? '');
    const place = stillTells.find(({ suspicion: { at } }) => at !== null && fitsPart(sheet, at))?.suspicion.at ?? null;
    const at = last?.at ?? (place !== null && sheet.takenAt.some((part) => isBelow(place, part)) ? place : null);
    return [
      {
        key: sheet.id,
        name: sheet.name,
        open: { sheet: sheet.id, at: at ?? usualPlace(sheet, record.layout.layout) },
        again,
        isOpened: opened.has(sheet.id),
        shows: open.map((each) =>
          stillTells.includes(each)
            ? showsOfSheet(sheet, each.suspicion, each.clues)
            : { suspicionId: each.suspicion.id, power: 'cannot', because: null },
        ),
      },
    ];
  });
}

/** Ways to look, where it is said or can be read what is looked for. */
function methodTests(open: readonly Open[], record: Told): NextTest[] {
  const codes = new Set(open.flatMap(({ clues }) => clues.kinds.flatMap(({ confirmedBy }) => confirmedBy)));
  const used = (code: MethodCode, defect: string, { at }: Suspicion): boolean =>
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
    shows: open.map(({ suspicion, clues }): Shows => {
      const { id: suspicionId, at } = suspicion;
      const by = clues.isKindSaid ? 'kind' : 'words';
      const left = clues.kinds.filter(({ id }) => !used(code, id, suspicion));
      const shown = left.map(
        ({ id, name }): Shows => ({
          suspicionId,
          power: detectionPower(id, code, at),
          because: { by, said: name.toLowerCase() },
        }),
      );
      const found = best(shown);
      return found === null || found.power === 'cannot' ? { suspicionId, power: 'cannot', because: null } : found;
    }),
  }));
}

const total = ({ shows }: NextTest): number => shows.reduce((sum, each) => sum + tells(each), 0);

/** How far it tells the open suspicions apart: the differences of what it can show, over every two of them. */
const splits = ({ shows }: NextTest): number =>
  shows.reduce(
    (sum, each, index) =>
      sum + shows.slice(index + 1).reduce((inner, other) => inner + Math.abs(tells(each) - tells(other)), 0),
    0,
  );

const isByPlaceAlone = (test: NextTest): boolean => total(test) === 0;

/** The place of a sheet among those that ask about the same symptom; what is soonest done stands first. */
const orderOfAsking = ({ key, shows }: NextTest): number => {
  const named = shows.flatMap(({ because }) => symptoms.find(({ name }) => name === because?.said) ?? []);
  return Math.min(...named.map(({ sheets: ids }) => ids.indexOf(key)).filter((place) => place >= 0), symptoms.length);
};

/**
 * The tests still to be made that would tell most of the open suspicions, best first. It proposes; which is made, and
 * whether it may be made safely, the mechanic says.
 *
 * Source: the handbook's 1.2 step 8 (the next cheapest test that would split them) with its table 4.1a; common practice,
 * no source.
 */
export function nextTests(record: Told): readonly NextTest[] {
  const open = (record.choices?.suspicions ?? [])
    .filter((suspicion) => suspicionState(suspicion) === 'open')
    .map((suspicion): Open => ({ suspicion, clues: cluesOf(suspicion, record.visit.complaint) }));
  return [...sheetTests(open, record), ...methodTests(open, record)]
    .filter(({ shows }) => shows.some(({ power }) => power !== 'cannot'))
    .map((test, order) => ({ test, order }))
    .toSorted(
      (a, b) =>
        Number(isByPlaceAlone(a.test)) - Number(isByPlaceAlone(b.test)) ||
        Number(splits(a.test) === 0) - Number(splits(b.test) === 0) ||
        Number(a.test.isOpened) - Number(b.test.isOpened) ||
        splits(b.test) - splits(a.test) ||
        total(b.test) - total(a.test) ||
        strongest(a.test) - strongest(b.test) ||
        orderOfAsking(a.test) - orderOfAsking(b.test) ||
        a.order - b.order,
    )
    .slice(0, mostOffered)
    .map(({ test }) => test);
}

const strongest = ({ shows }: NextTest): number => Math.min(...shows.map(reasonOrder));
