import { describe, expect, it } from 'vitest';
import { compute } from '../../../../shared-lib/sheets/compute.ts';
import { sheetOf } from '../../../../shared-lib/sheets/index.ts';
import type { SheetInput } from '../../../../shared-lib/sheets/outcome.ts';
import { toResultLines } from '../../../../shared-lib/sheets/to-result-lines.ts';

const line = (sheet: string, of: string, input: SheetInput) =>
  compute(sheet, input).results.find((each) => each.of === of);

describe('limits', () => {
  it('the maker’s, typed with its page in other units, stands before the default', () => {
    const play = line('MS-06', 'opens', {
      inputs: { rating: '7 psi', opens: '7.2 psi' },
      limits: { opens: { min: '6.25 psi', max: '7.5 psi', source: 'maker', page: 'p. 31' } },
    });
    expect(play?.limit?.source).toBe('maker');
    expect(play?.limit?.page).toBe('p. 31');
    expect(play?.limit?.max).toBeCloseTo(51.7107, 3);
    expect(play?.verdict).toBe('within');
  });

  it('a default says that it is not the maker’s', () => {
    expect(line('MS-21', 'play', { inputs: { radius: '200', arc: '64' } })?.limit?.cites).toMatch(
      /common practice, no source; not the maker’s/,
    );
  });

  it('one that cannot be is named and judges nothing of its own', () => {
    const outcome = compute('MS-27', {
      inputs: { pressure: '210 kPa' },
      limits: { pressure: { min: '420 kPa', max: '280 kPa', source: 'maker' }, nothing: { max: '1', source: 'maker' } },
    });
    expect(outcome.problems.map(({ input }) => input)).toEqual(['limit: pressure', 'limit: nothing']);
    expect(outcome.results[0]?.verdict).toBe('recorded only');
  });

  it('one that is no number is named', () => {
    const { problems } = compute('MS-27', {
      inputs: { pressure: '210 kPa' },
      limits: { pressure: { min: 'plenty', source: 'maker' } },
    });
    expect(problems).toEqual([expect.objectContaining({ input: 'limit: pressure', kept: 'plenty' })]);
  });
});

describe('what a reading can be off by', () => {
  it('nothing said: what is usual', () => {
    expect(line('MS-21', 'play', { inputs: { radius: '200 mm', arc: '64 mm' } })).toMatchObject({
      uncertainty: 1,
      uncertaintyFrom: 'usual for such a reading; common practice, no source',
    });
  });

  it('said of every number that counts: the law of propagation, by hand √((2/200)² + (64·2/200²)²) × 180/π', () => {
    const play = line('MS-21', 'play', { inputs: { radius: '200 ± 2 mm', arc: '64 ± 2 mm' } });
    expect(play?.uncertainty).toBeCloseTo(Math.hypot(2 / 200, (64 * 2) / 200 ** 2) * (180 / Math.PI), 3);
    expect(play?.uncertaintyFrom).toMatch(/radius.*way along the rim|way along the rim.*radius/);
  });

  it('said of one number only: never less than what is usual', () => {
    expect(line('MS-21', 'play', { inputs: { radius: '200 mm', arc: '64 ± 0.1 mm' } })?.uncertainty).toBe(1);
    expect(line('MS-21', 'play', { inputs: { radius: '200 mm', arc: '64 ± 10 mm' } })?.uncertainty).toBeCloseTo(
      (10 / 200) * (180 / Math.PI),
      6,
    );
  });

  it('the instrument speaks for numbers of its kind', () => {
    const bore = {
      inputs: { nominal: '100', diameters: '100.142/100.098; 100.071/100.055' },
      instrument: { resolution: '0.002 mm' },
    };
    const wear = line('MS-12', 'wear', bore);
    expect(wear?.uncertainty).toBeCloseTo(Math.hypot(0.002, 0.002), 6);
    expect(line('MS-12', 'out of round', bore)?.uncertainty).toBeCloseTo(Math.hypot(0.002, 0.002), 6);
  });

  it('repeats that lie apart count by half their spread; none is averaged away', () => {
    const drop = line('MS-04', 'drop', {
      inputs: { drop: '0.04/0.16 V', leg: 'engine-to-frame strap' },
      conditions: { system: '12 V' },
    });
    expect(drop).toMatchObject({ value: 0.16, verdict: 'too close to tell' });
    expect(drop?.uncertainty).toBeCloseTo(0.06, 9);
  });

  it('a good repeat never turns a bad one good', () => {
    const drop = line('MS-04', 'drop', {
      inputs: { drop: '0.30/0.02/0.28 V', leg: 'engine-to-frame strap' },
      conditions: { system: '12 V' },
    });
    expect(drop?.value).toBe(0.3);
    expect(drop?.verdict).not.toBe('within');
  });
});

