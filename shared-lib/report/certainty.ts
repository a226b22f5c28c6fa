import { defectOf } from '../defects/index.ts';
import { methodOf } from '../methods/index.ts';
import type { FindingState } from '../model/finding.ts';
import { listed } from '../wording/listed.ts';
import { methodDeeds } from '../wording/report.ts';
import type { RankedFinding } from './context.ts';
import { asPart } from './sentence.ts';

/** What would prove a suspicion: the methods that can confirm its defect and have not been used. */
function wouldBeProvenBy({ finding }: RankedFinding): string {
  const able = defectOf(finding.defect)?.confirmedBy ?? [];
  const unused = able.filter((method) => !finding.methods.includes(method));
  const names = (unused.length > 0 ? unused : able).map((method) => methodOf(method).by.replace(/^by /, ''));
  return names.length === 0 ? '' : `; would be proven by ${listed(names, 'or')}`;
}

/**
 * How sure a finding is, in the words its state calls for: found, fits but not proven, not looked at.
 * A finding that is called confirmed but that no photo or reading shows counts as suspected, and says why.
 */
export function certaintySentence(entry: RankedFinding): string {
  const { finding, line } = entry;
  const state: FindingState = line.state;
  switch (state) {
    case 'confirmed': {
      const deeds = finding.methods.map((method) => methodDeeds[method]);
      return deeds.length === 0 ? 'Found.' : `Found, ${listed(deeds)}.`;
    }
    case 'suspected':
      return finding.state === 'confirmed'
        ? 'Fits, not proven: no photo and no reading shows it yet.'
        : `Fits, not proven${wouldBeProvenBy(entry)}.`;
    case 'not-examined':
      return finding.notExaminedBecause
        ? `Not looked at because: ${asPart(finding.notExaminedBecause)}.`
        : 'Not looked at; no reason is written down.';
    case 'none-found':
      return 'Looked for and not found.';
  }
}
