import { describe, expect, it } from 'vitest';
import type { Evidence, Suspicion } from '../../../../shared-lib/choices/records.ts';
import type { VisitRecord } from '../../../../shared-lib/contract/visits.ts';
import type { Reading, Verdict } from '../../../../shared-lib/model/reading.ts';
import { sheets } from '../../../../shared-lib/sheets/index.ts';
import { historyOf } from '../../../../shared-lib/suspicions/history.ts';
import { countOfKind, type Narrowing, narrowed, wholeTable } from '../../../../shared-lib/suspicions/narrow.ts';
import { type NextTest, nextTests } from '../../../../shared-lib/suspicions/next-test.ts';
import { leftOpenBy, ownLimit } from '../../../../shared-lib/suspicions/own-limit.ts';
import { evidenceSources } from '../../../../shared-lib/suspicions/sources.ts';
import { suspicionTable } from '../../../../shared-lib/suspicions/table.ts';
import { whyNext } from '../../../../shared-lib/suspicions/why-next.ts';
import { aFinding, plainLayout } from '../../../support/ranking/a-finding.ts';

const reading = (id: string, sheet: string, verdict: Verdict, differs: Partial<Reading> = {}): Reading => ({
  id,
  visitId: 'v1',
  sheet,
  sheetVersion: 1,
  at: 'COOL/RAD/NECK',
  inputs: {},
  conditions: {},
  remark: '',
  notTakenBecause: null,
  instrumentId: null,
  takenAtMs: 1000,
  results: [{ of: 'x', value: '1', seen: null, limit: null, uncertainty: null, uncertaintyFrom: null, verdict }],
  ...differs,
});

const suspicion = (id: string, differs: Partial<Suspicion> = {}): Suspicion => ({
  id,
  what: id,
  at: null,
  defect: null,
  closedBecause: null,
  createdAtMs: 0,
  evidence: [],
  turns: [],
  ...differs,
});

const evidence = (id: string, differs: Partial<Evidence>): Evidence => ({
  id,
  findingId: null,
  readingId: null,
  bears: 'cannot tell',
  because: '',
  atMs: 2000,
  ...differs,
});

type Told = Pick<VisitRecord, 'findings' | 'readings' | 'layout' | 'choices'> & {
  readonly visit: { readonly complaint: string };
};

const visit = (
  suspicions: readonly Suspicion[],
  readings: readonly Reading[] = [],
  findings: Told['findings'] = [],
  complaint = '',
): Told => ({
  visit: { complaint },
  findings,
  readings,
  layout: { id: 'l1', machineId: 'm1', version: 1, layout: plainLayout },
  choices: {
    money: { currency: '', taxPercent: null },
    suspicions,
    steps: [],
    choices: [],
    decisions: [],
    undecided: [],
    carriedOver: [],
  },
});

const asSource = (each: Reading) => ({ kind: 'reading', id: each.id, atMs: 0, title: '', reading: each }) as const;

// Source: the handbook's MS-09: a leak closed when cold or at idle is the first of its false negatives.
describe('a gas test that found nothing', () => {
  it('does not rule out what opens hot, unless it was taken hot', () => {
    const cold = reading('r1', 'MS-09', 'not found by this test', { conditions: { coolant: '20 °C' } });
    expect(ownLimit(asSource(cold), 'cannot tell')).toBe(
      'does not rule out a crack or leak that closes when cold and opens hot',
    );
    expect(ownLimit(asSource(cold), 'against')).toMatch(/opens hot$/);
    const hot = reading('r2', 'MS-09', 'not found by this test', { conditions: { coolant: '88' } });
    expect(ownLimit(asSource(hot), 'cannot tell')).toBe('does not rule out a leak that opens only under load or boost');
    const edge = reading('r3', 'MS-09', 'not found by this test', { conditions: { coolant: '70' } });
    expect(leftOpenBy(edge).open).toHaveLength(3);
  });

  it('says of one that found gas that it does not say where', () => {
    expect(ownLimit(asSource(reading('r', 'MS-09', 'shown')), 'for')).toMatch(/^does not say where the gas gets in/);
  });
});

it('every sheet says what a good result leaves open and what a bad one does not say', () => {
  for (const { id, leavesOpen } of sheets) {
    expect(leavesOpen.passed.length, id).toBeGreaterThan(0);
    expect(leavesOpen.failed.length, id).toBeGreaterThan(0);
  }
});

it('a field that answers an open question is one of its own sheet', () => {
  for (const sheet of sheets) {
    for (const question of [...sheet.leavesOpen.passed, ...sheet.leavesOpen.failed]) {
      if (typeof question === 'string') continue;
      const field = { ...sheet.inputs, ...sheet.conditions }[question.unless.field];
      expect(field?.kind, `${sheet.id} ${question.unless.field}`).toBe('number');
    }
  }
});

