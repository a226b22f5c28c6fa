import { expect, it } from 'vitest';
import { takenByCamera, takenCorrected } from '../../../../../electron/recorder/photos/taken-time.ts';

const utc = (text: string) => Date.parse(text);

// ISO 8601: a wall clock two hours ahead of UTC shows 14:52:07 at 12:52:07 UTC.
it('a camera that names its zone says the instant', () => {
  expect(takenByCamera('2018-07-31T14:52:07', 120)).toEqual({
    taken_at_ms: utc('2018-07-31T12:52:07Z'),
    taken_zone_min: 120,
    taken_source: 'camera',
  });
  expect(takenByCamera('2018-07-31T14:52:07', -210).taken_at_ms).toBe(utc('2018-07-31T18:22:07Z'));
});

it.each([
  [null, 60],
  ['2018-07-31T14:52:07', null],
])('without a time or a zone there is no instant: %s %s', (local, zone) => {
  expect(takenByCamera(local, zone)).toEqual({ taken_at_ms: null, taken_zone_min: null, taken_source: null });
});

it('a clock put right by an hour and a half goes forward, one day back goes back', () => {
  const at = (offsetMs: number) => takenCorrected('2018-07-31T14:52:07', 120, 0, offsetMs);
  expect(at(90 * 60_000)).toEqual({
    taken_at_ms: utc('2018-07-31T14:22:07Z'),
    taken_zone_min: 120,
    taken_source: 'camera-corrected',
  });
  expect(at(-86_400_000).taken_at_ms).toBe(utc('2018-07-30T12:52:07Z'));
});

it('a wall clock without a zone is read in the shop’s', () => {
  expect(takenCorrected('2018-07-31T14:52:07', null, -300, 0)).toMatchObject({
    taken_at_ms: utc('2018-07-31T19:52:07Z'),
    taken_zone_min: -300,
  });
  expect(takenCorrected(null, 120, -300, 5)).toEqual({ taken_at_ms: null, taken_zone_min: null, taken_source: null });
});
