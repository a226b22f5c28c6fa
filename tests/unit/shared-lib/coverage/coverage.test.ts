import { describe, expect, it } from 'vitest';
import { coverage, coverItems } from '../../../../shared-lib/coverage/coverage.ts';
import type { Finding } from '../../../../shared-lib/model/finding.ts';
import type { Reading } from '../../../../shared-lib/model/reading.ts';
import type { ScopeItem } from '../../../../shared-lib/model/visit.ts';
import { aFinding } from '../../../support/ranking/a-finding.ts';

const item = (path: string, reasons: Partial<ScopeItem> = {}): ScopeItem => ({
  id: path,
  visitId: 'v1',
  path,
  position: 0,
  notExaminedBecause: null,
  notApplicableBecause: null,
  ...reasons,
});
const reading = (at: string, differs: Partial<Reading> = {}): Reading => ({
  id: at,
  visitId: 'v1',
  sheet: 'MS-22',
  sheetVersion: 0,
  at,
  inputs: {},
  conditions: {},
  remark: '',
  notTakenBecause: null,
  instrumentId: null,
  takenAtMs: 0,
  results: [],
  ...differs,
});
const state = (path: string, findings: Finding[], readings: Reading[] = [], reasons: Partial<ScopeItem> = {}) =>
  coverItems({ scope: [item(path, reasons)], findings, readings })[0]?.state;

describe('what counts as examined', () => {
  it('is a finding by some method, at the item or below it', () => {
    expect(state('BRK', [aFinding(1, { locations: ['BRK/LINING.L'] })])).toBe('examined');
    expect(state('BRK/LINING', [aFinding(1, { locations: ['BRK'] })])).toBe('not-examined');
  });

  it('is what was looked for and not found', () => {
    expect(state('ENG', [aFinding(1, { state: 'none-found' })])).toBe('examined');
  });

  it('is a reading that was taken', () => {
    expect(state('BRK', [], [reading('BRK/PARK')])).toBe('examined');
    expect(state('BRK', [], [reading('BRK/PARK', { notTakenBecause: 'no tool' })])).toBe('not-examined');
  });

  it('is not a suspicion on a part nobody opened, nor a line that says it was not examined', () => {
    expect(state('ENG', [aFinding(1, { state: 'suspected', methods: [] })])).toBe('not-examined');
    expect(state('ENG', [aFinding(1, { state: 'not-examined', methods: ['V'] })])).toBe('not-examined');
  });

  it('is not an observation, and nothing that lies in the bin', () => {
    expect(state('ENG', [aFinding(1, { kind: 'observation' })])).toBe('not-examined');
    expect(state('ENG', [aFinding(1, { binned: true })])).toBe('not-examined');
  });

  it('stands although a reason was written down before somebody looked', () => {
    expect(state('ENG', [aFinding(1)], [], { notExaminedBecause: 'no time' })).toBe('examined');
  });
});

it('counts each item once', () => {
  expect(
    coverage({
      scope: [
        item('ENG'),
        item('BRK', { notExaminedBecause: 'not authorised by owner' }),
        item('COOL', { notApplicableBecause: 'air-cooled' }),
        item('HYD'),
      ],
      findings: [aFinding(1)],
      readings: [],
    }),
  ).toEqual({ examined: 1, notExamined: 2, notApplicable: 1 });
});
