import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faceClock } from '../../../../shared-lib/parts/face-clock.ts';

const halfHours = Array.from({ length: 24 }, (_, index) => (index + 1) / 2);

/** The same mirror by drawing it: a hand of the clock, seen through the deck, has left and right swapped. */
function mirroredByDrawing(hour: number): number {
  const turn = (hour / 12) * 2 * Math.PI;
  const seenFromBelow = Math.atan2(-Math.sin(turn), Math.cos(turn));
  const hours = ((seenFromBelow / (2 * Math.PI)) * 12 + 12) % 12;
  return hours < 0.25 ? 12 : Math.round(hours * 2) / 2;
}

describe('the clock on a fire face', () => {
  // Source: the handbook's 2.2: a crack at 2 on the face matches a mark at 10 on the deck.
  it.each([
    [10, 2],
    [2, 10],
    [12, 12],
    [6, 6],
    [3, 9],
    [0.5, 11.5],
  ])('%s on the deck is %s on the face', (deck, face) => {
    expect(faceClock(deck)).toBe(face);
  });

  it.each(halfHours)('agrees with the drawing at %s', (hour) => {
    expect(faceClock(hour)).toBe(mirroredByDrawing(hour));
  });

  it('mirrored twice is where it was', () => {
    fc.assert(
      fc.property(fc.constantFrom(...halfHours), (hour) => {
        expect(faceClock(faceClock(hour))).toBe(hour);
      }),
    );
  });
});
