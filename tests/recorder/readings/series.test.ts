import { describe, expect, it } from 'vitest';
import { addLoader, openTestRecorder } from '../../support/test-recorder.ts';

/** Steering play measured in four stays, 100 hours apart: the arc at the rim grows. */
const machineOfFourStays = async () => {
  const test = openTestRecorder();
  const { machineId, page } = await addLoader(test);
  const meterId = page.meters[0]?.id ?? '';
  const visits: string[] = [];
  for (const [index, arc] of [60, 66, 72, 78].entries()) {
    const reading = 4000 + 100 * index;
    const { visit } = await test.call('visit.open', {
      machineId,
      date: `2026-0${6 + index}-01`,
      meter: { meterId, typed: `${reading} h`, reading, estimate: false },
    });
    visits.push(visit.id);
    await test.call('reading.fill', {
      visitId: visit.id,
      sheet: 'steering free play',
      at: 'STEER',
      inputs: { radius: '200 mm', arc: `${arc} mm` },
    });
  }
  const [first = '', second = '', third = '', fourth = ''] = visits;
  return { test, machineId, first, second, third, fourth };
};

const playOf = async (test: ReturnType<typeof openTestRecorder>, visitId: string) =>
  (await test.call('reading.series', { visitId })).series.find(({ of }) => of === 'play');

describe('readings in series', () => {
  it('are gathered from every stay up to this one, against true hours', async () => {
    const { test, third, fourth } = await machineOfFourStays();
    const play = await playOf(test, fourth);
    expect(play).toMatchObject({ sheet: 'MS-21', at: 'STEER', unit: '°', which: null, ofAnotherPart: 0 });
    expect(play?.points.map(({ hours }) => hours)).toEqual([4000, 4100, 4200, 4300]);
    // An arc of 60 mm at 200 mm from the middle is 60 / 200 rad.
    expect(play?.points[0]?.value).toBeCloseTo(((60 / 200) * 180) / Math.PI, 3);
    expect((await playOf(test, third))?.points).toHaveLength(3);
    expect((await test.call('reading.series', { visitId: fourth })).before).toEqual({
      date: '2026-08-01',
      hours: 4200,
    });
  });

  it('go on across a meter that was replaced, by true hours', async () => {
    const { test, machineId, fourth } = await machineOfFourStays();
    const meter = { name: 'new meter', offsetHours: 4350, from: null, until: null, dead: false };
    const { id } = await test.call('meter.add', { machineId, ...meter });
    const { visit } = await test.call('visit.open', {
      machineId,
      date: '2026-11-01',
      meter: { meterId: id, typed: '50 h', reading: 50, estimate: false },
    });
    await test.call('reading.fill', {
      visitId: visit.id,
      sheet: 'steering free play',
      at: 'STEER',
      inputs: { radius: '200 mm', arc: '84 mm' },
    });
    expect((await playOf(test, visit.id))?.points.map(({ hours }) => hours)).toEqual([4000, 4100, 4200, 4300, 4400]);
    expect((await playOf(test, fourth))?.points).toHaveLength(4);
  });

  it('never run across a change of part, and leave out the stay of the change itself', async () => {
    const { test, machineId, second, fourth } = await machineOfFourStays();
    await test.call('part.fit', {
      machineId,
      path: 'STEER/DRAG',
      kind: 'new',
      fittedVisitId: second,
      fittedHours: 4100,
    });
    const play = await playOf(test, fourth);
    expect(play?.points.map(({ hours }) => hours)).toEqual([4200, 4300]);
    expect(play?.ofAnotherPart).toBe(2);
  });

  it('leave out a stay whose hours nobody read', async () => {
    const { test, machineId, fourth } = await machineOfFourStays();
    await test.call('visit.open', { machineId, date: '2026-09-15' }).then(({ visit }) =>
      test.call('reading.fill', {
        visitId: visit.id,
        sheet: 'steering free play',
        at: 'STEER',
        inputs: { radius: '200 mm', arc: '80 mm' },
      }),
    );
    const page = await test.call('machine.page', { id: machineId });
    const latest = page.visits.at(-1)?.visit.id ?? fourth;
    expect(await playOf(test, latest)).toMatchObject({ withoutHours: 1 });
  });
});
