import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** A first and a last code point, both covered. */
type Range = [first: number, last: number];

/** The families of `assets/fonts` in the order the typesetter tries them; a file belongs to the longest name it begins with. */
const families: readonly [family: string, filePrefixes: readonly string[]][] = [
  ['Barlow', ['Barlow-', 'BarlowSemiCondensed-', 'BarlowCondensed-']],
  ['Noto Sans', ['NotoSans-']],
  ['Noto Sans Symbols', ['NotoSansSymbols-']],
  ['Noto Sans Symbols 2', ['NotoSansSymbols2-']],
  ['Noto Sans Arabic', ['NotoSansArabic-']],
  ['Noto Sans Hebrew', ['NotoSansHebrew-']],
  ['Noto Sans Devanagari', ['NotoSansDevanagari-']],
  ['Noto Sans Bengali', ['NotoSansBengali-']],
  ['Noto Sans Tamil', ['NotoSansTamil-']],
  ['Noto Sans Thai', ['NotoSansThai-']],
  ['Noto Sans Armenian', ['NotoSansArmenian-']],
  ['Noto Sans Georgian', ['NotoSansGeorgian-']],
  ['Noto Sans Ethiopic', ['NotoSansEthiopic-']],
  ['Noto Emoji', ['NotoEmoji-']],
  ['Noto Sans JP', ['NotoSansJP-']],
];

/**
 * The code points a TrueType file maps to a real glyph.
 *
 * Source: OpenType 1.9, `cmap`: encoding records, subtable formats 4 (BMP) and 12 (full).
 */
export function codePointsOf(font: Uint8Array): Set<number> {
  const view = new DataView(font.buffer, font.byteOffset, font.byteLength);
  const cmap = tableOffset(view, 'cmap');
  const subtables = Array.from({ length: view.getUint16(cmap + 2) }, (_, index) => {
    const record = cmap + 4 + index * 8;
    return { platform: view.getUint16(record), at: cmap + view.getUint32(record + 4) };
  }).filter(({ platform }) => platform === 0 || platform === 3);
  const full = subtables.find(({ at }) => view.getUint16(at) === 12);
  const basic = subtables.find(({ at }) => view.getUint16(at) === 4);
  if (full) return segmentedCoverage(view, full.at);
  if (basic) return segmentMapping(view, basic.at);
  throw new Error('no Unicode cmap of format 4 or 12');
}

function tableOffset(view: DataView, wanted: string): number {
  for (let index = 0; index < view.getUint16(4); index++) {
    const record = 12 + index * 16;
    const tag = String.fromCharCode(...[0, 1, 2, 3].map((byte) => view.getUint8(record + byte)));
    if (tag === wanted) return view.getUint32(record + 8);
  }
  throw new Error(`no ${wanted} table`);
}

function segmentedCoverage(view: DataView, at: number): Set<number> {
  const covered = new Set<number>();
  for (let group = 0; group < view.getUint32(at + 12); group++) {
    const record = at + 16 + group * 12;
    const first = view.getUint32(record);
    const glyph = view.getUint32(record + 8);
    for (let code = first; code <= view.getUint32(record + 4); code++) if (glyph + code - first > 0) covered.add(code);
  }
  return covered;
}

function segmentMapping(view: DataView, at: number): Set<number> {
  const covered = new Set<number>();
  const twice = view.getUint16(at + 6);
  for (let segment = 0; segment < twice; segment += 2) {
    const last = view.getUint16(at + 14 + segment);
    const first = view.getUint16(at + 16 + twice + segment);
    const delta = view.getUint16(at + 16 + 2 * twice + segment);
    const offsetAt = at + 16 + 3 * twice + segment;
    const offset = view.getUint16(offsetAt);
    for (let code = first; code <= last && code < 0xffff; code++) {
      const raw = offset === 0 ? code : view.getUint16(offsetAt + offset + 2 * (code - first));
      if (raw !== 0 && ((raw + delta) & 0xffff) !== 0) covered.add(code);
    }
  }
  return covered;
}

/** Per family, what every one of its files covers: a heading must not lose a letter that the text has. Controls are never set. */
export function coverageOf(folder: string): [family: string, codePoints: Set<number>][] {
  const files = readdirSync(folder).filter((name) => name.endsWith('.ttf'));
  return families.map(([family, prefixes]) => {
    const sets = files
      .filter((file) => prefixes.some((prefix) => file.startsWith(prefix)))
      .map((file) => codePointsOf(readFileSync(join(folder, file))));
    const [first, ...others] = sets;
    if (first === undefined) throw new Error(`no file of ${family}`);
    return [family, new Set([...first].filter((code) => code >= 0x20 && others.every((other) => other.has(code))))];
  });
}

function rangesOf(codePoints: Set<number>): Range[] {
  const ranges: Range[] = [];
  for (const code of [...codePoints].sort((a, b) => a - b)) {
    const open = ranges.at(-1);
    if (open && open[1] === code - 1) open[1] = code;
    else ranges.push([code, code]);
  }
  return ranges;
}

/** Each range as its distance from the last one's end and its further length, in base 36: `1k.2`; a lone code point has no length. */
export function packRanges(codePoints: Set<number>): string {
  let end = 0;
  return rangesOf(codePoints)
    .map(([first, last]) => {
      const packed = (first - end).toString(36) + (last > first ? `.${(last - first).toString(36)}` : '');
      end = last;
      return packed;
    })
    .join(' ');
}

export function coverageModule(folder: string): string {
  const lines = coverageOf(folder).map(([family, codes]) => `  ['${family}', '${packRanges(codes)}'],`);
  return [
    '/**',
    ' * What the fonts of `assets/fonts` cover, family by family in the order they are tried. Made by',
    ' * `electron/recorder/reports/cover-fonts.ts`; a test holds it against the fonts. Each range is the distance',
    ' * from the end of the last one and its further length, in base 36.',
    ' */',
    '// biome-ignore format: one line a family',
    'export const packedCoverage: readonly (readonly [family: string, ranges: string])[] = [',
    ...lines,
    '];',
    '',
  ].join('\n');
}

if (import.meta.main) {
  const root = join(import.meta.dirname, '../../..');
  writeFileSync(join(root, 'shared-lib/report/covered-code-points.ts'), coverageModule(join(root, 'assets/fonts')));
}
