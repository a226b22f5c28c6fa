import { describe, expect, it } from 'vitest';
import { stepsToCome } from '../../../../shared-lib/cautions/after-work.ts';
import { cautionsFor, cautionsForFinding } from '../../../../shared-lib/cautions/cautions-for.ts';
import { cautions } from '../../../../shared-lib/cautions/index.ts';
import { speakRemains } from '../../../../shared-lib/cautions/speak-because.ts';
import type { LeftLine } from '../../../../shared-lib/contract/choices.ts';
import type { Finding } from '../../../../shared-lib/model/finding.ts';
import type { Reading, Verdict } from '../../../../shared-lib/model/reading.ts';
import type { WorkOnRecord } from '../../../../shared-lib/work/after-work.ts';
import type { WorkItem } from '../../../../shared-lib/work/records.ts';
import { aFinding, plainLayout } from '../../../support/ranking/a-finding.ts';

const hose = aFinding(1, { defect: 'hosecover', locations: ['HYD/HOSE.boom.L'] });
const brake = aFinding(2, { defect: 'lowout', locations: ['BRK/DISC.L'] });

const item = (finding: Finding, differs: Partial<WorkItem> = {}): WorkItem => ({
  id: `work on ${finding.id}`,
  visitId: 'v1',
  findingId: finding.id,
  words: '',
  outcome: 'done',
  because: '',
  writtenAtMs: 5000,
  parts: [],
  proofs: [],
  ...differs,
});

const leftLine = ({ id, number, state }: Finding): LeftLine => ({
  findingId: id,
  number,
  state,
  tier: 0,
  title: '',
  level: 'High',
});

const brakeTest = (id: string, verdict: Verdict, takenAtMs: number): Reading => ({
  id,
  visitId: 'v1',
  sheet: 'MS-22',
  sheetVersion: 1,
  at: 'BRK',
  inputs: {},
  conditions: {},
  remark: '',
  notTakenBecause: null,
  instrumentId: null,
  takenAtMs,
  results: [{ of: 'x', value: '1', seen: null, limit: null, uncertainty: null, uncertaintyFrom: null, verdict }],
});

interface Done {
  readonly items: readonly WorkItem[];
  readonly left?: readonly Finding[];
  readonly readings?: readonly Reading[];
  readonly proofs?: WorkOnRecord['proofs'];
}

const done = ({ items, left = [], readings = [], proofs = [] }: Done): WorkOnRecord => ({
  work: {
    items,
    handOver: null,
    planned: [],
    unproven: [],
    left: left.map(leftLine),
    doNotOperateLeft: [],
    willReturn: [],
  },
  readings,
  proofs,
});

const inReport = (findings: readonly Finding[], record: WorkOnRecord | null) =>
  cautionsFor({ layout: plainLayout, findings, readings: record?.readings ?? [], done: record }, 'report').map(
    ({ caution, because }) => [
      caution.id,
      ...because.map((call) =>
        call.by === 'finding' ? (call.worked === undefined ? 'as found' : speakRemains(call.worked)) : call.by,
      ),
    ],
  );

describe('after the work on a finding', () => {
  it('its cautions go once it is mended, on its card as in the report', () => {
    expect(inReport([hose], null)).toEqual([
      ['CAU-01', 'as found'],
      ['CAU-02', 'as found'],
    ]);
    const mended = done({ items: [item(hose)] });
    expect(inReport([hose], mended)).toEqual([]);
    expect(cautionsForFinding(hose, plainLayout, mended)).toEqual([]);
  });

  it.each([
    ['partly', 'the clamp is missing.', 'mended in part: the clamp is missing'],
    ['partly', '', 'mended in part'],
    ['not-done', 'the hose did not come', 'not mended: the hose did not come'],
  ] as const)('they stay where the work is %s, and say what remains', (outcome, because, words) => {
    const record = done({ items: [item(hose, { outcome, because })], left: [hose] });
    expect(inReport([hose], record)).toEqual([
      ['CAU-01', words],
      ['CAU-02', words],
    ]);
    expect(cautionsForFinding(hose, plainLayout, record).map(({ caution }) => caution.id)).toEqual([
      'CAU-01',
      'CAU-02',
    ]);
  });

  it('they stay where it was only made safe: it is still there', () => {
    expect(inReport([hose], done({ items: [item(hose)], left: [hose] }))).toContainEqual([
      'CAU-01',
      'made safe, not mended',
    ]);
  });

  it('those of what nobody worked on stay as they were', () => {
    const other = aFinding(3, { defect: 'inop', locations: ['INST/OILP'] });
    expect(inReport([hose, other], done({ items: [item(hose)], left: [other] }))).toEqual([['CAU-31', 'as found']]);
  });
});

// The text of these cautions asks for a test after the repair: the handbook's 15, 16, 20 and 22.
describe('a caution that speaks until a test', () => {
  const shown = { id: 'p', readingId: null, shotId: 'shot-1' };

  it('is one of those whose text asks for it, and no other', () => {
    const untilTested = cautions.filter((each) => each.untilTested === true).map(({ id }) => id);
    expect(untilTested.sort()).toEqual(['CAU-15', 'CAU-16', 'CAU-20', 'CAU-22']);
  });

  it('stays on a mended finding until something shows that it holds', () => {
    expect(inReport([brake], done({ items: [item(brake)] }))).toContainEqual([
      'CAU-15',
      'mended, and not tested after the work',
    ]);
    expect(inReport([brake], done({ items: [item(brake, { proofs: [shown] })] }))).toEqual([]);
  });

  it.each([
    ['within', []],
    ['beyond', [['CAU-15', 'mended, and not tested after the work', 'sheet']]],
    ['not taken', [['CAU-15', 'mended, and not tested after the work']]],
  ] as const)('a test that came out %s', (verdict, left) => {
    const after = brakeTest('r2', verdict, 6000);
    const proofs = [{ id: 'p', readingId: after.id, shotId: null }];
    expect(inReport([brake], done({ items: [item(brake, { proofs })], readings: [after] }))).toEqual(left);
  });
});

