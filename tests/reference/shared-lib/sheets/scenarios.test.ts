import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readNumber } from '../../../../shared-lib/quantities/read-number.ts';
import { Scenario } from '../../../../shared-lib/scenario/schema.ts';
import { compute } from '../../../../shared-lib/sheets/compute.ts';
import type { SheetInput, TypedLimit } from '../../../../shared-lib/sheets/outcome.ts';

/**
 * The readings of the worked cases (seven stories of the trade's handbook): every result line was written down beside them
 * before these sheets existed: `value` by the handbook's formula, `standard` by the published standard where there is one
 * (then it is the basis), the limit, what the reading can be off by, and the verdict.
 */
const folder = new URL('../../scenarios/', import.meta.url);
const files = readdirSync(folder).filter((name) => /^s[1-7].*\.json$/.test(name));

type ScenarioLine = NonNullable<Scenario['visits'][number]['readings']>[number]['results'][number];

const textOf = (value: string | number): string => String(value);

/** `27.8/27.3 bar` as numbers, and what stands after them. */
function numbersOf(text: string): { numbers: number[]; unit: string } {
  const [, list = '', unit = ''] = /^([-\d./]+)\s*(.*)$/.exec(text) ?? [];
  return { numbers: list.split('/').map(Number), unit };
}

/** The tolerance the scenario files state: 0.0005 relative, at least 0.0005. */
function expectNear(actual: number | readonly number[] | null, wanted: string): void {
  const { numbers } = numbersOf(wanted);
  const found = actual === null ? [] : [actual].flat();
  expect(found).toHaveLength(numbers.length);
  for (const [index, number] of numbers.entries()) {
    expect(Math.abs((found[index] ?? Number.NaN) - number)).toBeLessThanOrEqual(
      Math.max(0.0005, 0.0005 * Math.abs(number)),
    );
  }
}

const stringsOf = (record: Readonly<Record<string, string | number | undefined>> | undefined): Record<string, string> =>
  Object.fromEntries(
    Object.entries(record ?? {}).flatMap(([key, value]) => (value === undefined ? [] : [[key, String(value)]])),
  );

const makersLimits = (lines: readonly ScenarioLine[]): Record<string, TypedLimit> =>
  Object.fromEntries(
    lines.flatMap(({ of, limit }): [string, TypedLimit][] => {
      if (limit === undefined || limit.source === 'common-practice') return [];
      const { source, page, ...edges } = limit;
      return [[of, { ...stringsOf(edges), source, ...(page === undefined ? {} : { page }) }]];
    }),
  );

/** A story that gives a result without what it was computed from has it taken over as typed. */
const takenOver = (lines: readonly ScenarioLine[], hasInputs: boolean): Record<string, string> =>
  Object.fromEntries(
    lines.flatMap(({ of, value, seen }): [string, string][] => {
      if (seen !== undefined)
        return hasInputs && value === undefined && of !== 'combustion gas'
          ? []
          : [[of, seen ? 'shown' : 'not found by this test']];
      return hasInputs || value === undefined ? [] : [[of, textOf(value)]];
    }),
  );

const cases = files.flatMap((file) => {
  const scenario = Scenario.parse(JSON.parse(readFileSync(new URL(file, folder), 'utf8')));
  return scenario.visits.flatMap((visit) =>
    (visit.readings ?? []).map((reading) => {
      const input: SheetInput = {
        inputs: stringsOf(reading.inputs),
        conditions: {
          ...stringsOf(visit.conditions as Record<string, string | number>),
          system: `${scenario.machine.layout.volts} V`,
          ...stringsOf(reading.conditions),
        },
        limits: makersLimits(reading.results),
        results: takenOver(reading.results, reading.inputs !== undefined),
        at: reading.at,
      };
      return {
        name: `${file.slice(0, 2)} ${visit.id} ${reading.id} ${reading.sheet} at ${reading.at}`,
        reading,
        input,
      };
    }),
  );
});

it('finds the readings of seven stories', () => {
  expect(files).toHaveLength(7);
  expect(cases.length).toBeGreaterThan(35);
});

describe.each(cases)('$name', ({ reading, input }) => {
  const outcome = compute(reading.sheet, input);

  it.each(reading.results.map((line) => [line.of, line] as const))('%s', (of, wanted) => {
    const line = outcome.results.find((each) => each.of === of);
    expect(line, `line “${of}” of ${outcome.results.map((each) => each.of).join(', ')}`).toBeDefined();
    if (line === undefined) return;
    expect(line.verdict).toBe(wanted.verdict);
    if (wanted.seen !== undefined) expect(line.seen).toBe(wanted.seen);
    if (wanted.value !== undefined) {
      const text = textOf(wanted.value);
      if (wanted.standard === undefined) expectNear(line.value, text);
      else {
        expectNear(line.value, textOf(wanted.standard));
        const sameFormula = wanted.standard === wanted.value;
        expectNear(line.crossCheck?.value ?? (sameFormula ? line.value : null), text);
      }
      expect(line.unit).toBe(numbersOf(text).unit);
    }
    if (wanted.u !== undefined) {
      const text = textOf(wanted.u);
      const number = readNumber(text)?.value ?? Number.NaN;
      const off = text.includes('% of value') ? (number / 100) * Math.abs(Number([line.value].flat()[0])) : number;
      expect(line.uncertainty).toBeCloseTo(off, 4);
    }
    if (wanted.limit === undefined) expect(line.limit).toBeNull();
    else {
      const { source, page, ...edges } = wanted.limit;
      expect(line.limit?.source).toBe(source);
      expect(line.limit?.page).toBe(page);
      for (const edge of ['min', 'max', 'badBelow', 'badAbove'] as const) {
        const text = edges[edge];
        if (text === undefined) expect(line.limit?.[edge]).toBeUndefined();
        else expect(line.limit?.[edge]).toBeCloseTo(numbersOf(textOf(text)).numbers[0] ?? Number.NaN, 9);
      }
    }
  });

  it('names no problem with what the story typed', () => {
    expect(outcome.problems).toEqual([]);
  });
});