it('void, too close and unlimited readings say why they settle nothing', () => {
  const limits = (['void', 'too close to tell', 'recorded only'] as const).map((verdict) =>
    ownLimit(asSource(reading('r', 'MS-10', verdict)), 'cannot tell'),
  );
  expect(limits).toEqual([
    'the conditions of the test were not met',
    'the reading lies closer to its limit than it can be off by',
    'there was no limit to hold it against',
  ]);
});

// Source: the handbook's 4.1: a negative by a weak method does not clear, and says which method.
it('what was looked for and not found says by what, and that this can miss it', () => {
  const finding = aFinding(5, { defect: 'crack', state: 'none-found', methods: ['MG'], locations: ['ENG/BLK/DECK.1'] });
  const source = { kind: 'finding', id: finding.id, atMs: 0, title: '', finding } as const;
  expect(ownLimit(source, 'against')).toBe('not found by magnifier, which can miss it');
});

it.each([
  ['confirmed', {}, ''],
  ['only suspected', { state: 'suspected' }, 'is itself only suspected'],
  ['seen or told', { kind: 'observation', defect: null }, 'seen or told, not measured: a clue, no proof'],
] as const)('a finding that is %s', (_how, differs, limit) => {
  const finding = aFinding(5, { defect: 'crack', ...differs });
  const source = { kind: 'finding', id: finding.id, atMs: 0, title: '', finding } as const;
  expect(ownLimit(source, 'against')).toBe(limit);
  expect(ownLimit(source, 'for')).toBe(limit);
});

it('what can speak: readings that were taken and findings that were looked at, in the order they came', () => {
  const record = visit(
    [],
    [
      reading('late', 'MS-09', 'shown', { takenAtMs: 3000 }),
      reading('void', 'MS-09', 'void', { takenAtMs: 1000 }),
      reading('not', 'MS-09', 'not taken', { takenAtMs: 1500 }),
      reading('no gauge', 'MS-09', 'recorded only', { takenAtMs: 1500, notTakenBecause: 'no gauge' }),
    ],
    [
      aFinding(1, { createdAtMs: 2000 }),
      aFinding(2, { createdAtMs: 2000, state: 'not-examined' }),
      aFinding(3, { createdAtMs: 500, kind: 'observation', defect: null, words: 'steam' }),
    ],
  );
  expect(evidenceSources(record).map(({ id, kind }) => [id, kind])).toEqual([
    ['f3', 'observation'],
    ['void', 'reading'],
    ['f1', 'finding'],
    ['late', 'reading'],
  ]);
});

it('what was replaced keeps one line, however many suspicions it spoke of', () => {
  const both = ['a', 'b'].map((id) => suspicion(id, { evidence: [evidence(`e${id}`, { findingId: 'f1' })] }));
  const record = visit(both, [], [aFinding(1), aFinding(2, { supersedes: 'f1' })]);
  expect(suspicionTable(record).sources.map(({ id }) => id)).toEqual(['f1', 'f2']);
});

it('the last word on each counts; what was said before stays in the cell and in the history', () => {
  const gas = reading('r1', 'MS-09', 'not found by this test');
  const turned = suspicion('crack', {
    evidence: [
      evidence('e1', { readingId: 'r1', bears: 'against', atMs: 2000 }),
      evidence('e2', { readingId: 'r1', bears: 'cannot tell', because: 'It was cold.', atMs: 3000 }),
    ],
    closedBecause: null,
    turns: [
      { id: 't1', turn: 'given-up', findingId: null, because: 'gas test', atMs: 2500 },
      { id: 't2', turn: 'taken-up', findingId: null, because: 'still loses coolant', atMs: 3500 },
    ],
  });
  const record = visit([turned], [gas]);
  const [column] = suspicionTable(record).columns;
  expect(column?.state).toBe('open');
  expect(column?.counts).toEqual({ for: 0, against: 0, 'cannot tell': 1 });
  expect(column?.cells.get('r1')).toMatchObject({ bears: 'cannot tell', because: 'It was cold.' });
  expect(column?.cells.get('r1')?.earlier.map(({ bears }) => bears)).toEqual(['against']);
  expect(historyOf(turned, record).map(({ words, reverses }) => [words, reverses])).toEqual([
    ['suspected', false],
    ['against: combustion gas in the coolant, radiator, filler neck', false],
    ['given up (gas test)', true],
    ['cannot tell, no longer against: combustion gas in the coolant, radiator, filler neck (it was cold)', true],
    ['taken up again (still loses coolant)', true],
  ]);
});

