import { describe, expect, it } from 'vitest';
import { build, type WritableDb } from '../../../electron/recorder/database/connection.ts';
import { addLoader, openTestRecorder, type TestRecorder } from '../../support/test-recorder.ts';

const steering = { sheet: 'steering free play', at: 'STEER/DRAG' };

const opened = async () => {
  const test = openTestRecorder();
  return { test, ...(await addLoader(test)) };
};

const readings = async ({ call }: Pick<TestRecorder, 'call'>, visitId: string) =>
  (await call('visit.get', { id: visitId })).readings;

/** Source of the worked numbers: the trade's handbook, steering free play: s 64, R 200 give 18.3 degrees. */
const worked = { radius: '200 mm', arc: '64 mm' };

describe('a sheet that is filled', () => {
  it('is computed by the recorder, field by field', async () => {
    const { test, visitId } = await opened();
    const begun = await test.call('reading.fill', { visitId, ...steering, inputs: { arc: worked.arc } });
    expect(begun.results.map(({ of, value, verdict }) => [of, value, verdict])).toContainEqual([
      'play',
      null,
      'recorded only',
    ]);
    const filled = await test.call('reading.change', { id: begun.id, inputs: { radius: worked.radius } });
    const play = filled.results.find(({ of }) => of === 'play');
    expect(Number.parseFloat(play?.value ?? '')).toBeCloseTo(18.335, 2);
    expect(play).toMatchObject({ verdict: 'watch', limit: { source: 'common-practice' } });
    expect(filled.sheetVersion).toBeGreaterThan(0);
    expect(filled.inputs).toEqual(worked);
    expect(await readings(test, visitId)).toEqual([filled]);
  });

  it('keeps what cannot be, as typed, and computes nothing from it', async () => {
    const { test, visitId } = await opened();
    const reading = await test.call('reading.fill', {
      visitId,
      ...steering,
      inputs: { radius: '200 mm', arc: '-64 mm' },
    });
    expect(reading.inputs.arc).toBe('-64 mm');
    expect(reading.results.find(({ of }) => of === 'play')?.value ?? null).toBeNull();
  });

  it('takes one field back with one undo', async () => {
    const { test, visitId } = await opened();
    const { id } = await test.call('reading.fill', { visitId, ...steering, inputs: { arc: '64 mm' } });
    await test.call('reading.change', { id, inputs: { radius: '200 mm' } });
    await test.call('undo.undo', { visitId });
    expect((await readings(test, visitId))[0]?.inputs).toEqual({ arc: '64 mm' });
    await test.call('undo.undo', { visitId });
    expect(await readings(test, visitId)).toEqual([]);
  });

  it('refuses a sheet and a place that are none', async () => {
    const { test, visitId } = await opened();
    await expect(test.call('reading.fill', { visitId, sheet: 'horoscope', at: 'STEER' })).rejects.toThrow('not-found');
    await expect(test.call('reading.fill', { visitId, sheet: 'MS-21', at: 'STEER/NOSE' })).rejects.toThrow(/location/);
  });

  it('may be left open for a reason, and taken after all', async () => {
    const { test, visitId } = await opened();
    const reading = await test.call('reading.fill', { visitId, ...steering, notTakenBecause: 'no tool' });
    expect(reading).toMatchObject({ notTakenBecause: 'no tool', results: [] });
    const taken = await test.call('reading.change', { id: reading.id, notTakenBecause: null, inputs: worked });
    expect(taken.results.some(({ of, verdict }) => of === 'play' && verdict === 'watch')).toBe(true);
  });
});

describe('a limit of the machine', () => {
  const makers = { max: '10', source: 'maker', page: 'p. 4' } as const;

  it('is typed once, with its page, and held against the next reading too', async () => {
    const { test, visitId, machineId } = await opened();
    const first = await test.call('reading.fill', { visitId, ...steering, inputs: worked, limits: { play: makers } });
    expect(first.results.find(({ of }) => of === 'play')).toMatchObject({
      verdict: 'beyond',
      limit: { max: '10 °', source: 'maker', page: 'p. 4' },
    });
    expect(await test.call('limit.remembered', { visitId, sheet: 'MS-21' })).toEqual({ play: makers });
    const later = await test.call('visit.open', { machineId, date: '2026-08-02' });
    const second = await test.call('reading.fill', { visitId: later.visit.id, ...steering, inputs: worked });
    expect(second.limits).toEqual({ play: makers });
    expect(second.results.find(({ of }) => of === 'play')?.verdict).toBe('beyond');
  });

  it('stays what a reading was held against when it is typed anew', async () => {
    const { test, visitId } = await opened();
    const { id } = await test.call('reading.fill', { visitId, ...steering, inputs: worked, limits: { play: makers } });
    await test.call('limit.remember', { visitId, sheet: 'MS-21', of: 'play', limit: { ...makers, max: '30' } });
    const [reading] = await readings(test, visitId);
    expect(reading?.id).toBe(id);
    expect(reading?.limits).toEqual({ play: makers });
    expect(reading?.results.find(({ of }) => of === 'play')?.verdict).toBe('beyond');
  });

  it('is forgotten when it is taken away', async () => {
    const { test, visitId } = await opened();
    const { id } = await test.call('reading.fill', { visitId, ...steering, inputs: worked, limits: { play: makers } });
    const without = await test.call('reading.change', { id, limits: { play: null } });
    expect(without.results.find(({ of }) => of === 'play')).toMatchObject({
      verdict: 'watch',
      limit: { source: 'common-practice' },
    });
    expect(await test.call('limit.remembered', { visitId, sheet: 'MS-21' })).toEqual({});
  });
});

