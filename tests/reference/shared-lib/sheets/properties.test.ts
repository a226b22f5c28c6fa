import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compute } from '../../../../shared-lib/sheets/compute.ts';
import type { SheetInput } from '../../../../shared-lib/sheets/outcome.ts';

const value = (sheet: string, of: string, input: SheetInput): number => {
  const found = compute(sheet, input).results.find((line) => line.of === of)?.value;
  return typeof found === 'number' ? found : Number.NaN;
};
const verdict = (sheet: string, of: string, input: SheetInput) =>
  compute(sheet, input).results.find((line) => line.of === of)?.verdict;

const hundredths = (least: number, most: number) =>
  fc.integer({ min: least * 100, max: most * 100 }).map((each) => each / 100);
const micrometres = fc.integer({ min: -20, max: 200 }).map((each) => 100 + each / 1000);
const bore = fc.tuple(fc.integer({ min: 2, max: 4 }), fc.integer({ min: 2, max: 5 })).chain(([directions, depths]) =>
  fc.array(fc.array(micrometres, { minLength: directions, maxLength: directions }), {
    minLength: depths,
    maxLength: depths,
  }),
);
const asTable = (rows: readonly (readonly number[])[]) =>
  rows.map((row) => row.map((each) => each.toFixed(6)).join('/')).join('; ');
const ofBore = (rows: readonly (readonly number[])[], of: string) =>
  value('MS-12', of, { inputs: { nominal: '100', diameters: asTable(rows) } });

const boreResults = ['wear', 'taper', 'out of round'] as const;

describe('a bore', () => {
  it('read from the bottom up has the same taper, out-of-round and wear', () => {
    fc.assert(
      fc.property(bore, (rows) => {
        for (const each of boreResults) expect(ofBore(rows.toReversed(), each)).toBeCloseTo(ofBore(rows, each), 9);
      }),
    );
  });

  it('with its directions in another order too', () => {
    fc.assert(
      fc.property(bore, (rows) => {
        for (const each of boreResults)
          expect(
            ofBore(
              rows.map((row) => row.toReversed()),
              each,
            ),
          ).toBeCloseTo(ofBore(rows, each), 9);
      }),
    );
  });

  it('turned on its side swaps taper and out-of-round', () => {
    fc.assert(
      fc.property(bore, (rows) => {
        const turned = (rows[0] ?? []).map((_, column) => rows.map((row) => row[column] ?? Number.NaN));
        expect(ofBore(turned, 'taper')).toBeCloseTo(ofBore(rows, 'out of round'), 9);
      }),
    );
  });

  it('0.05 wider everywhere changes the wear alone, by 0.05', () => {
    fc.assert(
      fc.property(bore, (rows) => {
        const wider = rows.map((row) => row.map((each) => each + 0.05));
        expect(ofBore(wider, 'wear')).toBeCloseTo(ofBore(rows, 'wear') + 0.05, 9);
        expect(ofBore(wider, 'taper')).toBeCloseTo(ofBore(rows, 'taper'), 9);
        expect(ofBore(wider, 'out of round')).toBeCloseTo(ofBore(rows, 'out of round'), 9);
      }),
    );
  });

  it('is never less than nothing out of round, and one reading more never makes it rounder', () => {
    fc.assert(
      fc.property(bore, micrometres, (rows, more) => {
        const before = ofBore(rows, 'out of round');
        expect(before).toBeGreaterThanOrEqual(0);
        const [first = [], ...rest] = rows;
        expect(
          ofBore([[...first, more], ...rest.map((row) => [...row, row[0] ?? more])], 'out of round'),
        ).toBeGreaterThanOrEqual(before - 1e-9);
      }),
    );
  });

  it('the chosen oversize cleans it up, and the next smaller one does not', () => {
    fc.assert(
      fc.property(bore, hundredths(0, 1), (rows, oneSided) => {
        const steps = [0.25, 0.5, 0.75, 1, 1.5, 2, 3];
        const step = value('MS-12', 'next oversize', {
          inputs: { nominal: '100', diameters: asTable(rows), oneSided: String(oneSided), steps: steps.join('/') },
        });
        const needed = Math.max(...rows.flat(), 100 + 2 * oneSided) + 0.05;
        expect(100 + step).toBeGreaterThanOrEqual(needed - 1e-6);
        const smaller = steps[steps.indexOf(step) - 1];
        if (smaller !== undefined) expect(100 + smaller).toBeLessThan(needed + 1e-6);
      }),
    );
  });
});

