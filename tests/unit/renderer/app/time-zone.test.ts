import { describe, expect, it } from 'vitest';
import { readZone, zoneText } from '../../../../renderer/app/time-zone.ts';

/** The form `+hh:mm` is ISO 8601's; zones in use run from -12:00 to +14:00 (IANA time zone database). */
describe('a time zone as people type it', () => {
  it.each([
    ['+1', '+01:00'],
    ['-05:30', '-05:30'],
    ['\u22125', '-05:00'],
    ['0545', '+05:45'],
    ['14', '+14:00'],
    [' +2:00 ', '+02:00'],
  ])('%s is %s', (typed, zone) => {
    expect(readZone(typed)).toBe(zone);
  });

  it.each(['', 'here', '15', '+1:60', '+14:30', '1.5'])('"%s" is no zone', (typed) => {
    expect(readZone(typed)).toBeNull();
  });

  it('is written with hours and minutes', () => {
    expect([zoneText(0), zoneText(-210), zoneText(345)]).toEqual(['+00:00', '-03:30', '+05:45']);
  });
});
