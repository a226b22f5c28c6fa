import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dateOnClock, timeWords } from '../../../../renderer/ui/shop-clock.ts';

/** The runtime's own calendar, which takes offsets as time zones. */
const byIntl = (atMs: number, timeZone: string): string =>
  new Intl.DateTimeFormat('sv-SE', { timeZone, dateStyle: 'short', timeStyle: 'short' }).format(atMs);

test('day and time are those of the shop, as the calendar of the runtime has them', () => {
  const zone = fc
    .tuple(fc.constantFrom('+', '-'), fc.integer({ min: 0, max: 13 }), fc.constantFrom('00', '30', '45'))
    .map(([sign, hours, minutes]) => `${sign}${String(hours).padStart(2, '0')}:${minutes}`)
    .filter((text) => text !== '-00:00');
  const moment = fc.integer({ min: Date.UTC(1990), max: Date.UTC(2060) });
  fc.assert(
    fc.property(moment, zone, (atMs, timeZone) => {
      expect(`${dateOnClock(atMs, timeZone)} ${timeWords(atMs, timeZone)}`).toBe(byIntl(atMs, timeZone));
    }),
  );
});
