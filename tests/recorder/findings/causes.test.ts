import { expect, it } from 'vitest';
import type { InputOf } from '../../../shared-lib/contract/operations.ts';
import { errorSentence } from '../../../shared-lib/wording/errors.ts';
import { addLoader, openTestRecorder, type TestRecorder } from '../../support/test-recorder.ts';

/** The refusal as the window says it; null where it was done. */
const refusal = async (work: Promise<unknown>) => {
  try {
    await work;
  } catch (error) {
    const { wire } = error as { wire: Parameters<typeof errorSentence>[0] };
    return { code: wire.code, words: errorSentence(wire).happened };
  }
  return null;
};

const scaleAndCrack = async (recorder: TestRecorder, differs: Partial<InputOf<'finding.add'>> = {}) => {
  const { visitId, machineId } = await addLoader(recorder);
  const scale = await recorder.call('finding.add', {
    visitId,
    kind: 'condition',
    defect: 'scale',
    state: 'confirmed',
    locations: ['ENG/HD.1'],
    ...differs,
  });
  const crack = await recorder.call('finding.add', {
    visitId,
    kind: 'condition',
    defect: 'crack',
    state: 'confirmed',
    locations: ['ENG/HD.1/BRIDGE.2'],
    noticedOn: '2026-05-04',
  });
  return { visitId, machineId, scale, crack };
};

it('a cause that was not there yet when its effect was is refused, in days that can be checked', async () => {
  const recorder = openTestRecorder();
  const { scale, crack } = await scaleAndCrack(recorder, { absentOn: '2026-05-08' });
  expect(await refusal(recorder.call('finding.link', { fromId: scale.id, toId: crack.id }))).toEqual({
    code: 'cause-after-effect',
    words:
      'A cause comes before its effect: finding 1 was not there yet on 8 May 2026, but finding 2 was there by 4 May 2026.',
  });
  // The other way round nothing speaks against it.
  expect(await refusal(recorder.call('finding.link', { fromId: crack.id, toId: scale.id }))).toBeNull();
});

// Source: the handbook's chapter 6.6 (e): scale takes months.
it('scale takes its time: three weeks after a clean engine it has caused nothing', async () => {
  const recorder = openTestRecorder();
  const { scale, crack } = await scaleAndCrack(recorder, { absentOn: '2026-04-13' });
  const refused = await refusal(recorder.call('finding.link', { fromId: scale.id, toId: crack.id }));
  expect(refused?.words).toContain('takes 30 days or more to form');
  await recorder.call('finding.change', { id: scale.id, absentOn: '2026-02-01' });
  expect(await refusal(recorder.call('finding.link', { fromId: scale.id, toId: crack.id }))).toBeNull();
});

it('what was looked for at an earlier visit by a method that shows it, and not found, counts; a weak method does not', async () => {
  for (const [method, code] of [
    ['PT', 'cause-after-effect'],
    ['V', null],
  ] as const) {
    const recorder = openTestRecorder();
    const { call } = recorder;
    const { visitId, machineId } = await addLoader(recorder);
    await call('finding.add', {
      visitId,
      kind: 'condition',
      defect: 'crack',
      state: 'none-found',
      methods: [method],
      locations: ['ENG/HD.1'],
      foundOn: '2026-05-11',
    });
    const later = await call('visit.open', { machineId, date: '2026-06-08' });
    const crack = await call('finding.add', {
      visitId: later.visit.id,
      kind: 'condition',
      defect: 'crack',
      state: 'confirmed',
      locations: ['ENG/HD.1/BRIDGE.2'],
      foundOn: '2026-06-08',
    });
    const gas = await call('finding.add', {
      visitId: later.visit.id,
      kind: 'condition',
      defect: 'combgas',
      state: 'suspected',
      locations: ['COOL/COOLANT'],
      noticedOn: '2026-05-01',
    });
    expect((await refusal(call('finding.link', { fromId: crack.id, toId: gas.id })))?.code ?? null).toBe(code);
  }
});

it('a day put right may not make a link impossible that is there', async () => {
  const recorder = openTestRecorder();
  const { scale, crack } = await scaleAndCrack(recorder);
  await recorder.call('finding.link', { fromId: scale.id, toId: crack.id });
  const refused = await refusal(recorder.call('finding.change', { id: scale.id, absentOn: '2026-05-09' }));
  expect(refused?.code).toBe('cause-after-effect');
  expect(await refusal(recorder.call('finding.change', { id: scale.id, absentOn: '2025-05-09' }))).toBeNull();
});

it('a part fitted at an earlier visit bounds what is found on it; one fitted in this stay does not', async () => {
  for (const [isEarlier, code] of [
    [true, 'cause-after-effect'],
    [false, null],
  ] as const) {
    const recorder = openTestRecorder();
    const { call } = recorder;
    const { visitId, machineId } = await addLoader(recorder);
    const later = await call('visit.open', { machineId, date: '2026-06-08' });
    await call('part.fit', {
      machineId,
      path: 'ENG/HD.1',
      kind: 'new',
      fittedVisitId: isEarlier ? visitId : later.visit.id,
      fittedHours: null,
    });
    const condition = { visitId: later.visit.id, kind: 'condition', state: 'confirmed' } as const;
    const crack = await call('finding.add', {
      ...condition,
      defect: 'crack',
      locations: ['ENG/HD.1'],
      foundOn: '2026-06-09',
    });
    const gas = await call('finding.add', {
      ...condition,
      defect: 'combgas',
      locations: ['COOL/COOLANT'],
      noticedOn: '2026-04-01',
    });
    expect((await refusal(call('finding.link', { fromId: crack.id, toId: gas.id })))?.code ?? null).toBe(code);
  }
});

it('the two days of one finding may not contradict each other', async () => {
  const recorder = openTestRecorder();
  const { crack } = await scaleAndCrack(recorder);
  const refused = await refusal(recorder.call('finding.change', { id: crack.id, absentOn: '2026-05-06' }));
  expect(refused?.words).toBe('It was noticed on 4 May 2026, so on 6 May 2026 it was there already.');
});

it('a link rests on readings and findings of its own visit, and may be put right', async () => {
  const recorder = openTestRecorder();
  const { call } = recorder;
  const { visitId, machineId, scale, crack } = await scaleAndCrack(recorder);
  const reading = await call('reading.fill', { visitId, sheet: 'MS-26', at: 'COOL/COOLANT', inputs: { ph: '6.4' } });
  const link = await call('finding.link', {
    fromId: scale.id,
    toId: crack.id,
    shownBy: [{ readingId: reading.id }],
  });
  expect(link.shownBy).toEqual([{ readingId: reading.id }]);
  const changed = await call('finding.changeLink', { id: link.id, certainty: 'confirmed', evidence: 'crust over it' });
  expect(changed).toMatchObject({
    certainty: 'confirmed',
    evidence: 'crust over it',
    join: 'and',
    shownBy: link.shownBy,
  });
  const later = await call('visit.open', { machineId, date: '2026-06-08' });
  const stranger = await call('finding.add', { visitId: later.visit.id, kind: 'observation', words: 'new paint' });
  const refused = await refusal(call('finding.changeLink', { id: link.id, shownBy: [{ findingId: stranger.id }] }));
  expect(refused?.code).toBe('finding-of-another-visit');
});
