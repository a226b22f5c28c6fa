import type { Urgency } from '../model/finding.ts';

export interface UrgencyWords {
  readonly urgency: Urgency;
  /** Short, for a button. */
  readonly label: string;
  /** Inside a sentence: 'will show at the next start'. */
  readonly within: string;
}

/** Time to the likely consequence, harm and breakdown alike. The steps are the trade's own; common practice, no source. */
export const urgencies: readonly UrgencyWords[] = [
  { urgency: 0, label: 'At the next start', within: 'at the next start' },
  { urgency: 1, label: 'Within 10 hours', within: 'within 10 hours' },
  { urgency: 2, label: 'Within 50 hours', within: 'within 50 hours' },
  { urgency: 3, label: 'Within 250 hours', within: 'within 250 hours' },
  { urgency: 4, label: 'Later than 250 hours', within: 'later than 250 hours, or next season' },
  { urgency: 5, label: 'No time seen', within: 'at a time nobody can tell' },
];

export function urgencyWords(urgency: Urgency): UrgencyWords {
  const found = urgencies.find((words) => words.urgency === urgency);
  if (found === undefined) throw new RangeError(`no urgency ${urgency}`);
  return found;
}

/** Progress while running: it protects the engine, not people. */
export const runWorseWords = {
  yes: 'running makes it worse',
  no: 'running does not make it worse',
  examples: ['coolant in the oil', 'no oil pressure', 'overheating', 'debris in the oil'],
} as const;
