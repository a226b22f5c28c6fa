import fc from 'fast-check';
import { afterAll, expect, test } from 'vitest';
import { Typesetter } from '../../../electron/recorder/reports/typeset.ts';
import { printableText } from '../../../shared-lib/report/printable-text.ts';
import type { ReportSource } from '../../../shared-lib/report/source.ts';
import { attachmentOf, textOfPages } from '../../recorder/reports/poppler.ts';
import { changedFindings, reportOf, scenarioSource } from '../../recorder/reports/sample.ts';

const typesetter = new Typesetter();
afterAll(() => typesetter.close());

const plain = scenarioSource('s6-backhoe-visit-and-return.json', 1);
const options = { paper: 'a4', photoFiles: new Map<string, string>() } as const;

/** The same words everywhere a person can write any. */
function saying(words: string): ReportSource {
  const { record, shop } = changedFindings(plain, () => ({
    words,
    ifLeft: words,
    watchFor: words,
    actionWords: words,
    notExaminedBecause: words,
  }));
  return {
    ...plain,
    shop: { ...shop, name: words.slice(0, 200), address: words.slice(0, 200), phone: words.slice(0, 60) },
    people: plain.people.map((person) => ({ ...person, name: words.slice(0, 100), trade: words.slice(0, 100) })),
    record: {
      ...record,
      visit: { ...record.visit, complaint: words },
      machine: { ...record.machine, kind: words.slice(0, 100), serial: words.slice(0, 80) },
      owner: record.owner && { ...record.owner, name: words.slice(0, 150), capacity: words.slice(0, 100) },
    },
  };
}

async function typesets(words: string): Promise<Uint8Array> {
  const made = await typesetter.typeset(reportOf(saying(words)), options);
  expect(Buffer.from(made.pdf.subarray(0, 5)).toString()).toBe('%PDF-');
  return made.pdf;
}

const assigned = /^[^\p{Cn}\p{Cs}\p{Co}]$/u;

/** The first and the last assigned character of every stretch of 128 code points: no Unicode block is left out. */
function everyBlock(): string[] {
  const found: string[] = [];
  for (let start = 0; start < 0x110000; start += 128) {
    const stretch = Array.from({ length: 128 }, (_, index) => start + index)
      .filter((code) => code < 0xd800 || code > 0xdfff)
      .map((code) => String.fromCodePoint(code))
      .filter((character) => assigned.test(character));
    const ends = [stretch[0], stretch.at(-1)].filter((each) => each !== undefined);
    found.push(...new Set(ends));
  }
  return found;
}

test('characters of every assigned block go through a real compile', async () => {
  const characters = everyBlock();
  expect(characters.length).toBeGreaterThan(2000);
  const spoken = {
    ...plain,
    record: { ...plain.record, visit: { ...plain.record.visit, complaint: characters.join(' ') } },
  };
  const { pdf } = await typesetter.typeset(reportOf(spoken), options);
  expect(textOfPages(pdf).join('')).toContain('[U+13000]');
});

test.each([
  ['null, private use, byte order mark', '\u0000\uE000\uFEFF'],
  ['lone surrogates', 'a\uD800b\uDFFFc\uDC00'],
  ['noncharacters', '\uFDD0\uFFFE\uFFFF\u{1FFFE}\u{10FFFF}'],
  ['controls', Array.from({ length: 32 }, (_, code) => String.fromCharCode(code)).join('')],
  ['right to left with overrides', '\u202Eabc\u202C مرحبا \u2067שלום\u2069 123'],
  ['emoji families, flags and skin', '👨‍👩‍👧‍👦👍🏽🏴󠁧󠁢󠁥󠁮󠁧󠁿🇨🇭❤️‍🔥'],
  ['a pile of marks', `Z${'\u0335\u0321\u0301\u0489'.repeat(80)}algo`],
  ['marks on letters of other scripts', '漢\u0301ش\u0301😀\u0489ก\u0301'],
  ['joiners alone', '\u200D\u200D\u200C\uFE0F\u034F'],
  ['one endless word', 'W'.repeat(1500)],
  ['nothing but spaces and breaks', ' \n\n\t \r\n \u00a0\u202f\u3000'],
  ['markup of many kinds', '#eval("1") $ x $ <script>alert(1)</script> \\u{0} {{x}} %s \'; DROP TABLE'],
])('%s', async (_, words) => {
  await typesets(words);
});

test('what is made visible is read back as it was made', async () => {
  const words = 'seal \u0000 \uE000 \uFEFF \uD800 leaks';
  const text = textOfPages(await typesets(words))
    .join(' ')
    .replaceAll(/\s+/g, ' ');
  expect(text).toContain('Seal [U+0000] [U+E000] [U+FEFF] [U+D800] leaks');
});

test('the record keeps what was typed, whatever is printed', async () => {
  const pdf = await typesets('null \u0000 and private \uE000');
  const record = JSON.parse(attachmentOf(pdf, 'record.json').toString('utf8'));
  expect(record.record.visit.complaint).toBe('null \u0000 and private \uE000');
});

test('any text at all', async () => {
  const any = fc.string({ unit: 'binary', minLength: 1, maxLength: 400 });
  await fc.assert(
    fc.asyncProperty(any, async (words) => {
      await typesets(words);
    }),
    { numRuns: 25 },
  );
}, 120_000);

test('the check can fail: the same characters unprepared do stop an archive PDF', async () => {
  const report = reportOf(plain);
  const outcome = (words: string) =>
    typesetter.typeset({ ...report, footLeft: words }, options).then(
      () => 'made',
      (error: { code?: unknown }) => error.code,
    );
  for (const bad of ['\u0000', '\uE000', '𓀀']) {
    expect(await outcome(bad)).toBe('report-typesetting-failed');
    expect(await outcome(printableText(bad))).toBe('made');
  }
});
