import { oneFontCovers } from './font-coverage.ts';

/** More marks than this over one letter would run into the lines above; no writing system needs them. */
const mostMarksOnALetter = 6;

const combining = /^\p{M}$/u;
const privateOrUnassigned = /^[\p{Co}\p{Cn}\p{Cs}]$/u;
const control = /^\p{Cc}$/u;

/** Joins its neighbours into one sign (family emoji, Persian, Indic conjuncts). */
const zeroWidthJoiner = 0x200d;

/** Never drawn by any shaper, needed by some scripts; a font need not hold them. */
function isInvisible(codePoint: number): boolean {
  return codePoint === 0x200c || codePoint === zeroWidthJoiner || (codePoint >= 0xfe00 && codePoint <= 0xfe0f);
}

/** U+FEFF and the direction overrides could hide what a line says; an archive PDF forbids the first. */
function isTreacherous(codePoint: number): boolean {
  return (
    codePoint === 0xfeff ||
    (codePoint >= 0x202a && codePoint <= 0x202e) ||
    (codePoint >= 0x2066 && codePoint <= 0x2069) ||
    codePoint === 0x00ad ||
    codePoint === 0x2028 ||
    codePoint === 0x2029
  );
}

function isForbidden(character: string, codePoint: number): boolean {
  return privateOrUnassigned.test(character) || control.test(character) || isTreacherous(codePoint);
}

function visible(codePoint: number): string {
  return `[U+${codePoint.toString(16).toUpperCase().padStart(4, '0')}]`;
}

/** A letter with all that hangs on it: marks, joiners, variation selectors, and what a joiner joins. */
function clustersOf(text: string): string[][] {
  const clusters: string[][] = [];
  for (const character of text) {
    const codePoint = character.codePointAt(0) ?? 0;
    const open = clusters.at(-1);
    const joined = open?.at(-1)?.codePointAt(0) === zeroWidthJoiner;
    const hangs = combining.test(character) || isInvisible(codePoint) || (codePoint >= 0x1f3fb && codePoint <= 0x1f3ff);
    if (open && open[0] !== '\n' && (hangs || joined) && !isForbidden(character, codePoint)) open.push(character);
    else clusters.push([character]);
  }
  return clusters;
}

function printCluster(cluster: readonly string[]): string {
  let kept: string[] = [];
  let out = '';
  let marks = 0;
  const flush = () => {
    out += kept.join('');
    kept = [];
    marks = 0;
  };
  for (const character of cluster) {
    const codePoint = character.codePointAt(0) ?? 0;
    if (character === '\n') return '\n';
    if (isForbidden(character, codePoint)) {
      flush();
      out += visible(codePoint);
      continue;
    }
    const isMark = combining.test(character);
    const together = [...kept, character].map((each) => each.codePointAt(0) ?? 0).filter((code) => !isInvisible(code));
    const lone = kept.length === 0 && (isMark || isInvisible(codePoint));
    if (lone || !oneFontCovers(together) || (isMark && marks >= mostMarksOnALetter)) {
      if (isInvisible(codePoint)) continue;
      const standsAlone = !isMark && oneFontCovers([codePoint]);
      flush();
      if (standsAlone) kept.push(character);
      else out += visible(codePoint);
      continue;
    }
    if (isMark) marks += 1;
    kept.push(character);
  }
  flush();
  return out;
}

/** Longer than any word that has to stand whole in the narrowest column. */
const longestWhole = 26;
const partLength = 8;
const zeroWidthSpace = '\u200b';

/** A word too long for a column may be parted between any eight letters; the mark for it is never seen. */
function partable(clusters: readonly string[]): string[] {
  const out: string[] = [];
  let run: string[] = [];
  const flush = () => {
    const long = run.length > longestWhole;
    out.push(
      ...run.flatMap((each, index) =>
        long && index > 0 && index % partLength === 0 ? [zeroWidthSpace, each] : [each],
      ),
    );
    run = [];
  };
  for (const cluster of clusters) {
    if (/^\s$/u.test(cluster)) {
      flush();
      out.push(cluster);
    } else run.push(cluster);
  }
  flush();
  return out;
}

/** Every font that ships holds these; only a long word among them needs a second look. */
const ordinary = /^[\n -~]*$/;
const longWord = /[^\n ]{27}/;

/**
 * Text that the typesetter can set with the fonts that ship: what none of them holds, and what an archive PDF
 * forbids, stands there as `[U+XXXX]`. Line breaks stay, tabs become spaces. A report never fails because of a name.
 */
export function printableText(text: string): string {
  if (ordinary.test(text) && !longWord.test(text)) return text;
  const plain = text.replaceAll(/\r\n?/g, '\n').replaceAll('\t', ' ').normalize('NFC');
  return partable(clustersOf(plain).map(printCluster)).join('');
}

/** Keys whose values name a record or a file and are never set as text. */
const names: ReadonlySet<string> = new Set(['digest', 'findingId']);

/** A keyboard has one straight mark; between letters it is the apostrophe of print. */
const withApostrophes = (text: string): string => text.replaceAll(/(?<=\p{L})'(?=\p{L})/gu, '’');

/** The same for every text of a plain value. */
export function printable<T>(value: T): T {
  if (typeof value === 'string') return printableText(withApostrophes(value)) as T;
  if (Array.isArray(value)) return value.map((each) => printable(each)) as T;
  if (value !== null && typeof value === 'object') {
    return Object.fromEntries(
      Object.entries(value).map(([key, each]) => [key, names.has(key) ? each : printable(each)]),
    ) as T;
  }
  return value;
}
