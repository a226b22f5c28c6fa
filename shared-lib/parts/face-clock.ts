/**
 * The clock position on a head's fire face for one on the deck, and back: the face is looked at from below, so left and
 * right swap.
 *
 * @param hour  a clock position, 0.5–12, half hours allowed
 * @returns  (12 − hour) mod 12, with 0 shown as 12
 * Source: the handbook's 2.2; a mirror about the line from twelve to six.
 * @example faceClock(2) // 10
 * @example faceClock(12) // 12
 */
export function faceClock(hour: number): number {
  const mirrored = (((12 - hour) % 12) + 12) % 12;
  return mirrored === 0 ? 12 : mirrored;
}
