import { expect, it } from 'vitest';
import { addLoader, openTestRecorder, type TestRecorder } from '../../support/test-recorder.ts';
import { fixture } from '../photos/photo-room.ts';

const refusal = async (work: Promise<unknown>): Promise<string> => {
  try {
    await work;
  } catch (error) {
    return (error as Error).message;
  }
  return 'not refused';
};

const takePhoto = async (test: TestRecorder, visitId: string): Promise<string> => {
  test.recorder.offer({ token: `token of ${visitId}`, path: fixture('Landscape_1.jpg'), for: 'read' });
  await test.call('shot.take', { visitId, tokens: [`token of ${visitId}`] });
  await expect
    .poll(async () => (await test.call('visit.get', { id: visitId })).shots.length, { timeout: 20_000 })
    .toBe(1);
  const [shot] = (await test.call('visit.get', { id: visitId })).shots;
  return shot?.id ?? '';
};

it('what others did before is kept as it was told; a visit without any says nothing of it', async () => {
  const recorder = openTestRecorder();
  const { call } = recorder;
  const { visitId, record } = await addLoader(recorder);
  expect(record.intake).toBeUndefined();
  await call('earlierWork.add', {
    visitId,
    what: 'thermostat',
    did: 'removed',
    byWhom: 'the owner',
    whenDone: 'last summer',
  });
  const two = await call('earlierWork.add', { visitId, what: 'head gasket', place: 'ENG/HG' });
  expect(two.earlierWork.map(({ what, did, byWhom }) => [what, did, byWhom])).toEqual([
    ['thermostat', 'removed', 'the owner'],
    ['head gasket', 'changed', ''],
  ]);
  expect(await refusal(call('earlierWork.add', { visitId, what: ' ' }))).toBe('invalid-input');
  expect(await refusal(call('earlierWork.add', { visitId, what: 'wing', place: 'ENG/WING' }))).toBe('location-unknown');
  await call('earlierWork.remove', { id: two.earlierWork[0]?.id ?? '' });
  await call('undo.undo', { visitId });
  expect((await call('visit.get', { id: visitId })).intake?.earlierWork).toEqual(two.earlierWork);
});

it('a condition is written beside the others, also before the window has heard of them, and taken away by itself', async () => {
  const { call, ...recorder } = openTestRecorder();
  const { visitId } = await addLoader({ call, ...recorder });
  await Promise.all([
    call('visit.change', { id: visitId, conditions: { altitude: '120 m' } }),
    call('visit.change', { id: visitId, conditions: { weather: 'dry' } }),
  ]);
  const conditions = async () => (await call('visit.get', { id: visitId })).visit.conditions;
  expect(await conditions()).toEqual({ altitude: '120 m', weather: 'dry' });
  await call('visit.change', { id: visitId, conditions: { weather: null } });
  expect(await conditions()).toEqual({ altitude: '120 m' });
  await call('undo.undo', { visitId });
  expect(await conditions()).toEqual({ altitude: '120 m', weather: 'dry' });
});

it('a fluid is noted once and put right; taken off it is not written down', async () => {
  const recorder = openTestRecorder();
  const { call } = recorder;
  const { visitId } = await addLoader(recorder);
  await call('fluid.note', { visitId, fluid: 'coolant', level: 'low' });
  await call('fluid.note', { visitId, fluid: 'engine-oil', level: 'over', look: 'grey' });
  const noted = await call('fluid.note', { visitId, fluid: 'coolant', added: 'half a litre a day' });
  expect(noted.fluids).toMatchObject([
    { fluid: 'engine-oil', level: 'over', look: 'grey', added: '' },
    { fluid: 'coolant', level: 'low', look: '', added: 'half a litre a day' },
  ]);
  expect((await call('fluid.remove', { visitId, fluid: 'coolant' })).fluids).toHaveLength(1);
  expect(await refusal(call('fluid.remove', { visitId, fluid: 'coolant' }))).toBe('not-found');
});

it('a view of the arrival has one photo of its own visit; in the bin it shows nothing', async () => {
  const recorder = openTestRecorder();
  const { call } = recorder;
  const { visitId, machineId } = await addLoader(recorder);
  const shotId = await takePhoto(recorder, visitId);
  const shown = await call('arrival.show', { visitId, view: 'plate', shotId });
  expect(shown.photos).toMatchObject([{ view: 'plate', shotId }]);
  const later = await call('visit.open', { machineId, date: '2026-06-11' });
  expect(await refusal(call('arrival.show', { visitId: later.visit.id, view: 'plate', shotId }))).toBe(
    'finding-of-another-visit',
  );
  await call('shot.bin', { id: shotId });
  expect((await call('visit.get', { id: visitId })).intake).toBeUndefined();
  await call('shot.restore', { id: shotId });
  expect((await call('arrival.show', { visitId, view: 'plate', shotId: null })).photos).toEqual([]);
});
