import { readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Typesetter } from '../../../electron/recorder/reports/typeset.ts';
import type { Report } from '../../../shared-lib/report/model.ts';
import type { ReportSource } from '../../../shared-lib/report/source.ts';
import { openPictures, type Picture } from './pictures.ts';
import { attachmentOf, fontsOf, imagesOf, infoOf, structureOf, textOfPages } from './poppler.ts';
import { changedFindings, reportOf, scenarioSource, withPhotos } from './sample.ts';

const typesetter = new Typesetter();
const pictures = openPictures();
let source: ReportSource;
let report: Report;
let pdf: Uint8Array;
let pages: number;

beforeAll(async () => {
  const [wide, upright, panorama] = [
    await pictures.make(1600, 1200, 1),
    await pictures.make(1200, 1600, 2),
    await pictures.make(2000, 400, 3),
  ];
  source = withPhotos(scenarioSource('s6-backhoe-visit-and-return.json', 1), [
    { finding: 1, ...wide, seenFrom: 'the left', shape: 'area' },
    { finding: 3, ...upright, seenFrom: 'the right of the machine', caption: 'Penetrant, developer 10 min' },
    { finding: 2, ...panorama, seenFrom: 'the seat', shape: 'line' },
    { finding: 4, ...wide, seenFrom: 'the seat', shape: 'point' },
  ]);
  report = reportOf(source);
  ({ pdf, pages } = await typesetter.typeset(report, { paper: 'a4', photoFiles: pictures.files }));
});

afterAll(async () => {
  await typesetter.close();
  pictures.remove();
});

const words = (page: string | undefined): string => (page ?? '').replaceAll(/\s+/g, ' ').replaceAll('\u200b', '');

describe('the draft as an independent reader sees it', () => {
  test('page one is read in order: machine, limit, the three worst, what was not looked at, whom to call', () => {
    const one = words(textOfPages(pdf)[0]);
    const places = [
      'Backhoe loader',
      'BL-6050-M',
      'Condition report',
      'Draft, not issued',
      'Ilse Marquet',
      'Do not operate this machine',
      'Left boom hose: leak',
      'Right loader tower: crack 31',
      'Drag link: play 23.5',
      'Not looked at',
      'Brakes',
      'Questions',
      '0000 555 0142',
    ].map((each) => one.indexOf(each));
    expect(places).not.toContain(-1);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
  });

  test('every page says that it is a draft, and which page of how many', () => {
    const all = textOfPages(pdf).map(words);
    expect(all).toHaveLength(pages);
    for (const [index, page] of all.entries()) {
      expect(page).toContain('Draft, not issued');
      expect(page).toContain(`page ${index + 1} of ${pages}`);
      expect(page).toContain(report.footMiddle);
    }
  });

  test('the pages the list sends to are the pages the findings stand on', () => {
    const all = textOfPages(pdf).map(words);
    const [, page] = /Do not operate\. Found, seen and tried\. Page (\d+)\./.exec(all[0] ?? '') ?? [];
    expect(all[Number(page) - 1]).toContain('340 mm from the pump end');
  });

  test('title, language and tags are there', () => {
    const info = infoOf(pdf);
    expect(info.Title).toBe(report.title);
    expect(info.Author).toBe('Ivo Sandbeck');
    expect(info.Tagged).toBe('yes');
    expect(info['Page size']).toContain('A4');
  });

  test('the tags name headings, tables and figures', () => {
    const structure = structureOf(pdf);
    for (const tag of ['H1', 'H2', 'Table', 'TH', 'TD', 'Figure'])
      expect(structure).toMatch(new RegExp(`^ *${tag}\\b`, 'm'));
    expect(structure).toContain('H2 "Left boom hose: leak, class II"');
  });

  test('every photo is printed, at least 80 mm wide, and its JPEG is passed on untouched', () => {
    const images = imagesOf(pdf);
    // Three on page one, and each of the four at its finding.
    expect(images).toHaveLength(7);
    for (const { printedWidthMm, encoding } of images) {
      expect(printedWidthMm).toBeGreaterThanOrEqual(79.9);
      expect(encoding).toBe('jpeg');
    }
  });

  test('every font is embedded and maps back to Unicode', () => {
    const fonts = fontsOf(pdf);
    expect(fonts.length).toBeGreaterThan(3);
    for (const { name, embedded, unicode } of fonts) expect([name, embedded, unicode]).toEqual([name, true, true]);
    expect(fonts.map(({ name }) => name).join()).not.toMatch(/Libertinus|NewCM|DejaVu/);
  });

  test('the attached record is the canonical record, byte for byte', () => {
    expect(attachmentOf(pdf, 'record.json').equals(Buffer.from(report.record.json, 'utf8'))).toBe(true);
  });
});

test('the same report gives the same bytes', async () => {
  const again = await typesetter.typeset(report, { paper: 'a4', photoFiles: pictures.files });
  expect(Buffer.from(again.pdf).equals(Buffer.from(pdf))).toBe(true);
});

test('what was typeset before leaves no trace in what follows', async () => {
  const changed = withPhotos(
    changedFindings(source, ({ number }) => (number === 3 ? { words: 'cracked through' } : {})),
    [{ finding: 2, ...(await pictures.make(1500, 1000, 13)), seenFrom: 'the pit' }],
  );
  const later = reportOf({
    ...changed,
    nowMs: changed.nowMs + 86_400_000,
    issue: { number: 7, revision: 2, changes: ['more'] },
  });
  const options = { paper: 'a4', photoFiles: pictures.files } as const;
  const fresh = new Typesetter();
  const alone = await fresh.typeset(later, options);
  await fresh.close();
  // After a print and a preview of the draft, of which most is as it was.
  await typesetter.preview(report, options);
  const after = await typesetter.typeset(later, options);
  expect(Buffer.from(after.pdf).equals(Buffer.from(alone.pdf))).toBe(true);
  expect(words(textOfPages(after.pdf)[1])).toContain(later.footMiddle);
});

