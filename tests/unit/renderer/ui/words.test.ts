import { describe, expect, it } from 'vitest';
import { countWords, dateWords, dayWords, hoursWords, numberWords } from '../../../../renderer/ui/words.ts';
import { listed } from '../../../../shared-lib/wording/listed.ts';

/** U+202F, the narrow space that never breaks: BIPM's SI Brochure, 9th edition, 5.4.4, groups digits by a thin space. */
const gap = '\u202f';

describe('dates', () => {
  it.each([
    ['2026-06-08', '8 June 2026'],
    ['2026-12-31', '31 December 2026'],
    ['2026-02-09T10:41:00Z', '9 February 2026'],
    ['someday', 'someday'],
    ['2026-13-01', '2026-13-01'],
  ])('%s is said as %s', (iso, words) => {
    expect(dateWords(iso)).toBe(words);
  });

  it('leaves the year out where it is clear', () => {
    expect(dayWords('2026-06-08')).toBe('8 June');
  });
});

describe('numbers', () => {
  it.each([
    [0, '0'],
    [999, '999'],
    [1000, `1${gap}000`],
    [6260, `6${gap}260`],
    [18_600.4, `18${gap}600.4`],
    [1_234_567, `1${gap}234${gap}567`],
    [-40, '\u221240'],
    [12.04, '12'],
  ])('%d is written %s', (value, words) => {
    expect(numberWords(value)).toBe(words);
  });

  it('carries the unit of hours', () => {
    expect(hoursWords(6260)).toBe(`6${gap}260${gap}h`);
  });
});

describe('counts and lists', () => {
  it('knows one from many', () => {
    expect([countWords(0, 'finding'), countWords(1, 'finding'), countWords(2, 'finding')]).toEqual([
      '0 findings',
      '1 finding',
      '2 findings',
    ]);
  });

  it.each([
    [[], ''],
    [['a'], 'a'],
    [['a', 'b'], 'a and b'],
    [['a', 'b', 'c'], 'a, b and c'],
  ])('%j is said as "%s"', (words, said) => {
    expect(listed(words)).toBe(said);
  });
});
