import { expect, it } from 'vitest';
import { addLoader, openTestRecorder, type TestRecorder } from '../../support/test-recorder.ts';

const refusal = async (work: Promise<unknown>): Promise<string> => {
  try {
    await work;
  } catch (error) {
    return (error as Error).message;
  }
  return 'not refused';
};

const gasTest = (visitId: string) =>
  ({ visitId, sheet: 'MS-09', at: 'COOL/RAD/NECK', inputs: { colour: 'no change' } }) as const;

const withSuspicion = async (recorder: TestRecorder) => {
  const { visitId, machineId } = await addLoader(recorder);
  const suspicion = await recorder.call('suspicion.add', {
    visitId,
    what: 'crack lets coolant into a cylinder',
    at: 'ENG/HD.1',
    defect: 'crack',
  });
  return { visitId, machineId, id: suspicion.id };
};

it('a suspicion needs nothing but its words; place and kind of defect may follow', async () => {
  const recorder = openTestRecorder();
  const { visitId } = await addLoader(recorder);
  const { id } = await recorder.call('suspicion.add', { visitId, what: 'head gasket' });
  const changed = await recorder.call('suspicion.change', { id, at: 'ENG/HG', defect: 'combgas' });
  expect(changed).toMatchObject({ what: 'head gasket', at: 'ENG/HG', defect: 'combgas', turns: [], evidence: [] });
  expect(await refusal(recorder.call('suspicion.add', { visitId, what: '  ' }))).toBe('invalid-input');
  expect(await refusal(recorder.call('suspicion.change', { id, at: 'ENG/WING' }))).toBe('location-unknown');
});

it('what was said first stays when it is said otherwise, and the last word counts', async () => {
  const recorder = openTestRecorder();
  const { visitId, id } = await withSuspicion(recorder);
  const reading = await recorder.call('reading.fill', gasTest(visitId));
  await recorder.call('suspicion.bear', { id, readingId: reading.id, bears: 'against' });
  const turned = await recorder.call('suspicion.bear', {
    id,
    readingId: reading.id,
    bears: 'cannot tell',
    because: 'engine was cold',
  });
  expect(turned.evidence.map(({ bears, because }) => [bears, because])).toEqual([
    ['against', ''],
    ['cannot tell', 'engine was cold'],
  ]);
  const [first, second] = turned.evidence;
  expect(first?.atMs).toBeLessThan(second?.atMs ?? 0);
  // The same word with another reason is the same entry.
  const again = await recorder.call('suspicion.bear', {
    id,
    readingId: reading.id,
    bears: 'cannot tell',
    because: 'cold, at idle',
  });
  expect(again.evidence.map(({ because }) => because)).toEqual(['', 'cold, at idle']);
});

it('given up, taken up, given up: every turn is kept with its reason, and the last one stands', async () => {
  const recorder = openTestRecorder();
  const { call } = recorder;
  const { visitId, id } = await withSuspicion(recorder);
  await call('suspicion.close', { id, because: 'gas test found nothing' });
  await call('suspicion.close', { id, because: null, again: 'still loses coolant' });
  const last = await call('suspicion.close', { id, because: 'hose was split' });
  expect(last.closedBecause).toBe('hose was split');
  expect(last.turns.map(({ turn, because }) => [turn, because])).toEqual([
    ['given-up', 'gas test found nothing'],
    ['taken-up', 'still loses coolant'],
    ['given-up', 'hose was split'],
  ]);
  await call('undo.undo', { visitId });
  const { suspicions } = await call('choices.get', { visitId });
  expect(suspicions[0]?.turns.map(({ turn }) => turn)).toEqual(['given-up', 'taken-up']);
  expect(suspicions[0]?.closedBecause).toBeNull();
});

it('only a confirmed finding shows that it was so; indirect evidence stays a suspicion', async () => {
  const recorder = openTestRecorder();
  const { call } = recorder;
  const { visitId, id } = await withSuspicion(recorder);
  const finding = await call('finding.add', {
    visitId,
    kind: 'condition',
    defect: 'crack',
    state: 'confirmed',
    methods: ['PT'],
    locations: ['ENG/HD.1'],
  });
  // Confirmed by word alone counts as suspected: nothing shows it.
  expect(await refusal(call('suspicion.find', { id, findingId: finding.id }))).toBe('finding-not-confirmed');
  const reading = await call('reading.fill', {
    visitId,
    sheet: 'MS-29',
    at: 'ENG/HD.1',
    inputs: { seen: 'bubbles' },
  });
  await call('finding.showBy', { findingId: finding.id, readingId: reading.id });
  const found = await call('suspicion.find', { id, findingId: finding.id });
  expect(found.turns).toMatchObject([{ turn: 'found', findingId: finding.id }]);
});

it('what a reading bore on goes with the reading, and comes back with it', async () => {
  const recorder = openTestRecorder();
  const { call } = recorder;
  const { visitId, id } = await withSuspicion(recorder);
  const reading = await call('reading.fill', gasTest(visitId));
  await call('suspicion.bear', { id, readingId: reading.id, bears: 'cannot tell' });
  await call('reading.remove', { id: reading.id });
  expect((await call('choices.get', { visitId })).suspicions[0]?.evidence).toEqual([]);
  await call('undo.undo', { visitId });
  expect((await call('choices.get', { visitId })).suspicions[0]?.evidence).toMatchObject([{ readingId: reading.id }]);
});