describe('impossible and odd', () => {
  it.each([
    ['MS-03', { inputs: { volts: '40 V' }, conditions: { system: '12 V' } }, 'volts', /40 V/],
    ['MS-15', { inputs: { bore: '100 mm', skirt: '101 mm' } }, 'skirt', /does not go into a bore/],
    ['MS-11', { inputs: { supply: '5 bar', cylinder: '6 bar' } }, 'cylinder', /more than is supplied/],
    ['MS-07', { inputs: { applied: '90', after: '95', time: '10' } }, 'after', /cannot rise/],
    ['MS-20', { inputs: { bore: '50', rod: '60', load: 'pulls rod out', drift: '5' } }, 'rod', /does not go into/],
    ['MS-28', { inputs: { pitches: '16', pitch: '15.875', measured: '100' } }, 'measured', /count again/],
    ['MS-17', { inputs: { diameters: '70/70; 70/70', shell: '69.9' } }, 'shell', /smaller than itself/],
    ['MS-21', { inputs: { radius: '200', chord: '500' } }, 'chord', /further apart/],
    ['MS-02', { inputs: { loaded: '12.9', rest: '12.5' } }, 'loaded', /higher than at rest/],
    ['MS-24', { inputs: { before: '10', now: '12', hoursBefore: '500', hoursNow: '400' } }, 'hoursNow', /cannot fall/],
  ] as const)('%s names it at the field: %j', (sheet, input, field, what) => {
    const outcome = compute(sheet, input);
    const problem = outcome.problems.find((each) => each.input === field);
    expect(problem).toMatchObject({ weight: 'impossible' });
    expect(problem?.what).toMatch(what);
    expect(problem?.kept).toBe((input.inputs as Record<string, string>)[field]);
    const results = sheetOf(sheet)?.results ?? {};
    for (const { of, value } of outcome.results) {
      if (results[of]?.needs.flat().includes(field) === true) expect(value, of).toBeNull();
    }
  });

  it('an odd value is asked about and computed', () => {
    const outcome = compute('MS-11', { inputs: { supply: '15 bar', cylinder: '3 bar' } });
    expect(outcome.problems).toEqual([expect.objectContaining({ input: 'supply', weight: 'odd' })]);
    expect(outcome.verdict).toBe('beyond');
  });

  it('a field the sheet does not have is named', () => {
    expect(compute('MS-11', { inputs: { suply: '5 bar' } }).problems).toEqual([
      expect.objectContaining({ input: 'suply', weight: 'not understood' }),
    ]);
  });

  it('a condition no sheet asks for is kept and is no problem', () => {
    expect(compute('MS-11', { inputs: {}, conditions: { weather: 'rain' } }).problems).toEqual([]);
  });
});