describe('the visit before', () => {
  it('gives the same sheet at the same place, and no other', async () => {
    const { test, visitId, machineId } = await opened();
    const before = await test.call('reading.fill', { visitId, ...steering, inputs: worked });
    const later = (await test.call('visit.open', { machineId, date: '2026-08-02' })).visit.id;
    expect(await test.call('reading.previous', { visitId: later, ...steering })).toMatchObject({
      reading: { id: before.id, inputs: worked },
      date: '2026-05-11',
      isOfAnotherPart: false,
    });
    expect(await test.call('reading.previous', { visitId: later, ...steering, at: 'STEER/BOX' })).toBeNull();
    expect(await test.call('reading.previous', { visitId, ...steering })).toBeNull();
  });

  it('is said to be of another part when one was fitted since', async () => {
    const { test, visitId, machineId } = await opened();
    await test.call('reading.fill', { visitId, ...steering, inputs: worked });
    await test.call('part.fit', {
      machineId,
      path: 'STEER/DRAG',
      kind: 'new',
      fittedVisitId: visitId,
      fittedHours: null,
    });
    const later = (await test.call('visit.open', { machineId, date: '2026-08-02' })).visit.id;
    const previous = await test.call('reading.previous', { visitId: later, ...steering });
    expect(previous?.isOfAnotherPart).toBe(true);
  });
});

describe('what was written by another version of a sheet', () => {
  it('is computed anew in a draft, with the earlier results beside', async () => {
    const { test, visitId } = await opened();
    const { id } = await test.call('reading.fill', { visitId, ...steering, inputs: worked });
    const older = [
      {
        of: 'play',
        value: '17 °',
        seen: null,
        limit: null,
        uncertainty: null,
        uncertaintyFrom: null,
        verdict: 'recorded only',
      },
    ];
    (test.recorder.db as WritableDb).run(
      build
        .updateTable('reading')
        .set({ results: JSON.stringify(older), sheet_version: 1 })
        .where('id', '=', id),
    );
    const [reading] = await readings(test, visitId);
    expect(reading?.results.find(({ of }) => of === 'play')?.value).toMatch(/^18\.3/);
    expect(reading?.otherwise).toEqual({ sheetVersion: 1, results: older });
  });
});

it('a reading with its dial and its finding goes as a whole, and comes back as a whole', async () => {
  const { test, visitId } = await opened();
  const reading = await test.call('reading.fill', { visitId, ...steering, inputs: worked });
  const finding = await test.call('finding.add', { visitId, locations: ['STEER/DRAG'], defect: 'play' });
  await test.call('finding.showBy', { findingId: finding.id, readingId: reading.id });
  await test.call('reading.remove', { id: reading.id });
  const without = await test.call('visit.get', { id: visitId });
  expect(without.readings).toEqual([]);
  expect(without.proofs).toEqual([]);
  await test.call('undo.undo', { visitId });
  const again = await test.call('visit.get', { id: visitId });
  expect(again.readings.map(({ id }) => id)).toEqual([reading.id]);
  expect(again.proofs.map(({ readingId }) => readingId)).toEqual([reading.id]);
});

it('an instrument’s step is what the reading can be off by', async () => {
  const { test, visitId } = await opened();
  const rule = await test.call('instrument.add', { visitId, name: 'Steel rule', resolution: '1 mm' });
  expect(await test.call('instrument.list', {})).toEqual([rule]);
  const { results } = await test.call('reading.fill', {
    visitId,
    ...steering,
    inputs: worked,
    instrumentId: rule.id,
  });
  const play = results.find(({ of }) => of === 'play');
  // Half a millimetre would be 0.14 degrees; a whole one of arc and of radius, at 64 on 200: sqrt(0.2865^2 + 0.0917^2).
  expect(Number.parseFloat(play?.uncertainty ?? '')).toBeCloseTo(0.3008, 3);
});
