import { describe, expect, it } from 'vitest';
import { addLoader, openTestRecorder } from '../../support/test-recorder.ts';

const returning = async () => {
  const test = openTestRecorder();
  const { machineId, visitId } = await addLoader(test);
  const { call } = test;
  const crack = await call('finding.add', {
    visitId,
    defect: 'crack',
    locations: ['ENG/HD.1/EVS.3.1'],
    quantities: { length: { typed: '14 mm' } },
    state: 'confirmed',
    methods: ['PT'],
    safety: 'none',
    urgency: 1,
    runWorse: true,
    damageClass: 2,
  });
  await call('finding.add', { visitId, defect: 'play', locations: ['STEER/DRAG'] });
  const next = (await call('visit.open', { machineId, date: '2026-09-01' })).visit.id;
  return { ...test, visitId, machineId, next, crack };
};

describe('a machine that is back', () => {
  it('brings what was left open, each to be taken up once', async () => {
    const { call, visitId, next, crack } = await returning();
    expect(await call('return.get', { visitId })).toBeNull();
    const open = async () =>
      (await call('return.get', { visitId: next }))?.old
        .filter(({ takenUpAs }) => takenUpAs === null)
        .map(({ tag }) => tag.number)
        .sort();
    expect(await call('return.get', { visitId: next })).toMatchObject({ visitId, date: '2026-05-11' });
    expect(await open()).toEqual([1, 2]);
    const carried = await call('finding.carry', { visitId: next, findingId: crack.id });
    expect(carried).toMatchObject({
      number: 1,
      trackOf: crack.id,
      defect: 'crack',
      locations: crack.locations,
      urgency: 1,
    });
    expect(await open()).toEqual([2]);
    await call('undo.undo', { visitId: next });
    expect(await open()).toEqual([1, 2]);
  });

  it('shows again what it says: the photos of then confirm nothing now', async () => {
    const { call, next, crack } = await returning();
    const carried = await call('finding.carry', { visitId: next, findingId: crack.id });
    const record = await call('visit.get', { id: next });
    expect(record.proofs).toEqual([]);
    expect(record.standing.lines.find(({ findingId }) => findingId === carried.id)).toMatchObject({
      state: 'suspected',
    });
  });

  it('takes up nothing of another machine', async () => {
    const test = await returning();
    const other = await addLoader(test, 'TL-0002');
    await expect(test.call('finding.carry', { visitId: other.visitId, findingId: test.crack.id })).rejects.toThrow(
      'finding-of-another-visit',
    );
  });
});
