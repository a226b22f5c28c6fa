import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as fontkit from 'fontkit';
import { expect, test } from 'vitest';
import { coverageModule, coverageOf } from '../../../../electron/recorder/reports/cover-fonts.ts';
import { fontFamilies, oneFontCovers } from '../../../../shared-lib/report/font-coverage.ts';
import { printable, printableText } from '../../../../shared-lib/report/printable-text.ts';

const root = join(import.meta.dirname, '../../../..');
const fonts = join(root, 'assets/fonts');

/** The cmap as an independent reader sees it; code points that map to the missing glyph don't count. */
function cmapOf(file: string): Set<number> {
  const font = fontkit.openSync(join(fonts, file));
  if (!('characterSet' in font)) throw new TypeError(`${file} holds more than one font`);
  return new Set(font.characterSet.filter((code) => font.hasGlyphForCodePoint(code)));
}

const filesOf: Readonly<Record<string, RegExp>> = {
  Barlow: /^Barlow(SemiCondensed|Condensed)?-/,
  'Noto Sans': /^NotoSans-/,
  'Noto Sans Symbols 2': /^NotoSansSymbols2-/,
};

test('the covered code points are those of the shipped fonts, as fontkit reads them', () => {
  const files = readdirSync(fonts).filter((name) => name.endsWith('.ttf'));
  const seen = new Set<string>();
  for (const [family, codes] of coverageOf(fonts)) {
    const own = files.filter((name) => (filesOf[family] ?? new RegExp(`^${family.replaceAll(' ', '')}-`)).test(name));
    const [first, ...others] = own.map(cmapOf);
    for (const name of own) seen.add(name);
    const expected = [...(first ?? [])]
      .filter((code) => code >= 0x20 && others.every((set) => set.has(code)))
      .sort((a, b) => a - b);
    expect(
      [...codes].sort((a, b) => a - b),
      family,
    ).toEqual(expected);
  }
  expect([...seen].sort()).toEqual(files.sort());
}, 30_000);

test('the generated file is made from the fonts as they are now', () => {
  const made = readFileSync(join(root, 'shared-lib/report/covered-code-points.ts'), 'utf8');
  expect(made).toBe(coverageModule(fonts));
});

test('each family answers for the letters it is there for', () => {
  expect(fontFamilies[0]).toBe('Barlow');
  const letters = ['é', 'Ж', 'λ', 'ش', 'ש', 'क', 'ক', 'த', 'ไ', 'Ա', 'ა', 'አ', '漢', '→', '½', '±', '⚠'];
  for (const letter of letters) expect(oneFontCovers([letter.codePointAt(0) ?? 0]), letter).toBe(true);
  expect(oneFontCovers([0x13000])).toBe(false);
});

test.each([
  ['plain words stay', 'Crack in the weld, 31 mm ± 0.5', 'Crack in the weld, 31 mm ± 0.5'],
  ['a null character is seen', 'a\u0000b', 'a[U+0000]b'],
  ['controls are seen', 'a\u0007b\u009fc', 'a[U+0007]b[U+009F]c'],
  ['a byte order mark is seen', '\uFEFFx', '[U+FEFF]x'],
  ['private use is seen', '\uE000', '[U+E000]'],
  ['noncharacters are seen', '\uFFFE\u{1FFFF}', '[U+FFFE][U+1FFFF]'],
  ['lone surrogates are seen', 'x\uD800y\uDC00', 'x[U+D800]y[U+DC00]'],
  ['direction overrides are seen', 'ab\u202Ecd', 'ab[U+202E]cd'],
  ['a script without a font is seen', '𓀀', '[U+13000]'],
  ['line breaks stay, tabs become spaces', 'a\r\nb\tc', 'a\nb c'],
  ['letter and mark are joined', 'e\u0301', 'é'],
  ['Arabic, Hebrew and Thai stay', 'مرحبا שלום ไทย', 'مرحبا שלום ไทย'],
  ['a mark with no letter is seen', '\u0301', '[U+0301]'],
])('%s', (_, text, expected) => {
  expect(printableText(text)).toBe(expected);
});

test('a letter keeps six marks; what is piled higher is spelled out', () => {
  const printed = printableText(`x${'\u0316'.repeat(9)}`);
  expect(printed.match(/\u0316/g)).toHaveLength(6);
  expect(printed.match(/\[U\+0316\]/g)).toHaveLength(3);
});

test('a word longer than a column may be parted, and nothing of it is lost', () => {
  const word = 'Rindfleischetikettierungsüberwachungsgesetz';
  expect(printableText(word)).toContain('\u200b');
  expect(printableText(word).replaceAll('\u200b', '')).toBe(word);
  expect(printableText('twenty-six-letters-or-less')).not.toContain('\u200b');
});

test('names of records and files are left alone', () => {
  const digest = 'a'.repeat(64);
  expect(printable({ digest, words: ['\u0000'] })).toEqual({ digest, words: ['[U+0000]'] });
});
