import type { CostLine, DecisionKind, DispositionIs } from './records.ts';

/** What a choice does to a finding, as people read it. */
export const dispositionWords: Readonly<Record<DispositionIs, string>> = {
  fixed: 'mended',
  partly: 'partly mended',
  left: 'left as it is',
  'made-safe': 'locked out, still there',
  unknown: 'unknown until opened',
};

/** `owner: ...` and the like; a decision that needs completing is completed by `completed`. */
export const decisionWords: Readonly<Record<DecisionKind, string>> = {
  accepted: 'accepted',
  'accepted-with-changes': 'accepted with a change',
  declined: 'declined',
  deferred: 'put off',
  'refused-by-mechanic': 'refused by the mechanic',
};

export const costWords: Readonly<Record<CostLine['kind'], string>> = {
  parts: 'parts',
  labour: 'labour',
  outside: 'outside work',
  contingency: 'in reserve',
};

/** The name a choice begins with; the mechanic's to change. */
export const firstNames = ['make safe', 'least to run', 'mend what was found', 'renew the unit'] as const;
