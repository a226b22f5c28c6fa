import type { Bears } from '../../shared-lib/choices/records.ts';

/** From left to right: the column leans the way the evidence does. */
export const bearsInOrder: readonly Bears[] = ['against', 'cannot tell', 'for'];

/** `2 for, 1 cannot tell`; empty where nothing was held against it yet. */
export function countWords(counts: Readonly<Record<Bears, number>>): string {
  return (['for', 'against', 'cannot tell'] as const)
    .filter((bears) => counts[bears] > 0)
    .map((bears) => `${counts[bears]} ${bears}`)
    .join(', ');
}
