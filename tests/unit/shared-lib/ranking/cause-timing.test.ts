import { expect, it } from 'vitest';
import { impossibleCause } from '../../../../shared-lib/ranking/cause-timing.ts';

// The handbook's chapter 6.6 (e): a cause must be able to precede its effect; scale takes months. Common practice, no source.
const cause = (date: string | null, defect: string | null = 'wear') => ({
  defect,
  absentOn: date === null ? null : { date, known: 'not-found' as const },
  thereOn: null,
});
const effect = (thereOn: string | null) => ({ absentOn: null, thereOn });

it.each([
  ['on the day itself nobody can say which came first', cause('2026-06-08'), effect('2026-06-08')],
  ['a day later it may have come first', cause('2026-06-08'), effect('2026-06-09')],
  ['nothing is known of when it was absent', cause(null), effect('2026-06-01')],
  ['nothing is known of when the effect was there', cause('2026-06-08'), effect(null)],
  ['a month is time enough for scale', cause('2026-06-01', 'scale'), effect('2026-07-01')],
  ['nobody has said what it is', cause('2026-06-08', null), effect('2026-06-08')],
])('%s', (_why, earlier, later) => {
  expect(impossibleCause(earlier, later)).toBeNull();
});

it('what was not there on a day on which the effect was cannot have caused it', () => {
  expect(impossibleCause(cause('2026-06-08'), effect('2026-06-07'))).toEqual({
    absentOn: '2026-06-08',
    known: 'not-found',
    thereOn: '2026-06-07',
    formsInDays: null,
  });
});

it('scale does not form in less than a month, over the end of a year and a leap day too', () => {
  expect(impossibleCause(cause('2026-06-01', 'scale'), effect('2026-06-30'))).toMatchObject({ formsInDays: 30 });
  expect(impossibleCause(cause('2027-12-20', 'scale'), effect('2028-01-18'))).toMatchObject({ formsInDays: 30 });
  expect(impossibleCause(cause('2028-02-01', 'scale'), effect('2028-03-02'))).toBeNull();
  expect(impossibleCause(cause('2027-02-01', 'scale'), effect('2027-03-02'))).toMatchObject({ formsInDays: 30 });
  // Before it at all, the days it takes are beside the point.
  expect(impossibleCause(cause('2026-06-08', 'scale'), effect('2026-06-07'))).toMatchObject({ formsInDays: null });
});