describe('a reading that called', () => {
  const before = brakeTest('r1', 'beyond', 1000);
  const showed = [{ id: 'p1', findingId: brake.id, shotId: null, readingId: before.id }];

  it('is over with the finding that it shows', () => {
    const tested = { id: 'p', readingId: null, shotId: 'shot-1' };
    const items = [item(brake, { proofs: [tested] })];
    expect(inReport([brake], done({ items, readings: [before], proofs: showed }))).toEqual([]);
    const partly = [item(brake, { outcome: 'partly', proofs: [tested] })];
    expect(inReport([brake], done({ items: partly, left: [brake], readings: [before], proofs: showed }))).toEqual([
      ['CAU-15', 'mended in part', 'sheet'],
    ]);
  });

  it('is not over by a test that is older, at another part, or of another sheet', () => {
    const standsWith = (test: Reading) => {
      const items = [item(hose, { proofs: [{ id: 'p', readingId: test.id, shotId: null }] })];
      return inReport([], done({ items, readings: [before, test] })).flatMap(([id, ...because]) =>
        because.map((by) => `${id} ${by}`),
      );
    };
    expect(standsWith(brakeTest('r2', 'within', 6000))).toEqual([]);
    expect(standsWith(brakeTest('r2', 'within', 999))).toEqual(['CAU-15 sheet']);
    expect(standsWith({ ...brakeTest('r2', 'within', 6000), at: 'BRK/PARK' })).toEqual(['CAU-15 sheet']);
    expect(standsWith({ ...brakeTest('r2', 'within', 6000), sheet: 'MS-31' })).toEqual(['CAU-15 sheet']);
  });

  it('is not over by a later one that is no test of the work', () => {
    const later = brakeTest('r2', 'within', 6000);
    expect(inReport([], done({ items: [item(hose)], readings: [before, later] }))).toEqual([['CAU-15', 'sheet']]);
  });

  it('that is itself one of the tests after the work speaks for itself, among others too', () => {
    const after = brakeTest('r2', 'beyond', 6000);
    const proofs = [
      { id: 'p', readingId: after.id, shotId: null },
      { id: 'q', readingId: null, shotId: 'shot-1' },
    ];
    const showsIt = [{ id: 'p1', findingId: brake.id, shotId: null, readingId: after.id }];
    expect(
      inReport([brake], done({ items: [item(brake, { proofs })], readings: [after], proofs: showsIt })),
    ).toContainEqual(expect.arrayContaining(['CAU-15', 'sheet']));
  });

  it('is over only with everything that it shows', () => {
    const tested = { id: 'p', readingId: null, shotId: 'shot-1' };
    const items = [item(brake, { proofs: [tested] })];
    const both = [...showed, { id: 'p2', findingId: hose.id, shotId: null, readingId: before.id }];
    expect(inReport([brake], done({ items, readings: [before], proofs: both }))).toEqual([['CAU-15', 'sheet']]);
  });

  it('is over once the same sheet is the test after the work; one that shows nothing is asked for again', () => {
    const after = brakeTest('r2', 'within', 6000);
    const items = [item(brake, { proofs: [{ id: 'p', readingId: after.id, shotId: null }] })];
    expect(inReport([brake], done({ items, readings: [before, after] }))).toEqual([]);
    expect(inReport([brake], done({ items: [item(hose)], readings: [before] }))).toContainEqual([
      'CAU-15',
      'as found',
      'sheet',
    ]);
  });
});

describe('the work of a choice that is still to come', () => {
  const steps = [
    { step: 'open-hydraulic', at: 'HYD/HOSE.boom.L' },
    { step: 'run', at: null },
    { step: 'clean', at: 'BRK' },
  ] as const;
  const workWith = (items: readonly WorkItem[], planned: readonly Finding[] = []) => ({
    items,
    handOver: null,
    planned: planned.map(({ id }) => ({ findingId: id, is: 'fixed' as const })),
    unproven: [],
    left: [],
    doNotOperateLeft: [],
    willReturn: [],
  });
  const kinds = (items: readonly WorkItem[], planned: readonly Finding[] = []) =>
    stepsToCome(steps, workWith(items, planned), [hose, brake]).map(({ step }) => step);

  it('is all of it before any work', () => {
    expect(kinds([])).toEqual(['open-hydraulic', 'run', 'clean']);
  });

  it('is not what lies where all is done', () => {
    expect(kinds([item(hose)], [brake])).toEqual(['run', 'clean']);
    expect(kinds([item(hose), item(brake, { outcome: 'not-done' })])).toEqual(['run', 'clean']);
  });

  it('is what lies where something is left to do', () => {
    const second = aFinding(3, { defect: 'wear', locations: ['BRK/LINING.L'] });
    const toCome = stepsToCome(steps, workWith([item(brake)], [second]), [hose, brake, second]);
    expect(toCome.map(({ step }) => step)).toEqual(['open-hydraulic', 'run', 'clean']);
  });

  it('is none once all is done', () => {
    expect(kinds([item(hose), item(brake)])).toEqual([]);
  });
});
