import type { Verdict } from '../model/reading.ts';

/**
 * Worst first. A line that only records says nothing good or bad, so it speaks for its sheet only where no line judges; a
 * void one is worse than any good news, because the sheet's question stays unanswered.
 */
const order: readonly Verdict[] = [
  'beyond',
  'shown',
  'watch',
  'too close to tell',
  'void',
  'within',
  'not found by this test',
  'no growth shown',
  'recorded only',
  'not taken',
];

/** The verdict a sheet shows: that of its worst line. An empty sheet was not taken. */
export function worstVerdict(verdicts: readonly Verdict[]): Verdict {
  return order.find((verdict) => verdicts.includes(verdict)) ?? 'not taken';
}
