import { describe, expect, it } from 'vitest';
import { defectOf } from '../../../../shared-lib/defects/index.ts';
import { Reading } from '../../../../shared-lib/model/reading.ts';
import { unitNamed } from '../../../../shared-lib/quantities/units.ts';
import { computeSheet } from '../../../../shared-lib/sheets/compute.ts';
import { sheetOf, sheets } from '../../../../shared-lib/sheets/index.ts';
import { readInputs } from '../../../../shared-lib/sheets/read-inputs.ts';
import type { InputSpec } from '../../../../shared-lib/sheets/sheet-kind.ts';
import { toResultLines } from '../../../../shared-lib/sheets/to-result-lines.ts';
import { limitProblem } from '../../../../shared-lib/verdict/limit.ts';

/** Units that only a sheet uses; everything else must be known to the table of units. */
const ownUnits = new Set(['ppm', 'US gal', 'kN', 'W', 'kPa per 10 min']);

it('there are thirty-two, each id and each name once', () => {
  expect(sheets).toHaveLength(32);
  expect(sheets.map(({ id }) => id)).toEqual(sheets.map((_, index) => `MS-${String(index + 1).padStart(2, '0')}`));
  expect(new Set(sheets.map(({ name }) => name)).size).toBe(32);
});

it('is found by id, by name and in any spelling', () => {
  expect(sheetOf('ms-21')?.name).toBe('Steering free play');
  expect(sheetOf('Steering free play')?.id).toBe('MS-21');
  expect(sheetOf('steering-free-play')?.id).toBe('MS-21');
  expect(sheetOf('piston clearance and ring gap')?.id).toBe('MS-15');
  expect(sheetOf('nothing of the kind')).toBeNull();
});

