import type { FittedPart } from '../model/machine.ts';
import { type Stay, samePartBetween } from '../parts/same-part.ts';

/** A part that was changed between two visits ends every comparison across its change: why, or null where none was. */
export function partChanged(
  place: string,
  [then, now]: readonly [string, string],
  stays: readonly Stay[],
  parts: readonly FittedPart[],
): string | null {
  const told = samePartBetween(place, then, now, stays, parts);
  if (told === 'the same') return null;
  return told === 'another' ? 'the part was changed between' : 'the part may have been changed between';
}
