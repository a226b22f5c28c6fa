import type { TypedLimit } from '../../../shared-lib/model/reading.ts';
import { readNumber } from '../../../shared-lib/quantities/read-number.ts';
import type { Surroundings } from '../../../shared-lib/readings/sheet-input.ts';
import { sheetInputOf } from '../../../shared-lib/readings/sheet-input.ts';
import type { Scenario } from '../../../shared-lib/scenario/schema.ts';
import { computeSheet, type SheetOutcome } from '../../../shared-lib/sheets/compute.ts';
import { sheetOf } from '../../../shared-lib/sheets/index.ts';

type ScenarioReading = NonNullable<Scenario['visits'][number]['readings']>[number];
type ScenarioLine = ScenarioReading['results'][number];

export interface FilledSheet {
  readonly inputs: Record<string, string>;
  readonly conditions: Record<string, string>;
  readonly limits: Record<string, TypedLimit>;
  readonly takenOver: Record<string, string>;
}

const texts = (values: Readonly<Record<string, string | number>> | undefined): Record<string, string> =>
  Object.fromEntries(Object.entries(values ?? {}).map(([id, value]) => [id, String(value)]));

const limitsOf = (lines: readonly ScenarioLine[]): Record<string, TypedLimit> =>
  Object.fromEntries(
    lines.flatMap(({ of, limit }): [string, TypedLimit][] => {
      if (limit === undefined || limit.source === 'common-practice') return [];
      const { source, page, ...edges } = limit;
      return [[of, { ...texts(edges as Record<string, string | number>), source, ...(page ? { page } : {}) }]];
    }),
  );

/** A look that the file says the result of, and the sheet has no field for. */
const seenOf = (lines: readonly ScenarioLine[]): Record<string, string> =>
  Object.fromEntries(
    lines.flatMap(({ of, seen }) => (seen === undefined ? [] : [[of, seen ? 'shown' : 'not found by this test']])),
  );

/** `27.8/27.3 bar` as numbers. */
const numbersOf = (text: string): number[] =>
  text.split('/').flatMap((each) => {
    const read = readNumber(each);
    return read === null ? [] : [read.value];
  });

/** Files round to five digits. */
const isNear = (found: number | undefined, wanted: number): boolean =>
  found !== undefined && Math.abs(found - wanted) <= Math.max(0.0005, 0.0005 * Math.abs(wanted));

const agrees = (outcome: SheetOutcome, wanted: ScenarioLine): boolean => {
  const line = outcome.results.find(({ of }) => of === wanted.of);
  if (line === undefined || line.verdict !== wanted.verdict) return false;
  if (wanted.seen !== undefined) return line.seen === wanted.seen;
  const text = wanted.standard ?? wanted.value;
  if (text === undefined) return true;
  const found = line.value === null ? [] : [line.value].flat();
  const numbers = numbersOf(String(text));
  return found.length === numbers.length && numbers.every((number, index) => isNear(found[index], number));
};

/**
 * A reading of a file as its sheet is filled, where the file says what was typed and the sheet comes to the file's own
 * results; null where it is only written down as it stands.
 */
export const fillSheet = (reading: ScenarioReading, around: Omit<Surroundings, 'resolution'>): FilledSheet | null => {
  const sheet = sheetOf(reading.sheet);
  if (sheet === null || reading.inputs === undefined) return null;
  const typed = {
    inputs: texts(reading.inputs),
    conditions: texts(reading.conditions),
    limits: limitsOf(reading.results),
  };
  for (const takenOver of [{}, seenOf(reading.results)]) {
    const filled = { ...typed, takenOver };
    const asked = { ...filled, at: reading.at, notTakenBecause: null };
    const outcome = computeSheet(sheet, sheetInputOf(asked, { ...around, resolution: null }));
    const isUnderstood = outcome.problems.every(({ weight }) => weight === 'odd');
    if (isUnderstood && reading.results.every((line) => agrees(outcome, line))) return filled;
  }
  return null;
};
