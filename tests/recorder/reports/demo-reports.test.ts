import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { Typesetter } from '../../../electron/recorder/reports/typeset.ts';
import type { Report, ReportSection } from '../../../shared-lib/report/model.ts';
import { openTestRecorder } from '../../support/test-recorder.ts';
import { textOfPages } from './poppler.ts';
import { reportOf } from './sample.ts';

const demo = join(import.meta.dirname, '../../../assets/demo');

/** The draft of one visit of a scenario file. */
async function draftOf(file: string, visit: string, folder = demo): Promise<Report> {
  const { recorder, call } = openTestRecorder();
  recorder.offer({ token: file, path: join(folder, file), for: 'read' });
  const { visits } = await call('scenario.apply', { token: file });
  const record = await call('visit.get', { id: visits[visit] ?? '' });
  const { shop, people } = await call('app.state', {});
  return reportOf({
    record,
    shop,
    people,
    nowMs: Date.UTC(2026, 5, 8, 14),
    zoneOffsetMin: 60,
    programVersion: '0.0.0',
  });
}

/** Without the photos: their frames are as large. */
async function linesOfPages(report: Report): Promise<string[][]> {
  const typesetter = new Typesetter();
  onTestFinished(() => typesetter.close());
  const { pdf } = await typesetter.typeset(report, { paper: 'a4', photoFiles: new Map() });
  return textOfPages(pdf).map((page) => page.split('\n').filter((line) => line.trim() !== ''));
}

function section<K extends ReportSection['kind']>({ sections }: Report, kind: K): Extract<ReportSection, { kind: K }> {
  const found = sections.find((each) => each.kind === kind);
  if (!found) throw new Error(`no section ${kind}`);
  return found as Extract<ReportSection, { kind: K }>;
}

const rowsUnder = ({ sections }: Report, heading: string) =>
  sections.flatMap((each) => (each.kind === 'rows' && each.heading === heading ? each.rows : []));

it('what was told of then and not found now is not told again', async () => {
  const report = await draftOf('1-loader-tractor.json', 'V3');
  const said = new Map(section(report, 'since').lines.map(({ tag, now }) => [tag.number, now[0]]));
  expect(said.get(2)).toBe('Looked for again: not found by measuring, which can miss it.');
  // Nobody had looked at the linings before.
  expect(said.get(6)).toBe('Looked for now: not found by measuring, which can miss it.');
  expect(said.get(4)).toBe('Told again in this report.');
});

it('a time that has come is said in a sentence', async () => {
  const probes = join(import.meta.dirname, '../../reference/scenarios');
  const { lines } = section(await draftOf('s0-rule-probes.json', 'V5', probes), 'since');
  const due = lines.flatMap(({ now }) => now).find((each) => each.startsWith('Due'));
  expect(due?.replaceAll('\u202f', ' ')).toBe('Due: it was likely to show at the next start, and 1 h has passed.');
});

it('a statement tells what was found in sentences of its own', async () => {
  const decided = rowsUnder(await draftOf('1-loader-tractor.json', 'V2'), 'What was decided');
  const steering = decided.find(({ label }) => label === 'Finding 2')?.paragraphs.join(' ');
  expect(steering).toContain(
    'I was told of finding 2, drag link: play 20.3°. Free play at the rim, more than in October.',
  );
});

it('after the work the report tells what is left, and warns of the work that is still to come alone', async () => {
  const report = await draftOf('1-loader-tractor.json', 'V2');
  const one = section(report, 'page-one');
  expect(one.statement.replaceAll('\u202f', ' ')).toBe(
    'Do not operate this machine: raise or hold nothing with it. Right loader tower: crack 36 mm.',
  );
  // The hose, finding 1, is new; the tower is at the welder's.
  expect(one.rows.find(({ label }) => label === 'I advise')?.paragraphs[0]).toMatch(/^3: tower off/);
  const watched = rowsUnder(report, 'What to watch').map(({ label }) => label);
  expect(watched).toEqual(['Finding 3', 'Finding 6', 'Finding 10']);
  const because = section(report, 'cautions').panels.map((panel) => panel.because);
  expect(because.join(' ')).toContain('welding: right loader tower');
  expect(because.join(' ')).not.toContain('opening the hydraulics');
  expect(because[0]).toBe('Because of finding 3 (not mended: the owner takes it to the welder himself).');
});

it('the cautions of the choice that was taken are those of what is still to come', async () => {
  const { recorder, call } = openTestRecorder();
  const file = '1-loader-tractor.json';
  recorder.offer({ token: file, path: join(demo, file), for: 'read' });
  const { visits } = await call('scenario.apply', { token: file });
  const { choices } = await call('choices.get', { visitId: visits.V2 ?? '' });
  const words = (name: string) =>
    choices.find((choice) => choice.name === name)?.cautions.map(({ text }) => text.slice(0, 22));
  // The new hose holds; the tower is still to be welded. The choice that was not taken stays the plan it was.
  expect(words('loader and steering, gauges later')).not.toContain('Fine jets pierce skin ');
  expect(words('loader and steering, gauges later')).toContain('Do not weld tanks, rim');
  expect(words('strap only')).toContain('Fine jets pierce skin ');
});