describe('void', () => {
  it.each([
    [
      'MS-02',
      { inputs: { loaded: '10 V', rest: '12.1 V', load: '450', rating: '900' }, conditions: { temperature: '20' } },
      /under 75 %/,
    ],
    ['MS-10', { inputs: { raw: '24/25/24/20', speeds: '200/200/200/150' } }, /differ by more than 10 %/],
    ['MS-10', { inputs: { raw: '24/25/24/20' }, conditions: { coolant: '40 °C' } }, /colder than 70/],
    ['MS-09', { inputs: { colour: 'no change' }, conditions: { fluidFresh: 'no' } }, /spent/],
    ['MS-07', { inputs: { applied: '90', after: '90', time: '5' } }, /shorter than 10 minutes/],
    [
      'MS-04',
      { inputs: { positive: '0.1', ground: '0.1', battery: '10.3', starter: '9.5' }, conditions: { system: '12' } },
      /not accounted for/,
    ],
    ['MS-14', { inputs: { heights: '0.09/0.10/0.10/0.09' }, conditions: { clamped: 'no' } }, /not clamped/],
    ['MS-05', { inputs: { volts: '14.2' }, conditions: { system: '12', battery: 'discharged' } }, /discharged/],
    [
      'MS-27',
      {
        inputs: { pressure: '300' },
        conditions: { gauge: 'panel gauge' },
        limits: { pressure: { min: '200', source: 'maker' } },
      },
      /panel gauge/,
    ],
  ] as const)('%s %j', (sheet, input, because) => {
    const outcome = compute(sheet, input);
    expect(outcome.verdict).toBe('void');
    expect(outcome.results.map(({ voidBecause }) => voidBecause).join()).toMatch(because);
  });

  it('the numbers stay readable', () => {
    const spread = line('MS-10', 'spread', { inputs: { raw: '24/25/24/20' }, conditions: { coolant: '40 °C' } });
    expect(spread).toMatchObject({ value: 20, verdict: 'void' });
  });
});

describe('results taken over as typed', () => {
  it('are judged by the same rule and limit', () => {
    expect(line('MS-11', 'leak', { results: { leak: '38 %' } })).toMatchObject({
      value: 38,
      verdict: 'beyond',
      formula: 'taken over as typed',
    });
  });
  it('a list of them too', () => {
    expect(line('MS-10', 'corrected', { results: { corrected: '27.8/27.3 bar' } })?.value).toEqual([27.8, 27.3]);
  });
  it('a computed one stands before them', () => {
    expect(
      line('MS-11', 'leak', { inputs: { supply: '6', cylinder: '5.5' }, results: { leak: '38 %' } })?.value,
    ).toBeCloseTo(8.333, 3);
  });
  it('and leaves none beside itself', () => {
    const { results } = compute('MS-11', { inputs: { supply: '6', cylinder: '5.5' }, results: { leak: '38 %' } });
    expect(results.map(({ of }) => of)).toEqual(['leak']);
  });
  it('several lines of one name stand before what was typed under it', () => {
    const outcome = compute('MS-01', { inputs: { rest: '12.6/12.5' }, results: { charge: '40 %' } });
    expect(outcome.results.map(({ of }) => of)).toEqual(['charge 1', 'charge 2']);
    expect(outcome.problems).toEqual([]);
  });
  it('what is not understood is no result', () => {
    const outcome = compute('MS-11', { results: { leak: 'a lot', nothing: '3 %' } });
    expect(outcome.results.every(({ value }) => value === null)).toBe(true);
    expect(outcome.problems).toEqual([
      expect.objectContaining({ input: 'result: leak', kept: 'a lot' }),
      expect.objectContaining({ input: 'result: nothing', kept: '3 %' }),
    ]);
  });
});

// Two places are the least that differ: from one no spread, taper or step can be told, and none may pass for nothing.
describe('what one reading cannot tell', () => {
  it.each([
    ['MS-10', { raw: '24 bar' }, ['spread', 'difference', 'lowest of highest']],
    ['MS-10', { raw: '0/0 bar' }, ['spread', 'lowest of highest']],
    ['MS-12', { diameters: '100.02/100.01' }, ['taper']],
    ['MS-12', { diameters: '100.02; 100.01' }, ['out of round']],
    ['MS-14', { heights: '0.1/0.1/0.1/0.1' }, ['step', 'range']],
    ['MS-17', { diameters: '70.02/70.01' }, ['taper']],
    ['MS-17', { diameters: '70.02; 70.01' }, ['out of round']],
    ['MS-18', { opens: '200 bar' }, ['opening spread']],
    ['MS-18', { leakBack: '20 mL' }, ['leak-back ratio']],
    ['MS-31', { size: '20 mm' }, ['spread']],
    // A meter that reads lower than before has run no hours a day.
    ['MS-23', { reading: '3999', before: '4000', days: '30' }, ['hours a day']],
    // No two points within reach of a straightedge of 150 mm.
    ['MS-13', { points: '0 0 0; 200 0 0; 0 200 0; 200 200 0.1' }, ['steepest in 100 mm']],
    ['MS-13', { x: '0/100/200', y: '0', heights: '0/0.1/0' }, ['twist', 'flatness']],
  ] as const)('%s %j: %j', (sheet, inputs, untold) => {
    const outcome = compute(sheet, { inputs });
    for (const of of untold) expect(outcome.results.find((each) => each.of === of)?.value ?? null, of).toBeNull();
    expect(outcome.results.some(({ value }) => value !== null) || sheet === 'MS-18' || sheet === 'MS-13').toBe(true);
  });
});