it('what was superseded still stands in the row where it spoke; what was not examined cannot speak', () => {
  const first = aFinding(1);
  const second = aFinding(2, { supersedes: 'f1' });
  const unseen = aFinding(3, { state: 'not-examined' });
  const held = suspicion('s', { evidence: [evidence('e', { findingId: 'f1' })] });
  const { sources } = suspicionTable(visit([held], [], [first, second, unseen]));
  expect(sources.map(({ id }) => id)).toEqual(['f1', 'f2']);
});

describe('what to test next', () => {
  // Source: the handbook's table 4.1a, row of the tight crack: penetrant and magnetic particle good, pressure test,
  // gas test and cylinder leakage in part, compression not at all.
  it('offers what the published table says can show a crack, and not what cannot', () => {
    const crack = suspicion('crack', { at: 'ENG/HD.1', defect: 'crack' });
    const names = nextTests(visit([crack])).map(({ name }) => name);
    expect(names).toEqual(['Combustion gas in the coolant', 'Cylinder leakage', 'Penetrant', 'Magnetic particle']);
  });

  // Source: the same table: cylinder leakage is good for a gasket and partial for a crack, compression partial and nothing.
  it('puts first what tells two open suspicions apart, as the machine stands', () => {
    const crack = suspicion('crack', { at: 'ENG/HD.1', defect: 'crack' });
    const gasket = suspicion('gasket', { at: 'ENG/HG', defect: 'combgas' });
    const [first, second] = nextTests(visit([crack, gasket]));
    expect([first?.name, second?.name]).toEqual(['Cylinder leakage', 'Compression']);
    expect(first?.shows).toEqual([
      { suspicionId: 'crack', power: 'partial', because: { by: 'kind', said: 'crack' } },
      { suspicionId: 'gasket', power: 'good', because: { by: 'kind', said: 'combustion gas in coolant' } },
    ]);
    const order = nextTests(visit([crack, gasket])).map(({ isOpened }) => isOpened);
    expect(order).toEqual(order.toSorted());
  });

  // Source: the handbook's MS-09: with coolant lost one negative never closes the suspicion; it is repeated hot.
  it('offers a test again that was taken cold, and not one that was taken hot', () => {
    const crack = suspicion('crack', { at: 'ENG/HD.1', defect: 'crack' });
    const taken = (coolant: string) => reading('r1', 'MS-09', 'not found by this test', { conditions: { coolant } });
    const [again] = nextTests(visit([crack], [taken('20 °C')]));
    expect(again).toMatchObject({
      name: 'Combustion gas in the coolant',
      again: 'with coolant temperature 70 °C or more',
    });
    expect(nextTests(visit([crack], [taken('85 °C')])).map(({ name }) => name)).not.toContain(
      'Combustion gas in the coolant',
    );
  });

  // Source: the handbook's case S3: a blade that drops is asked of the cylinder's drift, then of pressure and flow.
  it('reads the words of a suspicion whose kind is not said, and says that it did', () => {
    const valve = suspicion('valve', { what: 'control valve lets the blade sink', at: 'HYD/DCV' });
    const record = visit([valve]);
    const [first] = nextTests(record);
    expect(first?.name).toBe('Hydraulic cylinder drift');
    expect(whyNext(first as NextTest, [valve])).toBe(
      'may show, and can miss, “control valve lets the blade sink” (its words say: sinks or drops under load)',
    );
  });

  it('a kind that the words name is gone by as one that is said', () => {
    const read = suspicion('s', { what: 'cracked head', at: 'ENG/HD.1' });
    const said = suspicion('s', { what: 'cracked head', at: 'ENG/HD.1', defect: 'crack' });
    const names = (each: Suspicion) => nextTests(visit([each])).map(({ name }) => name);
    expect(names(read)).toEqual(names(said));
    // The table says that compression cannot show a crack; the complaint does not change that.
    const smoke = nextTests(visit([read], [], [], 'White smoke when cold.'));
    expect(smoke.map(({ name }) => name)).not.toContain('Compression');
  });

  // Source: the handbook's 1.2 and MS-01 to MS-04: a slow crank is asked of the battery first, then cranking, then the cable.
  it('goes by the complaint where neither kind nor words say anything, and stays in the system that is meant', () => {
    const strap = suspicion('s', { what: 'something in the cables', at: 'ELEC/GND.1' });
    const told = nextTests(visit([strap], [], [], 'Slow to crank. The wheel has slack in it.'));
    expect(told.map(({ name }) => name)).toEqual([
      'Battery at rest',
      'Cranking',
      'Voltage drop of a cable',
      'Battery under load',
    ]);
    expect(told[0]?.shows).toEqual([
      { suspicionId: 's', power: 'partial', because: { by: 'complaint', said: 'turns over slowly' } },
    ]);
  });

  it('a place alone comes last, and says that it is all there is to go by', () => {
    const cooler = suspicion('a', { what: 'that thing again', at: 'COOL/CAP' });
    const crack = suspicion('b', { what: 'b', at: 'ENG/HD.1', defect: 'crack' });
    const [alone] = nextTests(visit([cooler]));
    expect(whyNext(alone as NextTest, [cooler])).toMatch(
      /^may say something of .*of what kind it would be is not said/,
    );
    const both = nextTests(visit([cooler, crack]));
    expect(both.map(({ shows }) => shows.some(({ because }) => because?.by === 'kind'))).toEqual([
      true,
      true,
      true,
      true,
    ]);
  });

  it('does not offer what was tested since, and does offer it for the other of two like parts', () => {
    const right = suspicion('r', { what: 'right piston lets the blade sink', at: 'HYD/CYL.blade.R' });
    const drift = (at: string) => reading('r1', 'MS-20', 'within', { at });
    const names = (readings: readonly Reading[]) => nextTests(visit([right], readings)).map(({ name }) => name);
    expect(names([])).toContain('Hydraulic cylinder drift');
    expect(names([drift('HYD/CYL.blade.R')])).not.toContain('Hydraulic cylinder drift');
    expect(names([drift('HYD/CYL.blade.L')])).toContain('Hydraulic cylinder drift');
    expect(names([reading('r1', 'MS-20', 'void', { at: 'HYD/CYL.blade.R' })])).toContain('Hydraulic cylinder drift');
    const looked = aFinding(4, { defect: 'crack', state: 'none-found', methods: ['PT'], locations: ['ENG/HD.1'] });
    const head = suspicion('h', { what: 'cracked head', at: 'ENG/HD.1' });
    expect(nextTests(visit([head], [], [looked])).map(({ name }) => name)).not.toContain('Penetrant');
  });

  it('is silent of what is given up or found', () => {
    const given = suspicion('a', { at: 'ENG/HD.1', defect: 'crack', closedBecause: 'hose' });
    const found = suspicion('b', {
      at: 'ENG/HD.1',
      defect: 'crack',
      turns: [{ id: 't', turn: 'found', findingId: 'f1', because: '', atMs: 1 }],
    });
    expect(nextTests(visit([given, found]))).toEqual([]);
  });
});

