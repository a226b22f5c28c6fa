import { expect, test } from 'vitest';
import { reportGaps } from '../../../../shared-lib/report/gaps.ts';
import type { Report, ReportSection } from '../../../../shared-lib/report/model.ts';
import type { ReportSource } from '../../../../shared-lib/report/source.ts';
import {
  changedFindings,
  reportOf,
  restood,
  scenarioSource,
  sha256,
  withPhotos,
} from '../../../recorder/reports/sample.ts';

const scenarios = [
  's1-skid-steer-cracked-head.json',
  's2-row-crop-broken-jet.json',
  's3-dozer-blade-drops.json',
  's4-crane-sinking-jack.json',
  's5-irrigation-liner-pinhole.json',
  's6-backhoe-visit-and-return.json',
  's7-roller-brakes.json',
] as const;

const backhoe = (): ReportSource => scenarioSource('s6-backhoe-visit-and-return.json', 1);

function section<K extends ReportSection['kind']>(report: Report, kind: K): Extract<ReportSection, { kind: K }> {
  const found = report.sections.find((each) => each.kind === kind);
  if (!found) throw new Error(`no section ${kind}`);
  return found as Extract<ReportSection, { kind: K }>;
}

const textOf = ({ record: _, ...words }: Report): string => JSON.stringify(words);

// The order is the handbook's (10.1), without the parts that a draft does not have.
test('the sections stand in the order of the handbook', () => {
  const photo = { finding: 1, digest: sha256('a'), width: 1600, height: 1200 };
  const kinds = reportOf(withPhotos(backhoe(), [photo])).sections.map(({ kind }) => kind);
  expect(kinds).toEqual([
    'page-one',
    'cautions',
    'rows',
    'summary',
    'diagrams',
    'findings',
    'readings',
    'coverage',
    'photo-index',
    'identity',
  ]);
});