it('what is mended is said to be so in the list and at its finding', async () => {
  const report = await draftOf('1-loader-tractor.json', 'V2');
  const [hose, tower] = section(report, 'summary').lines;
  expect([hose?.tier, tower?.tier]).toEqual(['Mended in this visit. Was: do not operate', 'Do not operate']);
  const [first, second] = section(report, 'findings').blocks;
  expect([first?.tier, second?.tier]).toEqual(['Was: Do not operate', 'Do not operate']);
  expect(first?.rows.find(({ label }) => label === 'Since then')?.paragraphs[0]).toMatch(/^Mended in this visit/);
  expect(second?.rows.some(({ label }) => label === 'Since then')).toBe(false);
});

it('the demo shows work done and handed over', async () => {
  const report = await draftOf('1-loader-tractor.json', 'V2');
  const text = (heading: string) =>
    rowsUnder(report, heading).flatMap(({ label, paragraphs }) => [label, ...paragraphs]);
  const done = text('The work done').join(' ').replaceAll('\u202f', ' ');
  expect(done).toContain('Shown after the work by steering free play, drag link: play 6.0 ± 1°, within.');
  expect(done).not.toMatch(/± ?0(?![.\d])/);
  expect(done).toContain('Not done: the owner takes it to the welder himself.');
  expect(text('Hand-over')).toContain('When to come back');
  const later = section(await draftOf('1-loader-tractor.json', 'V3'), 'since').lines.map(({ tag, before }) => [
    tag.number,
    before,
  ]);
  expect(new Map(later as [number, string[]][]).get(1)).toContain('It was mended here.');
  // The owner's own words stand there once.
  expect(new Map(later as [number, string[]][]).get(3)).toContain(
    'It was accepted with a change: I take the tower to the welder myself.',
  );
});

it('what nobody has looked at has no time of its own to show', async () => {
  const watched = rowsUnder(await draftOf('2-lift-truck.json', 'V1'), 'What to watch');
  const [chain] = watched.find(({ label }) => label === 'Finding 10')?.paragraphs ?? [];
  expect(chain).toBe('Left lift chain: not examined for wear. Still to be looked at.');
});

it('an observation is told once in the list', async () => {
  const { unranked } = section(await draftOf('2-lift-truck.json', 'V1'), 'summary');
  expect(unranked.find(({ tag }) => tag.number === 11)).toMatchObject({
    title: 'Radiator, filler neck',
    place: '',
    action: 'White crust on the filler neck and down the tank.',
  });
});

it('a metric report has no gallons, and a sign keeps its letters', async () => {
  const { record: _, ...report } = await draftOf('2-lift-truck.json', 'V1');
  const text = JSON.stringify(report).replaceAll('\u202f', ' ');
  expect(text).not.toMatch(/\d (?:US )?gal\b/);
  expect(text).not.toContain('PH 6.8');
});

// Common practice of typesetters, no source.
it.each([
  ['2-lift-truck.json', 'V1'],
  ['1-loader-tractor.json', 'V2'],
])(
  '%s %s: no line ends between a number and its unit, and no page begins with what belongs to the one before',
  async (file, visit) => {
    const pages = await linesOfPages(await draftOf(file, visit));
    const parted = pages.flatMap((page) =>
      page.filter(
        (line, index) =>
          /(?:\d|mL\/)$/.test(line) && /^(?:mm|min|%|°C|kPa|mL|mm²)(?:[^\p{L}\d]|$)/u.test(page[index + 1] ?? ''),
      ),
    );
    expect(parted).toEqual([]);
    // Below the running head of two lines.
    for (const page of pages.slice(1)) expect(page[2]).not.toMatch(/^(?:Read|Conditions): |^Made with|^Compare left/);
  },
);

it('page one shows nearly all of a mark that stands high in its photo', async () => {
  const [, rod] = section(await draftOf('2-lift-truck.json', 'V1'), 'page-one').items;
  const { heightMm = 0, strokes = [] } = rod?.photo ?? {};
  const ys = strokes.flatMap(({ points }) => points.map(([, y]) => y));
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  const seen = Math.min(bottom, heightMm) - Math.max(top, 0);
  expect(seen / (bottom - top)).toBeGreaterThan(0.85);
});

it('page one tells one reason once, and the numbers before what was changed', async () => {
  const rowOf = (report: Report, label: string) =>
    section(report, 'page-one').rows.find((row) => row.label === label)?.paragraphs[0];
  expect(rowOf(await draftOf('3-pump-engine.json', 'V1'), 'Not looked at')).toBe(
    'Cylinder head 2, crankshaft, piston-cooling jets and engine lubrication: no reason given. And 2 more.',
  );
  expect(rowOf(await draftOf('1-loader-tractor.json', 'V2'), 'You decided')).toContain(
    'Accepted with a change: 3 (I take the tower to the welder myself). Declined: 4.',
  );
});