describe('a long table', () => {
  const gas = reading('r1', 'MS-09', 'not found by this test');
  const hold = reading('r2', 'MS-07', 'beyond', { takenAtMs: 2000 });
  const wet = aFinding(1, { defect: 'sealleak', locations: ['COOL/HOSE.upper'] });
  const drive = aFinding(2, { kind: 'observation', defect: null, words: 'No smoke on the hill' });
  const crack = suspicion('crack', {
    evidence: [
      evidence('e1', { readingId: 'r1', bears: 'against' }),
      evidence('e2', { readingId: 'r1', bears: 'cannot tell', because: 'taken cold', atMs: 3000 }),
      evidence('e3', { findingId: 'f1', bears: 'for' }),
    ],
  });
  const hose = suspicion('hose', { evidence: [evidence('e4', { readingId: 'r2', bears: 'for' })] });
  const table = suspicionTable(visit([crack, hose], [gas, hold], [wet, drive]));
  const idsOf = (differs: Partial<Narrowing>) => narrowed(table, { ...wholeTable, ...differs }).map(({ id }) => id);

  it.each([
    ['all of it', {}, ['f1', 'f2', 'r1', 'r2']],
    ['what was read', { kind: 'reading' }, ['r1', 'r2']],
    ['what was found', { kind: 'finding' }, ['f1']],
    ['what was seen or told', { kind: 'observation' }, ['f2']],
    ['what is held against nothing yet', { kind: 'not-held' }, ['f2']],
    ['what was turned round', { kind: 'turned' }, ['r1']],
    ['what bears on one suspicion', { bearsOn: 'crack' }, ['f1', 'r1']],
    ['words of the line, as they begin, in any order', { words: 'hill SMO' }, ['f2']],
    ['the reason in a cell', { words: 'taken cold' }, ['r1']],
    ['how it came out', { words: 'beyond' }, ['r2']],
    ['both at once', { kind: 'reading', bearsOn: 'hose' }, ['r2']],
    ['nothing of the kind', { words: 'constructor' }, []],
  ] satisfies [string, Partial<Narrowing>, string[]][])('is narrowed to %s', (_name, differs, ids) => {
    expect(idsOf(differs)).toEqual(ids);
  });

  it('every line is of one of the three kinds', () => {
    const counts = (['reading', 'finding', 'observation'] as const).map((kind) => countOfKind(table, kind));
    expect(counts.reduce((sum, count) => sum + count)).toBe(countOfKind(table, 'all'));
  });
});