// Words a report never says: handbook 4.1 and 7.3.
test.each(scenarios)('%s: no fixed verdict on the machine, no code of the program', (file) => {
  const text = textOf(reportOf(scenarioSource(file)));
  expect(text).not.toMatch(/\b(safe|OK|good condition|no problems?|roadworthy|guaranteed?)\b/);
  expect(text).not.toMatch(/\b(T[0-4]|U[0-5]|D[1-4]|P\+|MS-\d\d|CAU-\d\d)\b/);
  expect(text).not.toMatch(/\b(ENG|HYD|FRM|STEER|BRK|ELEC|COOL|PROT|INST)\//);
});

test('the sentence on use names the worst findings and the limit', () => {
  const { statement, statementTags } = section(reportOf(backhoe()), 'page-one');
  expect(statement).toMatch(/^Do not operate this machine: raise or hold nothing with it\./);
  expect(statement).toContain('Left boom hose: leak');
  expect(statement).toContain('Right loader tower: crack 31');
  expect(statementTags.map(({ number }) => number)).toEqual([1, 3]);
});

test('a tag hung by the mechanic stops the machine whatever the tier', () => {
  const source = changedFindings(backhoe(), ({ number }) =>
    number === 4 ? { doNotOperate: true } : { safety: 'none', facts: [] },
  );
  const { statement, statementTags } = section(reportOf(source), 'page-one');
  expect(statement).toMatch(/^Do not operate this machine\. Temperature gauge/);
  expect(statementTags.map(({ number }) => number)).toEqual([4]);
});

test('what stops the engine is said beside what stops the machine', () => {
  const { statement } = section(reportOf(scenarioSource('s1-skid-steer-cracked-head.json')), 'page-one');
  expect(statement).toMatch(
    /^Do not operate this machine: .*Safety interlock: bypassed\. Do not run its engine either\./,
  );
  expect(statement).toContain('cylinder 3: crack 14');
});

test('brakes that do not hold: it is not to be driven', () => {
  const { statement } = section(reportOf(scenarioSource('s7-roller-brakes.json')), 'page-one');
  expect(statement).toContain('do not drive it');
});

test('with no finding nothing is called sound, and what was not looked at is named', () => {
  const source = backhoe();
  const none = restood({ ...source, record: { ...source.record, findings: [], proofs: [], readings: [], links: [] } });
  const report = reportOf(none);
  const { statement, items } = section(report, 'page-one');
  expect(items).toEqual([]);
  expect(statement).toContain('No finding is on record');
  expect(statement).toContain('nothing is known of them');
  expect(report.sections.map(({ kind }) => kind)).not.toContain('findings');
});

test('a limit is not ruled out while findings are not judged', () => {
  const unjudged = changedFindings(backhoe(), () => ({ safety: null, urgency: null, damageClass: null, facts: [] }));
  const { statement } = section(reportOf(unjudged), 'page-one');
  expect(statement).toContain('Whether it may be used is not said yet: five findings not judged.');
});

// Wording by state: handbook 7.3.
test('found, fits and not looked at are never mixed', () => {
  const source = changedFindings(backhoe(), ({ number }) =>
    number === 3
      ? { state: 'suspected', methods: ['V'] }
      : number === 2
        ? { state: 'not-examined', notExaminedBecause: 'The wheels were on.' }
        : {},
  );
  const photos = [1, 4].map((finding) => ({ finding, digest: sha256(`${finding}`), width: 1600, height: 1200 }));
  const { blocks } = section(reportOf(withPhotos(source, photos)), 'findings');
  const howSure = (number: number) =>
    blocks.find(({ tag }) => tag.number === number)?.rows.find(({ label }) => label === 'How sure')?.paragraphs[0];
  expect(howSure(1)).toBe('Found, seen and tried.');
  expect(howSure(3)).toBe('Fits, not proven; would be proven by penetrant, magnetic particle or pressure test.');
  expect(howSure(2)).toBe('Not looked at because: the wheels were on.');
});

// Handbook 4.1: no photo and no reading, so the tool shows it as suspected.
test('a confirmed finding that nothing shows is said to be unproven', () => {
  const source = backhoe();
  const report = reportOf(restood({ ...source, record: { ...source.record, proofs: [] } }));
  const [first] = section(report, 'findings').blocks;
  expect(first?.rows.find(({ label }) => label === 'How sure')?.paragraphs[0]).toContain('no photo and no reading');
});

test('the coverage line counts what was agreed', () => {
  const { line, items } = section(reportOf(backhoe()), 'coverage');
  expect(line).toBe('Of 6 agreed items: 5 examined, 1 not examined, 0 not applicable.');
  expect(items.find(({ item }) => item === 'Brakes')?.because).toBe('Not authorised by owner.');
});

test('limits stand with their source, and too close to tell is told', () => {
  const { blocks } = section(reportOf(scenarioSource('s1-skid-steer-cracked-head.json')), 'readings');
  const lines = blocks.flatMap(({ lines: own }) => own);
  for (const { limit, source } of lines) if (limit !== '') expect(source).not.toBe('');
  expect(lines.map(({ verdict }) => verdict)).toContain('too close to tell');
});

test('every judged number has its bar, and only what is beyond runs past its limit', () => {
  const judged = ['s1-skid-steer-cracked-head.json', 's7-roller-brakes.json'].flatMap((file) => {
    const { blocks, limitAt } = section(reportOf(scenarioSource(file)), 'readings');
    return blocks
      .flatMap(({ lines }) => lines)
      .filter(({ limit, value }) => limit !== '' && value !== '–')
      .map((line) => ({ ...line, limitAt }));
  });
  expect(judged.map(({ verdict }) => verdict)).toEqual(expect.arrayContaining(['beyond', 'within']));
  for (const { bars, verdict, value, limit, limitAt } of judged) {
    const isPast = bars.some(({ value }) => value.width > limitAt);
    if (verdict === 'beyond') expect(isPast).toBe(true);
    if (verdict === 'within') expect(isPast).toBe(false);
    expect(bars.length, `${value} against ${limit}`).toBeGreaterThan(0);
  }
});

test('what was looked for and not found says what the method can miss', () => {
  const { unranked } = section(reportOf(scenarioSource('s1-skid-steer-cracked-head.json')), 'summary');
  expect(unranked.map(({ certainty }) => certainty).join()).toContain('which can miss it');
});

test('a draft says so and has no number', () => {
  const report = reportOf(backhoe());
  expect(report.draftMark).toBe('Draft, not issued');
  expect(report.footLeft).toContain('No report number');
  expect(section(report, 'page-one').headLines[0]).toBe('Draft, not issued');
});

test('the foot carries the digest of the attached record', () => {
  const report = reportOf(backhoe());
  expect(report.footMiddle.replaceAll(' ', '')).toBe(`record${sha256(report.record.json).slice(0, 16)}`);
});

// RFC 8785: keys sorted by UTF-16 code units, no white space, and again the same bytes.
test('the record is canonical: sorted, compact, and the same when read and written again', () => {
  const { json } = reportOf(backhoe()).record;
  const sorted = (value: unknown): unknown =>
    Array.isArray(value)
      ? value.map(sorted)
      : value !== null && typeof value === 'object'
        ? Object.fromEntries(
            Object.entries(value)
              .sort(([a], [b]) => (a < b ? -1 : 1))
              .map(([k, v]) => [k, sorted(v)]),
          )
        : value;
  expect(JSON.stringify(sorted(JSON.parse(json)))).toBe(json);
});

test('a lone surrogate does not stop the record', () => {
  const source = changedFindings(backhoe(), () => ({ words: 'x\uD800y' }));
  expect(JSON.parse(reportOf(source).record.json).record.findings[0].words).toBe('x\uFFFDy');
});

test('the numbering scheme and the units are printed', () => {
  const { rows } = section(reportOf(backhoe()), 'identity');
  const text = JSON.stringify(rows);
  expect(text).toContain('counted from the fan end');
  expect(text).toContain('Metric units');
});

test('what is missing names the place where it is mended', () => {
  const source = changedFindings(backhoe(), ({ number }) => (number === 5 ? { urgency: null } : {}));
  const gaps = reportGaps(
    { ...source.record, visit: { ...source.record.visit, personId: null, complaint: '' } },
    { ...source.shop, phone: '' },
  );
  const fifth = source.record.findings.find(({ number }) => number === 5);
  expect(gaps.map(({ at }) => at.place)).toEqual(expect.arrayContaining(['shop', 'visit', 'finding']));
  expect(gaps.find(({ at }) => at.place === 'finding')).toMatchObject({
    what: expect.stringContaining('Finding 5'),
    at: { id: fifth?.id },
  });
});
