import { execFileSync } from 'node:child_process';
import { createHash, randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { VisitRecord } from '../../../shared-lib/contract/visits.ts';
import { buildReport } from '../../../shared-lib/report/build.ts';
import type { Report, ReportSection } from '../../../shared-lib/report/model.ts';
import { addLoader, freshFolder, openTestRecorder } from '../../support/test-recorder.ts';

/**
 * What ISO/IEC 17020:2012 asks of an inspection report, element by element, each looked for in the report as data and in
 * the words that poppler reads from the sealed PDF.
 *
 * Wording of 7.4.2 a to g and 7.4.4: as quoted at https://norac.org.uk/forums/reply/4711/ (read 25 November 2026). 7.4.5 and
 * the optional elements of Annex B: from memory of the standard's list, order and letters not checked. This is a mapping, not
 * a claim of accreditation.
 */
interface Element {
  readonly clause: string;
  readonly name: string;
  readonly inReport: (report: Report) => boolean;
  readonly inPdf: RegExp;
}

const section = <K extends ReportSection['kind']>(report: Report, kind: K) =>
  report.sections.find((each): each is Extract<ReportSection, { kind: K }> => each.kind === kind);

const identity = (report: Report, label: string): string =>
  section(report, 'identity')
    ?.rows.filter((row) => row.label === label)
    .flatMap(({ paragraphs }) => paragraphs)
    .join(' ') ?? '';

const rowsUnder = (report: Report, heading: string) =>
  report.sections.find((each) => each.kind === 'rows' && each.heading === heading);

const disclaimer = (report: Report): string => section(report, 'identity')?.disclaimer.join(' ') ?? '';

const mandatory: readonly Element[] = [
  {
    clause: '7.4.2 a',
    name: 'identification of the issuing body',
    inReport: (report) => /Kiln Yard Repairs, Orrenby/.test(identity(report, 'By')),
    inPdf: /By Ada Quill, mechanic Kiln Yard Repairs, Orrenby, 01 23/,
  },
  {
    clause: '7.4.2 b',
    name: 'unique identification and date of issue',
    inReport: (report) => /^Report 1, revision 1, issued 11 May 2026/.test(identity(report, 'Report')),
    inPdf: /Report 1, revision 1, issued 11 May 2026/,
  },
  {
    clause: '7.4.2 c',
    name: 'date(s) of inspection',
    inReport: (report) => identity(report, 'Inspected').startsWith('12 May 2026'),
    inPdf: /Inspected 12 May 2026/,
  },
  {
    clause: '7.4.2 d',
    name: 'identification of the item(s) inspected',
    inReport: (report) => /serial TL-0001/.test(identity(report, 'Machine')) && identity(report, 'Hours') !== '',
    inPdf: /Machine test loader, serial TL-0001.* Hours 3.860.h/,
  },
  {
    clause: '7.4.2 e',
    name: 'signature or other indication of approval, by authorized personnel',
    inReport: (report) => /Approved and issued by Ada Quill/.test(identity(report, 'Approval')),
    inPdf: /Approval Approved and issued by Ada Quill, Kiln Yard Repairs/,
  },
  {
    clause: '7.4.2 f',
    name: 'a statement of conformity where applicable',
    inReport: (report) =>
      /only where a limit and its source are printed/.test(disclaimer(report)) &&
      section(report, 'readings')?.blocks.some(({ lines }) =>
        lines.some(({ verdict, limit, source }) => verdict === 'watch' && limit !== '' && source !== ''),
      ) === true,
    inPdf: /No other statement of conformity is made/,
  },
  {
    clause: '7.4.2 g',
    name: 'the inspection results',
    inReport: (report) =>
      section(report, 'findings')?.blocks.length === 1 && section(report, 'readings')?.blocks.length === 2,
    inPdf: /white crust in the passage/i,
  },
  {
    clause: '7.4.4',
    name: 'results supplied by subcontractors clearly identified',
    inReport: (report) =>
      /taken over from somebody else’s paper: play/.test(JSON.stringify(section(report, 'readings'))),
    inPdf: /Not measured here, taken over from somebody else’s paper: play/,
  },
];

const optional: readonly Element[] = [
  {
    clause: 'Annex B',
    name: 'designation of the document',
    inReport: (report) => report.title.startsWith('Condition report'),
    inPdf: /Condition report/,
  },
  {
    clause: 'Annex B',
    name: 'identification of the client',
    inReport: (report) => /Nils Aspen/.test(identity(report, 'Owner')),
    inPdf: /Owner Nils Aspen, owner/,
  },
  {
    clause: 'Annex B',
    name: 'description of the inspection work ordered',
    inReport: (report) =>
      /Asked for/.test(JSON.stringify(rowsUnder(report, 'What the owner said, and what was asked for'))),
    inPdf: /Asked for To look at: /,
  },
  {
    clause: 'Annex B',
    name: 'what has been omitted from the original scope of work',
    inReport: (report) =>
      section(report, 'coverage')?.items.some(
        ({ state, because }) => state === 'not examined' && because === 'No access.',
      ) === true,
    inPdf: /Not looked at Brakes: no access\./,
  },
  {
    clause: 'Annex B',
    name: 'identification or brief description of the methods used',
    inReport: (report) => (section(report, 'coverage')?.methods.length ?? 0) > 0,
    inPdf: /What these methods cannot show/,
  },
  {
    clause: 'Annex B',
    name: 'identification of equipment used for measuring or testing',
    inReport: (report) => /Taken with: Steel rule/i.test(JSON.stringify(section(report, 'readings'))),
    inPdf: /Taken with: steel rule.*last checked on 2 January 2026/i,
  },
  {
    clause: 'Annex B',
    name: 'environmental conditions during the inspection, if relevant',
    inReport: (report) =>
      /Altitude 900 m/i.test(JSON.stringify(rowsUnder(report, 'What the owner said, and what was asked for'))),
    inPdf: /Conditions Altitude 900 m/,
  },
  {
    clause: 'Annex B',
    name: 'a statement that the results relate exclusively to the items inspected',
    inReport: (report) => /covers only the parts and the methods it names/.test(disclaimer(report)),
    inPdf: /covers only the parts and the methods it names/,
  },
  {
    clause: 'Annex B',
    name: 'a statement that the report is not to be reproduced except in full',
    inReport: (report) => /to be passed on whole/.test(disclaimer(report)),
    inPdf: /This report is to be passed on whole/,
  },
  {
    clause: 'Annex B',
    name: 'name of the person who performed the inspection',
    inReport: (report) => /Ada Quill, mechanic/.test(identity(report, 'By')),
    inPdf: /Ada Quill, mechanic/,
  },
];

/** A report of a visit that has something for every element, as data and as the text of its sealed PDF. */
const issued = async () => {
  const { call, recorder } = openTestRecorder();
  const shop = await call('shop.change', { name: 'Kiln Yard Repairs', address: 'Orrenby', phone: '01 23' });
  const person = await call('person.add', { name: 'Ada Quill', trade: 'mechanic' });
  const { machineId } = await addLoader({ call });
  const meterId = (await call('machine.page', { id: machineId })).meters[0]?.id ?? null;
  const { visit } = await call('visit.open', {
    machineId,
    date: '2026-05-12',
    complaint: 'Uses water.',
    personId: person.id,
    meter: { meterId, typed: '3860', reading: 3860, estimate: false },
    conditions: { altitude: '900 m' },
    scope: [{ path: 'ENG' }, { path: 'STEER' }, { path: 'BRK', notExaminedBecause: 'no access' }],
  });
  const visitId = visit.id;
  const finding = await call('finding.add', {
    visitId,
    defect: 'scale',
    words: 'white crust in the passage',
    locations: ['ENG/HD.1'],
    state: 'suspected',
    methods: ['V'],
    safety: 'none',
    urgency: 3,
    runWorse: true,
    damageClass: 2,
  });
  const rule = await call('instrument.add', {
    visitId,
    name: 'steel rule',
    resolution: '0.5 mm',
    lastCheck: '2026-01-02',
  });
  const play = { visitId, sheet: 'MS-21', at: 'STEER/DRAG' } as const;
  await call('reading.fill', { ...play, inputs: { radius: '200 mm', arc: '64 mm' }, instrumentId: rule.id });
  await call('reading.fill', { ...play, takenOver: { play: '18.3 °' } });
  const record: VisitRecord = await call('visit.get', { id: visitId });
  const report = buildReport(
    {
      record,
      shop,
      people: [person],
      nowMs: Date.UTC(2026, 4, 11, 12),
      zoneOffsetMin: 0,
      programVersion: '0',
      issue: { number: 1, revision: 1, changes: [] },
    },
    (text) => createHash('sha256').update(text).digest('hex'),
  );
  const folder = freshFolder();
  const issue = async (name: string) => {
    const token = randomUUID();
    const path = join(folder, name);
    recorder.offer({ token, path, for: 'write' });
    await call('report.issue', { visitId, token });
    return { path, text: execFileSync('pdftotext', [path, '-'], { encoding: 'utf8' }).replace(/\s+/g, ' ') };
  };
  const first = await issue('first.pdf');
  const signed = execFileSync('pdfsig', ['-nocert', first.path], { encoding: 'utf8' });
  const next = await call('finding.supersede', { id: finding.id, because: 'it is sealant' });
  await call('finding.change', {
    id: next.id,
    defect: 'badrepair',
    words: 'sealant',
    safety: 'none',
    urgency: 5,
    runWorse: false,
    damageClass: 4,
  });
  const second = await issue('second.pdf');
  return { report, first: first.text, second: second.text, signed };
};

describe('an issued report has the elements of ISO/IEC 17020:2012, 7.4', () => {
  let made: Awaited<ReturnType<typeof issued>>;
  // The first of them, because what it opens is put away when it ends; the others look at what it made.
  it('is issued, and corrected once', async () => {
    made = await issued();
    expect(made.first).not.toContain('Draft');
  }, 120_000);

  it.each(mandatory)('$clause, mandatory: $name', ({ inReport, inPdf }) => {
    expect(inReport(made.report)).toBe(true);
    expect(made.first).toMatch(inPdf);
  });

  it.each(optional)('$clause, optional: $name', ({ inReport, inPdf }) => {
    expect(inReport(made.report)).toBe(true);
    expect(made.first).toMatch(inPdf);
  });

  it('7.4.2 e: the seal is a signature over the whole file, by an independent reader', () => {
    expect(made.signed).toContain('Signature is Valid');
    expect(made.signed).toContain('Total document signed');
  });

  it('7.4.5: a correction identifies the report that it replaces and what it changes', () => {
    expect(made.second).toContain('Report 1, revision 2');
    expect(made.second).toContain('It replaces revision 1.');
    expect(made.second).toContain('Changed since the revision before');
  });
});
