import type { ComparedReading } from '../contract/returning.ts';
import type { FittedPart } from '../model/machine.ts';
import type { Reading, ResultLine } from '../model/reading.ts';
import { samePlace } from '../parts/same-place.ts';
import { speakComponent } from '../parts/speak-component.ts';
import type { BadWay } from '../quantities/dictionary.ts';
import { type ReadNumber, readNumber } from '../quantities/read-number.ts';
import { convert, convertDifference, unitNamed } from '../quantities/units.ts';
import { resultKindOf } from '../readings/result-kind.ts';
import { showResult } from '../report/reading-words.ts';
import { compareValues, type ValueThen } from './compare-values.ts';
import { partChanged } from './part-changed.ts';
import type { VisitNow, VisitThen } from './visit-then.ts';

/** Outside it two readings of one sheet are not alike. Source: the handbook's chapter 8, common practice, no source. */
const temperatureBandDegC = 10;
/** Of a number that was written down in one unit and again, rounded, in another. */
const roundingShare = 0.005;

const numberOf = ({ value, uncertainty }: ResultLine): ValueThen | null => {
  const read = value === null ? null : readNumber(value);
  if (read === null) return null;
  const off = uncertainty === null ? null : readNumber(uncertainty);
  return {
    value: read.value,
    unit: read.unitText,
    uncertainty: off === null || (off.unitText !== '' && off.unitText !== read.unitText) ? null : off.value,
  };
};

/** Which way is bad is where the limit lies; without one, neither. */
const badWay = ({ limit }: ResultLine): BadWay => {
  const high = limit?.max ?? limit?.badAbove;
  const low = limit?.min ?? limit?.badBelow;
  if (high !== undefined && low !== undefined) return 'either';
  return high !== undefined ? 'higher' : low !== undefined ? 'lower' : 'neither';
};

/** How far two conditions lie apart, in the first one's unit; null where their units do not go together. */
function farApart(was: ReadNumber, is: ReadNumber): number | null {
  if (was.unitText === is.unitText) return Math.abs(was.value - is.value);
  const [from, to] = [unitNamed(is.unitText), unitNamed(was.unitText)];
  const value = from === null || to === null ? null : convert(is.value, from, to);
  if (value === null) return null;
  // 3281 ft and 1000 m are one altitude: what rounding to another unit leaves is no difference.
  const difference = Math.abs(was.value - value);
  return difference <= roundingShare * Math.abs(was.value) ? 0 : difference;
}

/** Why the two are not taken alike; null where nothing speaks against it. */
function unlike(then: Conditions, now: Conditions): string | null {
  for (const [name, typed] of Object.entries(now)) {
    const before = Object.hasOwn(then, name) ? then[name] : undefined;
    if (before === undefined || before.trim() === '' || typed.trim() === '' || before.trim() === typed.trim()) continue;
    const [was, is] = [readNumber(before), readNumber(typed)];
    const words = `${name.replaceAll(/([a-z])([A-Z])/g, '$1 $2').toLowerCase()} ${before.trim()} then, ${typed.trim()} now`;
    if (was === null || is === null) {
      if (was === null && is === null) return words;
      continue;
    }
    const difference = farApart(was, is);
    if (/temp/i.test(name) && difference !== null && difference > bandIn(was.unitText)) return words;
    if (/load|altitude/i.test(name) && difference !== 0) return words;
  }
  return null;
}

/** The band in degrees of the unit a temperature was written in. */
function bandIn(unitText: string): number {
  const [celsius, unit] = [unitNamed('°C'), unitNamed(unitText)];
  const band = celsius === null || unit === null ? null : convertDifference(temperatureBandDegC, celsius, unit);
  return band ?? temperatureBandDegC;
}

type Conditions = Readonly<Record<string, string>>;

const lastLike = (reading: Reading, earlier: readonly VisitThen[]) =>
  earlier.toReversed().flatMap((visit) =>
    visit.input.readings
      .filter(
        ({ sheet, at, notTakenBecause }) =>
          sheet === reading.sheet && notTakenBecause === null && samePlace(at, reading.at),
      )
      .map((earlierOne) => ({ visit, earlierOne }))
      .slice(-1),
  )[0];

/** Each reading of this visit beside the last one of the same sheet at the same place. */
export function compareReadings(
  now: VisitNow,
  earlier: readonly VisitThen[],
  fittedParts: readonly FittedPart[],
): ComparedReading[] {
  const stays = [...earlier, now].map(({ id, trueHours }) => ({ id, hours: trueHours }));
  const units = now.input.units ?? 'metric';
  return now.input.readings.flatMap((reading): ComparedReading[] => {
    const like = reading.notTakenBecause === null ? lastLike(reading, earlier) : undefined;
    if (like === undefined) return [];
    const { visit, earlierOne } = like;
    const hours = now.trueHours === null || visit.trueHours === null ? null : now.trueHours - visit.trueHours;
    const part = partChanged(reading.at, [visit.id, now.id], stays, fittedParts);
    const apart = unlike(
      { ...visit.conditions, ...earlierOne.conditions },
      { ...now.conditions, ...reading.conditions },
    );
    return reading.results.flatMap((line): ComparedReading[] => {
      const before = earlierOne.results.find(({ of }) => of === line.of);
      const [was, is] = [before === undefined ? null : numberOf(before), numberOf(line)];
      if (before === undefined || was === null || is === null) return [];
      const shown = (value: ValueThen) => {
        const [from, of] = value === was ? [earlierOne, before] : [reading, line];
        return showResult(of.value ?? '', of.uncertainty, units, resultKindOf(from, of.of));
      };
      const compared = compareValues({ what: line.of, bad: badWay(line), was, now: is, hours, units, shown });
      const stop = part ?? apart;
      return [
        {
          ...compared,
          ...(stop === null ? {} : { change: `not comparable: ${stop}`, state: 'not-comparable' as const }),
          place: speakComponent(reading.at, now.input.layout),
          readingId: reading.id,
          date: visit.date,
        },
      ];
    });
  });
}
