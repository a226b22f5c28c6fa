import type { FindingAction } from '../model/finding.ts';

/** What can be done about a finding, as a button says it. */
export const actionWords: Readonly<Record<FindingAction, string>> = {
  mend: 'Mend',
  replace: 'Replace',
  adjust: 'Adjust',
  clean: 'Clean',
  monitor: 'Keep an eye on it',
  leave: 'Leave as it is',
  'disable-function': 'Put this function out of use',
  'remove-from-service': 'Take the machine out of use',
};

/** Two tags that protect different things. */
export const tagWords = {
  doNotOperate: { label: 'Do not operate', protects: 'people' },
  doNotRun: { label: 'Do not run', protects: 'the engine' },
} as const;