test('on US Letter the pages are US Letter', async () => {
  const letter = await typesetter.typeset(report, { paper: 'us-letter', photoFiles: pictures.files });
  expect(infoOf(letter.pdf)['Page size']).toMatch(/612 x 792 pts \(letter\)/);
  expect(words(textOfPages(letter.pdf)[0])).toContain('Questions');
});

test('words of the record are never read as markup', async () => {
  const words = '#panic("no") *bold* $x^2$ @ref <label> \\ `raw` https://example.invalid --- ... "quotes" //comment';
  const marked = reportOf(changedFindings(source, ({ number }) => (number === 1 ? { words } : {})));
  const made = await typesetter.typeset(marked, { paper: 'a4', photoFiles: pictures.files });
  const text = textOfPages(made.pdf).join(' ').replaceAll(/\s+/g, ' ').replaceAll('\u200b', '');
  expect(text).toContain('#panic("no") *bold* $x^2$ @ref <label> \\ `raw`');
  expect(text).toContain('--- ... "quotes" //comment');
});

describe('a photo that cannot be had', () => {
  test('leaves its frame, which says so', async () => {
    const made = await typesetter.typeset(report, { paper: 'a4', photoFiles: new Map() });
    expect(imagesOf(made.pdf)).toHaveLength(0);
    expect(words(textOfPages(made.pdf)[0])).toContain('This photo is not in the store of the program.');
  });

  test('neither a broken file, nor one that is no picture, nor a folder fails the report', async () => {
    const [broken, text, headless] = [
      await pictures.make(400, 300, 9),
      await pictures.make(400, 300, 10),
      await pictures.make(400, 300, 12),
    ];
    const pathOf = ({ digest }: Picture): string => pictures.files.get(digest) ?? '';
    truncateSync(pathOf(broken), 60);
    writeFileSync(pathOf(text), 'not a picture');
    writeFileSync(pathOf(headless), readFileSync(pathOf(headless)).fill(0, 20, 200));
    const wide = await pictures.make(1600, 1200, 11);
    const odd = withPhotos(scenarioSource('s6-backhoe-visit-and-return.json', 1), [
      { finding: 1, ...broken },
      { finding: 3, ...text },
      { finding: 2, ...wide },
      { finding: 4, ...headless },
    ]);
    const photoFiles = new Map([...pictures.files, ['f'.repeat(64), pictures.folder]]);
    const made = await typesetter.typeset(reportOf(odd), { paper: 'a4', photoFiles });
    expect(imagesOf(made.pdf)).toHaveLength(2);
    const said = textOfPages(made.pdf).map(words).join(' ').split('This photo is not in the store of the program.');
    // On page one and at their findings; the third stands on no first page.
    expect(said.length - 1).toBe(5);
  });
});

describe('the preview', () => {
  test('has one picture per page, from the same document', async () => {
    const svgs = await typesetter.preview(report, { paper: 'a4', photoFiles: pictures.files });
    expect(svgs).toHaveLength(pages);
    for (const svg of svgs) {
      expect(svg).toMatch(/^<svg [^>]*viewBox="0 0 595\.2756 841\.8898"/);
      expect(svg.trimEnd().endsWith('</svg>')).toBe(true);
      // Everything a page refers to is in it.
      const defined = new Set([...svg.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id));
      for (const [, id] of svg.matchAll(/(?:href="#|url\(#)([^")]+)/g)) expect(defined.has(id)).toBe(true);
    }
  });

  test('names the photos of a page instead of holding them', async () => {
    const svgs = await typesetter.preview(report, { paper: 'a4', photoFiles: pictures.files });
    const named = (svg: string | undefined) =>
      [...(svg ?? '').matchAll(/<image [^>]*href="([^"]*)"/g)].map(([, address]) => address);
    const one = report.sections.flatMap((section) => (section.kind === 'page-one' ? section.items : []));
    expect(named(svgs[0])).toEqual(one.map(({ photo }) => `photo://screen/${photo?.digest}`));
    expect(svgs.join('')).not.toContain('data:');
  });

  test('has no photo where there is none', async () => {
    const svgs = await typesetter.preview(report, { paper: 'a4', photoFiles: new Map() });
    expect(svgs.join('')).not.toContain('photo://');
  });
});

test('after its thread has died the typesetter starts a new one', async () => {
  const mortal = new Typesetter();
  const doomed = mortal.typeset(report, { paper: 'a4', photoFiles: pictures.files });
  const told = expect(doomed).rejects.toMatchObject({ code: 'report-typesetting-failed' });
  await mortal.close();
  await told;
  const made = await mortal.typeset(report, { paper: 'a4', photoFiles: pictures.files });
  expect(made.pages).toBe(pages);
  await mortal.close();
});

test('the template evaluates nothing that comes with the report', () => {
  const folder = join(import.meta.dirname, '../../../assets/report');
  const files = ['main', 'look', 'page', 'plate', 'tag', 'photo'].map((name) => `${name}.typ`);
  const sections = ['page-one', 'rows', 'summary', 'findings', 'readings', 'coverage', 'photo-index', 'identity'];
  for (const file of [...files, ...sections.map((name) => `sections/${name}.typ`)]) {
    expect(readFileSync(join(folder, file), 'utf8'), file).not.toMatch(/\beval\(/);
  }
});
