import type { Finding } from '../model/finding.ts';
import type { Layout } from '../model/layout.ts';
import { speakComponent } from '../parts/speak-component.ts';
import { titleOf } from '../ranking/title.ts';
import { asPart } from '../report/sentence.ts';
import { sheetName } from '../wording/report.ts';
import type { WorkedOn } from '../work/after-work.ts';
import type { CautionCall } from './calls.ts';
import { workSteps } from './work-step.ts';

function uncapitalised(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** What remains of a finding that was worked on: `mended in part: the left side waits for its lining`. */
export function speakRemains({ is, because }: WorkedOn): string {
  const why = because === '' ? '' : `: ${asPart(because)}`;
  switch (is) {
    case 'mended':
      return 'mended, and not tested after the work';
    case 'made-safe':
      return 'made safe, not mended';
    case 'partly':
      return `mended in part${why}`;
    case 'not-done':
      return `not mended${why}`;
  }
}

/** Why a caution stands there, in a few words: `finding 1, left boom hose: cover worn 25 mm`. */
export function speakBecause(call: CautionCall, findings: readonly Finding[], layout: Layout): string {
  switch (call.by) {
    case 'finding': {
      const finding = findings.find(({ id }) => id === call.findingId);
      return finding === undefined
        ? 'a finding'
        : `finding ${finding.number}, ${uncapitalised(titleOf(finding, layout))}`;
    }
    case 'sheet':
      return sheetName(call.sheet);
    case 'step': {
      const { step, at } = call.work;
      return at === null ? workSteps[step] : `${workSteps[step]}: ${uncapitalised(speakComponent(at, layout))}`;
    }
    case 'machine':
      return 'what this machine is or has';
  }
}
