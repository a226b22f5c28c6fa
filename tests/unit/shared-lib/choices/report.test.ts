import { expect, it } from 'vitest';
import { choicesOf } from '../../../../shared-lib/choices/choices-of.ts';
import type { Choice, Decision } from '../../../../shared-lib/choices/records.ts';
import { readBack, statementOnChoice, statementOnFinding } from '../../../../shared-lib/choices/statement.ts';
import { toldOf } from '../../../../shared-lib/choices/told.ts';
import type { ReportSource } from '../../../../shared-lib/report/source.ts';
import { reportOf, scenarioSource } from '../../../recorder/reports/sample.ts';

/** The crane's second choice of three is priced; the owner takes it and declines one finding. */
const decidedSource = (): ReportSource => {
  const source = scenarioSource('s2-row-crop-broken-jet.json');
  const { record } = source;
  const { standing } = record;
  const ids = standing.lines.map(({ findingId }) => findingId);
  const choice = (id: string, name: string, fixed: readonly string[]): Choice => ({
    id,
    name,
    conditions: 'block deck is flat',
    holdPoints: '',
    steps: [],
    costs: [
      { id: 'k1', kind: 'parts', words: 'liner kit', amount: '1', price: '412.50' },
      { id: 'k2', kind: 'labour', words: '', amount: '7.5', price: '68' },
    ],
    dispositions: fixed.map((findingId) => ({ findingId, is: 'fixed', after: null, why: '' })),
  });
  const taken = (about: Partial<Decision>, statement: string): Decision => ({
    id: JSON.stringify(about),
    findingId: null,
    choiceId: null,
    decision: 'accepted',
    completed: '',
    words: '',
    by: 'Ada Quill',
    capacity: 'owner',
    howTold: '',
    shownShotIds: [],
    statement,
    signature: null,
    unsignedBecause: 'told by phone',
    decidedAtMs: Date.UTC(2026, 5, 8, 14, 0),
    zoneOffsetMin: 60,
    personId: null,
    ...about,
  });
  const input = {
    input: { ...record, layout: record.layout.layout },
    standing,
    steps: [],
    money: { currency: 'EUR', taxPercent: '21' },
    date: record.visit.date,
    suspicions: [],
    choices: [choice('all', 'mend what was found', ids), choice('one', 'last one only', ids.slice(-1))],
    earlier: [],
  };
  const reader = { by: 'Ada Quill', capacity: 'owner', date: record.visit.date, photos: [4, 5], howTold: '' };
  const view = choicesOf({ ...input, decisions: [] }).choices.find(({ id }) => id === 'one');
  const finding = record.findings.find(({ id }) => id === ids[0]);
  if (view === undefined || finding === undefined) throw new Error('the case has no findings');
  const onChoice = statementOnChoice(view, standing, { currency: 'EUR', reader });
  const onFinding = statementOnFinding(finding, standing, reader);
  const choices = choicesOf({
    ...input,
    decisions: [
      { decision: taken({ choiceId: 'one' }, readBack(onChoice, 'accepted', '')), told: '{}' },
      {
        decision: taken(
          { findingId: finding.id, decision: 'deferred', completed: 'the harvest' },
          readBack(onFinding, 'deferred', 'the harvest'),
        ),
        told: toldOf(finding, standing.lines[0]?.tier ?? null),
      },
    ],
  });
  return { ...source, record: { ...record, choices } };
};

const rowsOf = (source: ReportSource) => {
  const report = reportOf(source);
  const pageOne = report.sections.find(({ kind }) => kind === 'page-one');
  if (pageOne?.kind !== 'page-one') throw new Error('no page one');
  const sections = report.sections.flatMap((section) => (section.kind === 'rows' ? [section] : []));
  return { report, pageOne: new Map(pageOne.rows.map((row) => [row.label, row.paragraphs])), sections };
};

it('a report without choices is silent of them', () => {
  const { pageOne, sections } = rowsOf(scenarioSource('s2-row-crop-broken-jet.json'));
  expect([...pageOne.keys()]).not.toContain('Choices');
  expect([...pageOne.keys()]).not.toContain('You decided');
  expect(sections.map(({ heading }) => heading)).not.toContain('The choices');
});

it('page one says what each choice costs and leaves, and what was decided', () => {
  const { pageOne } = rowsOf(decidedSource());
  // 412.50 + 7.5 × 68 = 922.50; with 21 % tax 1 116.225, rounded half up.
  const [most = '', least = ''] = pageOne.get('Choices') ?? [];
  expect(most).toMatch(/^“last one only” \(1\u202f116\.23\u00a0EUR\) leaves /);
  expect(least).toMatch(/“mend what was found”.*leaves nothing of what was found\.$/);
  const [decided, open] = pageOne.get('You decided') ?? [];
  expect(decided).toMatch(/“last one only” accepted\. Put off until the harvest: \d+\.$/);
  expect(open).toMatch(/^Nobody has decided on findings? \d/);
});

it('each choice stands with what it leaves, what will return, its condition and its lines of cost', () => {
  const { sections, report } = rowsOf(decidedSource());
  const choices = sections.find(({ heading }) => heading === 'The choices');
  const text = choices?.rows.map(({ label, paragraphs }) => `${label}\n${paragraphs.join('\n')}`).join('\n\n') ?? '';
  expect(text).toContain('last one only (taken)');
  expect(text).toMatch(/Leaves \d+, /);
  expect(text).toContain('will return: root left, finding');
  expect(text).toContain('On condition: block deck is flat.');
  expect(text).toContain('labour (7.5 × 68): 510.00\u00a0EUR');
  expect(JSON.stringify(report.sections)).not.toMatch(/\bsafe\b/);
});

it('each statement stands as it was read back, and why it is not signed', () => {
  const decided = rowsOf(decidedSource()).sections.find(({ heading }) => heading === 'What was decided');
  const text = decided?.rows.flatMap(({ paragraphs }) => paragraphs).join('\n') ?? '';
  expect(text).toContain('I, Ada Quill, owner, was shown photos 4 and 5 on ');
  expect(text).toContain('I choose to put it off until the harvest.');
  expect(text).toContain('Not signed: told by phone. Read back on 8 June 2026 15:00.');
  expect(decided?.intro).toMatch(/^Nobody has decided on findings /);
});
