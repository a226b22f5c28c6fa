import { defectOf } from '../defects/index.ts';
import { methodOf } from '../methods/index.ts';
import type { Finding, FindingProof } from '../model/finding.ts';
import { listed } from '../wording/listed.ts';
import { honestState } from './honest-state.ts';

/** What still stops a condition from being a finished finding, in words; empty when nothing does. */
export function missingOf(finding: Finding, proofs: readonly FindingProof[]): string[] {
  if (finding.kind !== 'condition') return [];
  const doubts = honestState(finding, proofs)?.doubts ?? [];
  const defect = defectOf(finding.defect);
  const missing: string[] = [];
  if (defect === null) missing.push('what it is');
  if (finding.locations.length === 0) missing.push('where it is');
  if (doubts.includes('nothing-shows-it')) missing.push('a photo or a reading; until then it counts as suspected');
  if (doubts.includes('no-able-method') && defect !== null) {
    const able = listed(
      defect.confirmedBy.map((method) => methodOf(method).by),
      'or',
    );
    missing.push(`a look ${able}; until then it counts as suspected`);
  }
  if (finding.state === 'none-found') {
    if (finding.methods.length === 0) missing.push('how it was looked for');
    return missing;
  }
  if (finding.state === 'not-examined' && (finding.notExaminedBecause?.trim() ?? '') === '') {
    missing.push('why it was not examined');
  }
  if (finding.safety === null) missing.push('whether it can hurt somebody: not judged yet');
  if (finding.urgency === null) missing.push('how soon it matters: not judged yet');
  if (finding.runWorse === null) missing.push('whether running makes it worse: not judged yet');
  if (finding.damageClass === null) missing.push('what waiting can cost: not judged yet');
  return missing;
}
