import type { RiskLevel } from '../contract/standing.ts';
import type { Probability, Safety, Severity } from '../model/finding.ts';

/** A cell of the matrix: a level, or eliminated where the hazard is physically gone. */
export type MatrixCell = RiskLevel | 'Eliminated';

/**
 * Risk level by severity (columns 1 to 4) and probability (rows A to F).
 * Source: MIL-STD-882E (11 May 2012), Table III; level F (eliminated) belongs to all categories alike.
 */
const matrix: Readonly<Record<Probability, readonly [MatrixCell, MatrixCell, MatrixCell, MatrixCell]>> = {
  A: ['High', 'High', 'Serious', 'Medium'],
  B: ['High', 'High', 'Serious', 'Medium'],
  C: ['High', 'Serious', 'Medium', 'Low'],
  D: ['Serious', 'Medium', 'Medium', 'Low'],
  E: ['Medium', 'Medium', 'Medium', 'Low'],
  F: ['Eliminated', 'Eliminated', 'Eliminated', 'Eliminated'],
};

const columns: Readonly<Record<Severity, 0 | 1 | 2 | 3>> = { 1: 0, 2: 1, 3: 2, 4: 3 };

/** The published cell, as the standard prints it. */
export function riskCell(severity: Severity, probability: Probability): MatrixCell {
  return matrix[probability][columns[severity]];
}

/** Most serious first. */
export const riskLevels: readonly RiskLevel[] = ['High', 'Serious', 'Medium', 'Low'];

/** What the order counts with: a finding without a safety side, or with an eliminated hazard, stands as low, 4, D. */
export interface SafetyStanding {
  readonly level: RiskLevel;
  readonly severity: Severity;
  readonly probability: Probability;
}

/** `none` and null (judged to have none, and not judged yet) count alike here; what is missing is told elsewhere. */
export function safetyStanding(safety: Safety | 'none' | null): SafetyStanding {
  const noSafetySide: SafetyStanding = { level: 'Low', severity: 4, probability: 'D' };
  if (safety === null || safety === 'none') return noSafetySide;
  const cell = riskCell(safety.severity, safety.probability);
  return cell === 'Eliminated' ? noSafetySide : { level: cell, ...safety };
}