describe('typed in either system a sheet says the same', () => {
  it.each([
    ['MS-21', 'play', { radius: ['203.2 mm', '8 in'], arc: ['63.5 mm', '2.5 in'] }],
    ['MS-11', 'leak', { supply: ['6 bar', '87.0226426 psi'], cylinder: ['4.3 bar', '430 kPa'] }],
    ['MS-22', 'deceleration', { speed: ['16.09344 km/h', '10 mph'], distance: ['6.096 m', '20 ft'] }],
    ['MS-08', 'margin', { cap: ['103.4213594 kPa', '15 psi'], glycol: ['50 %', '50'], highest: ['100 °C', '212F'] }],
    ['MS-19', 'rate', { catch: ['29.5735295625 mL', '1 fl oz'], time: ['60 min', '1 h'] }],
    [
      'MS-20',
      'flow',
      {
        bore: ['101.6 mm', '4 in'],
        load: ['pushes rod in', 'pushes rod in'],
        drift: ['6.35 mm', '1/4 in'],
        time: ['10 min', '600 s'],
      },
    ],
    ['MS-27', 'pressure', { pressure: ['275.79029 kPa', '40 psi'] }],
  ] as const)('%s %s', (sheet, of, fields) => {
    const [metric, us] = [0, 1].map((at) => ({
      inputs: Object.fromEntries(Object.entries(fields).map(([id, typed]) => [id, typed[at as 0 | 1]])),
    }));
    const [a, b] = [value(sheet, of, metric ?? {}), value(sheet, of, us ?? {})];
    expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(a)));
    expect(verdict(sheet, of, us ?? {})).toBe(verdict(sheet, of, metric ?? {}));
  });
});

describe('more of one thing is more of the other', () => {
  const rising = (least: number, most: number, of: (at: number) => number) =>
    fc.assert(
      fc.property(hundredths(least, most), hundredths(0.01, 50), (at, more) => {
        const [low, high] = [of(at), of(Math.min(most + 50, at + more))];
        expect(high).toBeGreaterThan(low);
      }),
      { numRuns: 60 },
    );

  it('a stronger cap lifts the boiling point', () =>
    rising(0, 100, (kpa) => value('MS-08', 'boils', { inputs: { cap: `${kpa} kPa`, glycol: '50 %' } })));
  it('so does more glycol', () =>
    rising(0, 20, (percent) => value('MS-08', 'boils', { inputs: { cap: '50 kPa', glycol: `${percent} %` } })));
  it('height lowers it', () =>
    rising(
      0,
      3900,
      (metres) =>
        -value('MS-08', 'boils', {
          inputs: { cap: '50 kPa', glycol: '50 %' },
          conditions: { altitude: `${metres} m` },
        }),
    ));
  it('a larger fall loses more coolant', () =>
    rising(0, 39, (fall) =>
      value('MS-07', 'lost', { inputs: { applied: '90 kPa', after: `${90 - fall} kPa`, gasSpace: '1500 mL' } }),
    ));
  it('a longer way along the rim is more play', () =>
    rising(1, 300, (arc) => value('MS-21', 'play', { inputs: { radius: '200 mm', arc: `${arc} mm` } })));
  it('a longer stop is a weaker brake', () =>
    rising(
      3,
      60,
      (metres) => -value('MS-22', 'deceleration', { inputs: { speed: '20 km/h', distance: `${metres} m` } }),
    ));
  it('a steeper slope needs more to hold', () =>
    rising(1, 60, (percent) =>
      value('MS-22', 'holding force needed', { inputs: { mass: '6000 kg', slope: `${percent} %` } }),
    ));
  it('a longer, warmer or thinner cable loses more', () => {
    const drop = (length: number, celsius: number, area: number) =>
      value('MS-04', 'sound cable would lose', {
        inputs: { length: `${length} m`, area: `${area} mm²`, current: '400 A', cableTemperature: `${celsius} °C` },
      });
    rising(1, 40, (length) => drop(length, 20, 50));
    rising(0, 90, (celsius) => drop(2, celsius, 50));
    rising(1, 100, (area) => -drop(2, 20, area));
  });
});

