import type { FittedPart } from '../model/machine.ts';
import type { Reading, ResultLine } from '../model/reading.ts';
import { type Stay, samePartBetween } from '../parts/same-part.ts';
import { readNumber } from '../quantities/read-number.ts';
import { readQuantity } from '../quantities/read-quantity.ts';
import { sheetOf } from '../sheets/index.ts';

/** A stay of the machine with what was read in it. */
export interface ReadStay extends Stay {
  readonly date: string;
  readonly hoursAreEstimate: boolean;
  readonly readings: readonly Reading[];
}

export interface SeriesPoint {
  readonly visitId: string;
  readonly date: string;
  /** True hours. */
  readonly hours: number;
  readonly hoursAreEstimate: boolean;
  readonly value: number;
}

/** One result of one sheet at one place, as it was read from stay to stay. */
export interface ReadingSeries {
  readonly sheet: string;
  readonly at: string;
  readonly of: string;
  /** Which number of a list: 1 is the first cylinder in the machine's own order; null for a single number. */
  readonly which: number | null;
  /** The sheet's own unit, for all values. */
  readonly unit: string;
  /** Earliest first; of the part that is there now. */
  readonly points: readonly SeriesPoint[];
  /** Readings of a part that is not there any more, or that cannot be told from it. */
  readonly ofAnotherPart: number;
  /** Readings of stays whose hours nobody read. */
  readonly withoutHours: number;
  /** Of the newest reading that was held against one. */
  readonly limit: { readonly min: number | null; readonly max: number | null };
}

interface Read {
  readonly stay: ReadStay;
  readonly reading: Reading;
  readonly line: ResultLine;
  readonly value: number;
}

const unitOf = (sheet: string, of: string): { unit: string; difference: boolean } => {
  const specs = Object.entries(sheetOf(sheet)?.results ?? {});
  // `charge 2` is the second of the results called `charge`.
  const spec = specs.find(([name]) => name === of) ?? specs.find(([name]) => of.startsWith(`${name} `));
  return { unit: spec?.[1].unit ?? '', difference: spec?.[1].difference === true };
};

/** Numbers of a result's text in the sheet's unit; a list has one for each cylinder. */
const valuesOf = (text: string, sheet: string, of: string): readonly (number | null)[] => {
  const { unit, difference } = unitOf(sheet, of);
  const [, list = '', unitText = ''] = /^([-\d.,]+(?:\/[-\d.,]+)+)\s*(.*)$/.exec(text.trim()) ?? [];
  const items =
    readNumber(text) !== null || list === '' ? [text] : list.split('/').map((each) => `${each} ${unitText}`);
  const kind = { id: '', label: '', unit, range: null, bad: 'neither' as const, fallback: null };
  return items.map((item) => readQuantity(item, unit, 'measured', difference ? { ...kind, difference } : kind).value);
};

const edgeOf = (text: string | undefined, { reading, line }: Read): number | null =>
  text === undefined ? null : (valuesOf(text, reading.sheet, line.of)[0] ?? null);

const limitOf = (reads: readonly Read[]): ReadingSeries['limit'] => {
  const last = reads.findLast(({ line }) => line.limit !== null);
  return {
    min: last === undefined ? null : edgeOf(last.line.limit?.badBelow ?? last.line.limit?.min, last),
    max: last === undefined ? null : edgeOf(last.line.limit?.badAbove ?? last.line.limit?.max, last),
  };
};

/**
 * What was read more than once on a machine, put in series against its true hours. A series never runs across a change of
 * part: it is that of the part which is there at the last stay, and readings of a stay in which it was changed are left out,
 * because nobody said whether they were taken before or after.
 *
 * @param stays  of one machine, in the order they happened
 * @returns  those with two points or more, or that a change has cut; longest first
 */
export function gatherSeries(stays: readonly ReadStay[], parts: readonly FittedPart[]): ReadingSeries[] {
  const reads = stays.flatMap((stay) =>
    stay.readings
      .filter(({ notTakenBecause }) => notTakenBecause === null)
      .flatMap((reading) =>
        reading.results
          .filter(({ value, verdict }) => value !== null && verdict !== 'void' && verdict !== 'not taken')
          .flatMap((line) => {
            const values = valuesOf(line.value ?? '', reading.sheet, line.of);
            return values.flatMap((value, index) =>
              value === null
                ? []
                : [
                    { stay, reading, line, value, which: values.length > 1 ? index + 1 : null } satisfies Read & {
                      which: number | null;
                    },
                  ],
            );
          }),
      ),
  );
  const last = stays.at(-1);
  const groups = Map.groupBy(reads, ({ reading, line, which }) =>
    [reading.sheet, reading.at, line.of, which ?? ''].join('\n'),
  );
  return [...groups.values()]
    .flatMap((group): ReadingSeries[] => {
      const [first] = group;
      if (first === undefined || last === undefined) return [];
      const { reading, line, which } = first;
      const isStillThere = ({ stay }: Read) =>
        samePartBetween(reading.at, stay.id, last.id, stays, parts) === 'the same';
      const there = group.filter(isStillThere);
      const points = there.flatMap(({ stay, value }): SeriesPoint[] =>
        stay.hours === null
          ? []
          : [{ visitId: stay.id, date: stay.date, hours: stay.hours, hoursAreEstimate: stay.hoursAreEstimate, value }],
      );
      return [
        {
          sheet: reading.sheet,
          at: reading.at,
          of: line.of,
          which,
          unit: unitOf(reading.sheet, line.of).unit,
          points: points.toSorted((a, b) => a.hours - b.hours),
          ofAnotherPart: group.length - there.length,
          withoutHours: there.length - points.length,
          limit: limitOf(group),
        },
      ];
    })
    .filter(({ points, ofAnotherPart }) => points.length > 1 || (points.length > 0 && ofAnotherPart > 0))
    .toSorted((a, b) => b.points.length - a.points.length);
}
