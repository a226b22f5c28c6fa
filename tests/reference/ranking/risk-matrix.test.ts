import { describe, expect, it } from 'vitest';
import { probabilities, probabilityWords } from '../../../shared-lib/judgement/probability.ts';
import { riskCell, safetyStanding } from '../../../shared-lib/judgement/risk-matrix.ts';
import { severities, severityWords } from '../../../shared-lib/judgement/severity.ts';
import type { Probability, Severity } from '../../../shared-lib/model/finding.ts';

/**
 * MIL-STD-882E (11 May 2012), Table III, Risk assessment matrix, all cells: two independent public copies agree on
 * every cell. Columns are the severity categories 1 to 4, rows the probability levels.
 */
const tableIII: readonly [Probability, string, string, string, string][] = [
  ['A', 'High', 'High', 'Serious', 'Medium'],
  ['B', 'High', 'High', 'Serious', 'Medium'],
  ['C', 'High', 'Serious', 'Medium', 'Low'],
  ['D', 'Serious', 'Medium', 'Medium', 'Low'],
  ['E', 'Medium', 'Medium', 'Medium', 'Low'],
  ['F', 'Eliminated', 'Eliminated', 'Eliminated', 'Eliminated'],
];

const cells = tableIII.flatMap(([probability, ...levels]) =>
  levels.map((level, index) => [(index + 1) as Severity, probability, level] as const),
);

describe('risk level by MIL-STD-882E Table III', () => {
  it.each(cells)('severity %i with probability %s is %s', (severity, probability, level) => {
    expect(riskCell(severity, probability)).toBe(level);
  });

  it('has the counts of the published table: 5 high, 4 serious, 8 medium, 3 low', () => {
    const live = cells.filter(([, probability]) => probability !== 'F').map(([s, p]) => riskCell(s, p));
    const count = (level: string) => live.filter((cell) => cell === level).length;
    expect([count('High'), count('Serious'), count('Medium'), count('Low')]).toEqual([5, 4, 8, 3]);
  });

  it('holds an eliminated hazard, and a finding without a safety side, as low, 4, D', () => {
    const none = { level: 'Low', severity: 4, probability: 'D' };
    expect(safetyStanding({ severity: 1, probability: 'F' })).toEqual(none);
    expect(safetyStanding('none')).toEqual(none);
    expect(safetyStanding(null)).toEqual(none);
  });
});

describe('the standard’s own words', () => {
  // MIL-STD-882E, Table I, severity categories.
  it.each([
    [1, 'Catastrophic'],
    [2, 'Critical'],
    [3, 'Marginal'],
    [4, 'Negligible'],
  ] as const)('severity %i is called %s', (severity, name) => {
    expect(severityWords(severity).name).toBe(name);
  });

  // MIL-STD-882E, Table II, probability levels.
  it.each([
    ['A', 'Frequent'],
    ['B', 'Probable'],
    ['C', 'Occasional'],
    ['D', 'Remote'],
    ['E', 'Improbable'],
    ['F', 'Eliminated'],
  ] as const)('probability %s is called %s', (probability, name) => {
    expect(probabilityWords(probability).name).toBe(name);
  });

  it('lists each once', () => {
    expect(severities).toHaveLength(4);
    expect(probabilities).toHaveLength(6);
  });
});
