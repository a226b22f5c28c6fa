import { describe, expect, it } from 'vitest';
import { readField } from '../../../../shared-lib/sheets/read-fields.ts';
import type { InputSpec } from '../../../../shared-lib/sheets/sheet-kind.ts';

const pressure: InputSpec = { kind: 'number', label: 'Pressure', unit: 'kPa', possible: [0, 500], usual: [10, 160] };
const repeated: InputSpec = { ...pressure, repeats: 'lowest' };
const list: InputSpec = { kind: 'list', label: 'Sizes', unit: 'mm', possible: [-5, 500] };
const rows: InputSpec = {
  kind: 'rows',
  label: 'Diameters',
  row: 'depth',
  column: 'direction',
  unit: 'mm',
  possible: [-5, 500],
};
const ppm: InputSpec = { kind: 'list', label: 'Carbon monoxide', unit: 'ppm', possible: [0, 1000] };

describe('one number', () => {
  it.each([
    ['15 psi', 103.421359],
    ['1.2 bar', 120],
    ['88', 88],
    ['88,5 kPa', 88.5],
    ['  90 kPa ', 90],
  ])('%s', (typed, value) => {
    const read = readField('p', pressure, typed);
    expect(read.problems).toEqual([]);
    expect(read.value?.kind === 'number' ? read.value.value : null).toBeCloseTo(value, 5);
  });

  it('an empty field is no field', () => expect(readField('p', pressure, '  ')).toEqual({ value: null, problems: [] }));

  it.each(['', ' ', '12 V', 'high', '1/2/3 kPa', '10/20', '--', 'NaN', 'Infinity', '1e999', '10 kPa or so'])(
    'takes no guess at “%s”',
    (typed) => {
      expect(readField('p', pressure, typed).value).toBeNull();
    },
  );

  it('repeats are all kept, and the one that counts stands first', () => {
    expect(readField('p', repeated, '91 / 88 / 90 kPa').value).toEqual({
      kind: 'number',
      value: 88,
      repeats: [91, 88, 90],
      off: null,
    });
  });

  it('a ± of its own is read', () => {
    expect(readField('p', pressure, '88 ± 0.5 kPa').value).toMatchObject({ value: 88, off: 0.5 });
  });

  it.each([
    ['-5 kPa', 'impossible', /cannot be -5 kPa: it cannot be less than nothing/],
    ['800 kPa', 'impossible', /cannot be 800 kPa: it cannot be over 500 kPa/],
    ['300 kPa', 'odd', /unusual \(usually 10 to 160 kPa\); is it right\?/],
  ])('%s is %s', (typed, weight, what) => {
    const [problem] = readField('p', pressure, typed).problems;
    expect(problem).toMatchObject({ input: 'p', weight, kept: typed });
    expect(problem?.what).toMatch(what);
  });

  it('an odd value is computed all the same, an impossible one is not', () => {
    expect(readField('p', pressure, '300 kPa').value).not.toBeNull();
    expect(readField('p', pressure, '800 kPa').value).toBeNull();
  });
});

describe('several numbers', () => {
  it.each([
    ['27/26/24.5/27 mm', [27, 26, 24.5, 27]],
    ['27 / 26 / 24.5', [27, 26, 24.5]],
    ['27 26 24.5 mm', [27, 26, 24.5]],
    ['27\t26\t24.5', [27, 26, 24.5]],
    ['27\n26\n24.5', [27, 26, 24.5]],
    ['27; 26; 24.5 mm', [27, 26, 24.5]],
    ['27, 26, 24.5', [27, 26, 24.5]],
    ['0.00/-0.04/0.00', [0, -0.04, 0]],
    ['0.00/−0.04/0.00 mm', [0, -0.04, 0]],
    ['1 in / 2 in', [25.4, 50.8]],
    ['1 in; 2 mm', [25.4, 2]],
    ['445 440 405 435', [445, 440, 405, 435]],
    ['1/2; 3 in', [25.4, 50.8, 76.2]],
    ['1 1/2 in', [38.1]],
    ['1 ± 0.1/2 ± 0.1 in', [25.4, 50.8]],
    ['1 +/- 0.1 / 2', [1, 2]],
    ['7/16 in', [11.1125]],
    ['.0035"', [0.0889]],
    ['12', [12]],
  ])('%j', (typed, values) => {
    const { value, problems } = readField('s', list, typed);
    expect(problems).toEqual([]);
    expect(value?.kind).toBe('list');
    const found = value?.kind === 'list' ? value.values : [];
    expect(found).toHaveLength(values.length);
    for (const [index, each] of values.entries()) expect(found[index]).toBeCloseTo(each, 9);
  });

  it('one word among them makes none of them', () => expect(readField('s', list, '27/high/24').value).toBeNull());

  it('a unit of the sheet alone may be typed or left out', () => {
    for (const typed of ['40/60 ppm', '40/60', '40 ppm / 60 ppm']) {
      expect(readField('c', ppm, typed).value).toEqual({ kind: 'list', values: [40, 60], off: null });
    }
  });
});

describe('a table', () => {
  it.each([
    '100.142/100.098\n100.071/100.055',
    '100.142\t100.098\n100.071\t100.055\n',
    '100.142 100.098; 100.071 100.055 mm',
    '100.142 / 100.098 mm; 100.071 / 100.055 mm',
  ])('%j', (typed) => {
    expect(readField('d', rows, typed).value).toEqual({
      kind: 'rows',
      rows: [
        [100.142, 100.098],
        [100.071, 100.055],
      ],
      off: null,
    });
  });

  it('ragged rows are named', () => {
    const { value, problems } = readField('d', rows, '1/2\n3');
    expect(value).toBeNull();
    expect(problems[0]?.what).toBe('Diameters: each depth needs 2 numbers.');
  });
});

describe('words', () => {
  const choice: InputSpec = { kind: 'choice', label: 'Engine', answers: ['cold', 'hot'] };
  it('a choice in any case, and nothing else', () => {
    expect(readField('e', choice, 'Hot').value).toEqual({ kind: 'word', word: 'hot' });
    const { value, problems } = readField('e', choice, 'lukewarm');
    expect(value).toBeNull();
    expect(problems[0]).toMatchObject({
      weight: 'not understood',
      what: 'Engine is one of: cold, hot.',
      kept: 'lukewarm',
    });
  });
});