describe.each(sheets.map((sheet) => [sheet.name, sheet] as const))('%s', (_, sheet) => {
  const asked: [string, InputSpec][] = Object.entries({ ...sheet.conditions, ...sheet.inputs });

  it('says in words what it is, asks and gives, without a code of the handbook', () => {
    const words = [
      sheet.name,
      sheet.about,
      ...asked.map(([, { label }]) => label),
      ...Object.entries(sheet.results).flatMap(([of, { formula }]) => [of, formula]),
    ];
    for (const each of words) {
      expect(each.trim().length).toBeGreaterThan(1);
      expect(each).not.toMatch(/\bMS-\d|\bCAU-\d|\bT[0-4]\b/);
    }
    expect(sheet.about).toMatch(/^[A-Z].*\.$/);
  });

  it('has an input and a condition of one name nowhere', () => {
    expect(Object.keys(sheet.inputs).filter((id) => Object.hasOwn(sheet.conditions, id))).toEqual([]);
  });

  it('measures in units we know, in ranges that have an inside', () => {
    for (const [id, spec] of asked) {
      if (!('unit' in spec)) continue;
      expect(spec.unit === '' || ownUnits.has(spec.unit) || unitNamed(spec.unit) !== null, `${id}: ${spec.unit}`).toBe(
        true,
      );
      expect(spec.possible[0]).toBeLessThan(spec.possible[1]);
      if (spec.usual === undefined) continue;
      expect(spec.usual[0]).toBeLessThan(spec.usual[1]);
      expect(spec.usual[0]).toBeGreaterThanOrEqual(spec.possible[0]);
      expect(spec.usual[1]).toBeLessThanOrEqual(spec.possible[1]);
    }
    for (const { unit } of Object.values(sheet.results)) {
      expect(unit === '' || ownUnits.has(unit) || unitNamed(unit) !== null, unit).toBe(true);
    }
  });

  it('needs only what it asks', () => {
    for (const { needs } of Object.values(sheet.results)) {
      for (const id of needs.flat()) expect(asked.map(([each]) => each)).toContain(id);
    }
  });

  const results = Object.entries(sheet.results);

  it.each(results.flatMap(([of, { usualLimit, fallback }]) => (usualLimit ? [{ of, usualLimit, fallback }] : [])))(
    'has a usual limit of $of in order, that cannot pass for the maker’s, and what such a reading can be off by',
    ({ of, usualLimit, fallback }) => {
      expect(limitProblem(usualLimit)).toBeNull();
      expect(usualLimit.source).toBe('common-practice');
      expect(usualLimit.cites).toMatch(/\w/);
      // A sheet that works its uncertainty out itself has none here.
      if (of !== 'charge' && of !== 'fall') expect(fallback, of).toBeDefined();
    },
  );

  it('a line that judges says by which default, or that only a typed limit judges it', () => {
    for (const { usualLimit, usualLimitRule } of Object.values(sheet.results)) {
      expect(usualLimit !== undefined && usualLimitRule !== undefined).toBe(false);
      if (usualLimitRule !== undefined) expect(usualLimitRule).toMatch(/common practice$|the maker’s$/);
    }
  });

  it.each(results.flatMap(([, { suggests }]) => suggests ?? []))('suggests a defect we know: %s', (suggests) => {
    expect(defectOf(suggests)?.id).toBe(suggests);
  });

  it('calls cautions by their ids', () => {
    for (const id of sheet.cautions) expect(id).toMatch(/^CAU-(0[1-9]|[12]\d|3[0-8])$/);
    expect(new Set(sheet.cautions).size).toBe(sheet.cautions.length);
  });

  it('with nothing typed judges nothing and says what it needs', () => {
    const outcome = computeSheet(sheet, {});
    expect(outcome.problems).toEqual([]);
    expect(outcome.verdict).toBe('recorded only');
    expect(outcome.results.length).toBe(Object.values(sheet.results).filter(({ main }) => main === true).length);
    for (const line of outcome.results) {
      expect(line.verdict).toBe('recorded only');
      expect(line.needs.length).toBeGreaterThan(0);
    }
  });

  it('not taken, with its reason', () => {
    const outcome = computeSheet(sheet, { inputs: { anything: '1' }, notTakenBecause: 'no gauge at hand' });
    expect(outcome).toMatchObject({ verdict: 'not taken', results: [], notTakenBecause: 'no gauge at hand' });
  });

  it('nonsense in any field is named at the field, kept, and leads to no verdict and no error', () => {
    for (const [id, spec] of Object.entries(sheet.inputs)) {
      if (spec.kind === 'text') continue;
      const typed = 'about as usual, I think';
      const outcome = computeSheet(sheet, { inputs: { [id]: typed } });
      expect(outcome.problems).toEqual([expect.objectContaining({ input: id, weight: 'not understood', kept: typed })]);
      expect(outcome.verdict).toBe('recorded only');
    }
  });

  it('a value that cannot be is named at the field with the reason and never computed', () => {
    for (const [id, spec] of Object.entries(sheet.inputs)) {
      if (!('possible' in spec)) continue;
      const beyond = String(spec.possible[1] * 2 + 1);
      const width =
        spec.kind === 'rows' ? (spec.columns ?? 2) : spec.kind === 'number' ? 1 : Math.max(2, spec.fewest ?? 1);
      const typed = Array.from({ length: width }, () => beyond).join('/');
      const outcome = computeSheet(sheet, { inputs: { [id]: typed } });
      expect(outcome.problems, id).toContainEqual(
        expect.objectContaining({ input: id, weight: 'impossible', kept: typed }),
      );
      expect(
        outcome.results.every(({ value }) => value === null),
        id,
      ).toBe(true);
    }
  });

  it('its lines go into the record and come back unchanged', () => {
    const numbers = Object.fromEntries(
      Object.entries(sheet.inputs).map(([id, spec]): [string, string] => {
        if (spec.kind === 'text') return [id, 'as it is'];
        if (spec.kind === 'choice') return [id, spec.answers[0] ?? ''];
        const [least, most] = spec.usual ?? spec.possible;
        const middle = String((least + most) / 2);
        if (spec.kind === 'rows')
          return [
            id,
            Array(3)
              .fill(
                Array(spec.columns ?? 3)
                  .fill(middle)
                  .join(' / '),
              )
              .join('; '),
          ];
        return [
          id,
          spec.kind === 'number'
            ? middle
            : Array(spec.fewest ?? 1)
                .fill(middle)
                .join(' / '),
        ];
      }),
    );
    const outcome = computeSheet(sheet, { inputs: numbers, conditions: { system: '12 V', altitude: '300 m' } });
    const results = toResultLines(outcome);
    const reading = {
      id: 'r',
      visitId: 'v',
      sheet: sheet.id,
      sheetVersion: sheet.version,
      at: 'ENG',
      inputs: numbers,
      conditions: {},
      remark: '',
      notTakenBecause: null,
      instrumentId: null,
      takenAtMs: 0,
      results,
    };
    expect(Reading.parse(JSON.parse(JSON.stringify(reading)))).toEqual(reading);
    for (const { value } of outcome.results) {
      for (const each of [value ?? []].flat()) expect(Number.isFinite(each)).toBe(true);
    }
  });

  it('computes the same twice, and touches nothing of what it is given', () => {
    const input = Object.freeze({ inputs: Object.freeze({}), conditions: Object.freeze({ system: '24 V' }) });
    expect(computeSheet(sheet, input)).toEqual(computeSheet(sheet, input));
    expect(sheet.checks(readInputs(new Map(), ''))).toEqual([]);
  });
});