describe('what is missing', () => {
  it('a sheet begun says what it lacks', () => {
    expect(line('MS-21', 'play', { inputs: { radius: '200 mm' } })).toMatchObject({
      verdict: 'recorded only',
      value: null,
      needs: ['way along the rim, or straight distance between the points'],
    });
  });

  it('a line that shares its fields with a computed one is not asked for', () => {
    const full = { bore: '90', rod: '50', load: 'pulls rod out', drift: '42', time: '10' };
    const lines = compute('MS-20', { inputs: full }).results.map(({ of }) => of);
    expect(lines).toEqual(['drift', 'drift in 10 min', 'area', 'volume', 'flow']);
    const begun = compute('MS-20', { inputs: { pressure: '10 MPa' } }).results;
    expect(begun.find(({ of }) => of === 'pushing force')).toMatchObject({ value: null, needs: ['cylinder bore'] });
  });

  // The handbook's physics of a drifting cylinder (MS-20): a piston seal alone can't let a pushed rod in.
  it('says nothing of a pulled rod where nobody said which way the load acts', () => {
    const [said] = compute('MS-20', { inputs: { drift: '1 mm' } }).says;
    expect(said).toMatch(/^Which way the load pushes is not said\..*never a pushed one in/);
    expect(compute('MS-20', { inputs: { drift: '1 mm', load: 'pulls rod out' } }).says[0]).toMatch(
      /^A leaking piston seal/,
    );
  });

  it('a formula that does not hold for what was typed gives no number and says so', () => {
    const outcome = compute('MS-08', { inputs: { cap: '50', glycol: '100 %', highest: '100' } });
    expect(outcome.results.find(({ of }) => of === 'margin')).toMatchObject({
      value: null,
      verdict: 'recorded only',
      needs: ['values the formula holds for'],
    });
    expect(line('MS-08', 'margin', { inputs: { cap: '50', glycol: '75 %', highest: '100' } })?.verdict).toBe('void');
  });

  it('throws for a sheet that is none', () => expect(() => compute('MS-99', {})).toThrow(RangeError));
});

// A low bar has to stand under its own cylinder.
it.each([
  ['MS-10', { raw: '24/25/20/24' }, [24, 25, 20, 24]],
  ['MS-14', { heights: '0.1/0.1; 0.05/0.05; 0.09/0.09' }, [0.1, 0.05, 0.09]],
  ['MS-18', { leakBack: '22/25/61' }, [22, 25, 61]],
  ['MS-18', { opens: '200/180/190' }, [200, 180, 190]],
] as const)('%s %j draws a bar for each cylinder, numbered from 1', (sheet, inputs, values) => {
  const { picture } = compute(sheet, { inputs });
  expect(picture).toMatchObject({ kind: 'bars', values, labels: values.map((_, index) => String(index + 1)) });
});

it('lines for the record carry their units', () => {
  const [play] = toResultLines(compute('MS-21', { inputs: { radius: '200 mm', arc: '64 mm' } }));
  expect(play).toEqual({
    of: 'play',
    value: '18.3346 °',
    seen: null,
    limit: { max: '14 °', badAbove: '25 °', source: 'common-practice' },
    uncertainty: '1 °',
    uncertaintyFrom: 'usual for such a reading; common practice, no source',
    verdict: 'watch',
  });
});