describe('symmetry', () => {
  it('cylinders in another order have the same spread', () => {
    fc.assert(
      fc.property(fc.array(hundredths(10, 40), { minLength: 2, maxLength: 8 }), (raw) => {
        const spread = (all: readonly number[]) =>
          value('MS-10', 'spread', { inputs: { raw: `${all.join('/')} bar` } });
        expect(spread(raw.toReversed())).toBeCloseTo(spread(raw), 9);
      }),
    );
  });

  it('compression is corrected back and forth: at sea level nothing changes', () => {
    fc.assert(
      fc.property(fc.array(hundredths(10, 40), { minLength: 2, maxLength: 8 }), (raw) => {
        const [line] = compute('MS-10', {
          inputs: { raw: `${raw.join('/')} bar` },
          conditions: { altitude: '0 m' },
        }).results;
        const corrected = [line?.value ?? []].flat();
        for (const [index, each] of raw.entries()) expect(corrected[index] ?? Number.NaN).toBeCloseTo(each, 9);
      }),
    );
  });

  it('arc and straight distance agree on the same play', () => {
    fc.assert(
      fc.property(hundredths(1, 170), (degrees) => {
        const arc = (degrees * Math.PI * 200) / 180;
        const chord = 2 * 200 * Math.sin((degrees * Math.PI) / 360);
        expect(value('MS-21', 'play', { inputs: { radius: '200 mm', arc: `${arc.toFixed(9)} mm` } })).toBeCloseTo(
          degrees,
          6,
        );
        expect(value('MS-21', 'play', { inputs: { radius: '200 mm', chord: `${chord.toFixed(9)} mm` } })).toBeCloseTo(
          degrees,
          6,
        );
      }),
    );
  });

  it('what a load pushes in and pulls out differs by the rod alone', () => {
    fc.assert(
      fc.property(hundredths(40, 200), hundredths(10, 39), hundredths(1, 100), (diameter, rod, drift) => {
        const volume = (load: string) =>
          value('MS-20', 'volume', {
            inputs: { bore: `${diameter}`, rod: `${rod}`, load, drift: `${drift}`, time: '10' },
          });
        const gland = value('MS-20', 'gland alone would need', {
          inputs: { bore: `${diameter}`, rod: `${rod}`, load: 'pushes rod in', drift: `${drift}` },
        });
        expect(volume('pushes rod in') - volume('pulls rod out')).toBeCloseTo(gland, 6);
      }),
    );
  });
});

describe('whatever is typed', () => {
  it('no sheet ever throws, and nothing that was not understood is judged', () => {
    const ids = Array.from({ length: 32 }, (_, index) => `MS-${String(index + 1).padStart(2, '0')}`);
    const typed = fc.oneof(
      fc.string({ maxLength: 20 }),
      fc.double().map(String),
      fc.array(fc.double({ min: -1000, max: 1000, noNaN: true }), { maxLength: 6 }).map((all) => all.join('/')),
      fc.constantFrom(
        '',
        '0',
        '-0',
        '1e308',
        '0/0/0',
        '1;2;3',
        '½ in',
        '9 999 999',
        '1,250',
        '%',
        '±',
        '12 V ± ',
        '\u0000',
        '0.1 ± 0',
      ),
    );
    const fields = fc.dictionary(
      fc.constantFrom(
        'rest',
        'volts',
        'drop',
        'current',
        'cap',
        'glycol',
        'highest',
        'raw',
        'supply',
        'cylinder',
        'diameters',
        'nominal',
        'points',
        'heights',
        'x',
        'y',
        'drops',
        'catch',
        'time',
        'bore',
        'rod',
        'drift',
        'load',
        'radius',
        'arc',
        'speed',
        'distance',
        'series',
        'most',
        'before',
        'now',
        'size',
        'marked',
        'whole',
        '__proto__',
        'constructor',
      ),
      typed,
      { maxKeys: 6 },
    );
    fc.assert(
      fc.property(fc.constantFrom(...ids), fields, fields, (id, inputs, conditions) => {
        const outcome = compute(id, { inputs, conditions });
        for (const { value: found, uncertainty, verdict: said, limit } of outcome.results) {
          for (const each of [found ?? []].flat()) expect(Number.isFinite(each)).toBe(true);
          if (said === 'within' || said === 'beyond' || said === 'watch') {
            expect(limit).not.toBeNull();
            expect(uncertainty).toBeGreaterThanOrEqual(0);
          }
        }
      }),
      { numRuns: 3000 },
    );
  });
});
