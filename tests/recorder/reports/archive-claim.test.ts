import {
  decodePDFRawStream,
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  type PDFObject,
  PDFRawStream,
  PDFString,
} from 'pdf-lib';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { Typesetter } from '../../../electron/recorder/reports/typeset.ts';
import { openPictures } from './pictures.ts';
import { reportOf, scenarioSource, withPhotos } from './sample.ts';

/**
 * The report declares PDF/A-3a. These are the claim's structural conditions, read with pdf-lib; clause numbers of
 * ISO 19005-3:2012 are cited from memory. No validator runs here, so a report declares the level, it does not prove it.
 */
const typesetter = new Typesetter();
const pictures = openPictures();
const report = reportOf(scenarioSource('s6-backhoe-visit-and-return.json', 1));
let pdf: Uint8Array;
let document: PDFDocument;

beforeAll(async () => {
  const picture = await pictures.make(800, 600, 1);
  const source = withPhotos(scenarioSource('s6-backhoe-visit-and-return.json', 1), [
    { finding: 1, ...picture, caption: 'The hose' },
  ]);
  const options = { paper: 'us-letter', photoFiles: pictures.files } as const;
  ({ pdf } = await typesetter.typeset(reportOf(source), options));
  document = await PDFDocument.load(pdf, { updateMetadata: false });
});

afterAll(async () => {
  await typesetter.close();
  pictures.remove();
});

const name = (text: string): PDFName => PDFName.of(text);

function dict(of: PDFObject | undefined): PDFDict {
  const found = document.context.lookup(of);
  if (!(found instanceof PDFDict)) throw new TypeError('not a dictionary');
  return found;
}

function bytesOf(of: PDFObject | undefined): string {
  const found = document.context.lookup(of);
  if (!(found instanceof PDFRawStream)) throw new TypeError('not a stream');
  return Buffer.from(decodePDFRawStream(found).decode()).toString('utf8');
}

const allDicts = (): PDFDict[] =>
  document.context
    .enumerateIndirectObjects()
    .flatMap(([, each]) => (each instanceof PDFDict ? [each] : each instanceof PDFRawStream ? [each.dict] : []));

test('the metadata declares part 3, conformance A (6.6.4)', () => {
  const xmp = bytesOf(document.catalog.get(name('Metadata')));
  expect(xmp).toContain('<pdfaid:part>3</pdfaid:part>');
  expect(xmp).toContain('<pdfaid:conformance>A</pdfaid:conformance>');
  expect(xmp).toContain(report.title);
});

test('colour has an output intent with its profile (6.2.3)', () => {
  const intents = document.catalog.lookup(name('OutputIntents'), PDFArray);
  const intent = dict(intents.get(0));
  expect(intent.get(name('S'))).toBe(name('GTS_PDFA1'));
  expect(bytesOf(intent.get(name('DestOutputProfile'))).slice(36, 40)).toBe('acsp');
});

test('the structure tree is there, marked, with a language (6.7)', () => {
  expect(
    dict(document.catalog.get(name('MarkInfo')))
      .get(name('Marked'))
      ?.toString(),
  ).toBe('true');
  expect(dict(document.catalog.get(name('StructTreeRoot'))).get(name('Type'))).toBe(name('StructTreeRoot'));
  const language = document.catalog.lookup(name('Lang'));
  expect(language instanceof PDFString || language instanceof PDFHexString ? language.decodeText() : '').toBe('en');
});

test('every figure has words for a reader who cannot see it', () => {
  const figures = allDicts().filter((each) => each.get(name('S')) === name('Figure'));
  expect(figures).toHaveLength(2);
  for (const figure of figures) {
    const alternative = figure.lookup(name('Alt'));
    if (!(alternative instanceof PDFString || alternative instanceof PDFHexString)) throw new TypeError('no words');
    expect(alternative.decodeText()).toBe('Photo 1: The hose. One mark of finding 1.');
  }
});

test('every font program is embedded (6.2.11.4)', () => {
  const descriptors = allDicts().filter((each) => each.get(name('Type')) === name('FontDescriptor'));
  expect(descriptors.length).toBeGreaterThan(3);
  for (const each of descriptors) expect(each.has(name('FontFile2')) || each.has(name('FontFile3'))).toBe(true);
  const fonts = allDicts().filter((each) => each.get(name('Type')) === name('Font'));
  for (const each of fonts) {
    const type = each.get(name('Subtype'));
    if (type === name('Type0')) expect(each.has(name('ToUnicode'))).toBe(true);
    else expect(each.has(name('FontDescriptor'))).toBe(true);
  }
});

test('the record is an associated file with its relationship, kind and date (6.8)', () => {
  const files = document.catalog.lookup(name('AF'), PDFArray);
  expect(files.size()).toBe(1);
  const file = dict(files.get(0));
  expect(file.get(name('AFRelationship'))).toBe(name('Source'));
  expect(file.has(name('UF'))).toBe(true);
  const embedded = document.context.lookup(dict(file.get(name('EF'))).get(name('F')));
  if (!(embedded instanceof PDFRawStream)) throw new TypeError('not a stream');
  expect(embedded.dict.get(name('Subtype'))?.toString()).toMatch(/application(\/|#2F)json/);
  expect(dict(embedded.dict.get(name('Params'))).has(name('ModDate'))).toBe(true);
});

test('nothing in it is encrypted, scripted or left to the reader (6.1.3, 6.5)', () => {
  const { trailerInfo } = document.context;
  expect(trailerInfo.Encrypt).toBeUndefined();
  expect(trailerInfo.ID).toBeDefined();
  for (const each of allDicts()) {
    expect(each.has(name('JS'))).toBe(false);
    expect(each.get(name('S'))).not.toBe(name('JavaScript'));
    expect(each.get(name('S'))).not.toBe(name('Launch'));
  }
  const head = Buffer.from(pdf.subarray(0, 32));
  expect(head.toString('latin1', 0, 8)).toBe('%PDF-1.7');
});

test('bookmarks lead to every section and every finding', () => {
  const titles = allDicts().flatMap((each) => {
    const title = each.has(name('Dest')) || each.has(name('A')) ? each.lookup(name('Title')) : undefined;
    return title instanceof PDFString || title instanceof PDFHexString ? [title.decodeText()] : [];
  });
  expect(titles).toEqual(
    expect.arrayContaining(['Condition report', 'All findings, the worst first', 'Photos', 'What this report is']),
  );
  expect(titles.filter((title) => title.startsWith('Left boom hose'))).toHaveLength(1);
});
