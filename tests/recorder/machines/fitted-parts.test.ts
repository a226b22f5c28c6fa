import { describe, expect, it } from 'vitest';
import { addLoader, openTestRecorder } from '../../support/test-recorder.ts';

const opened = async () => {
  const test = openTestRecorder();
  const { machineId, visitId } = await addLoader(test);
  const later = (await test.call('visit.open', { machineId, date: '2026-08-02' })).visit.id;
  const fitPart = (path: string, fittedVisitId: string | null, fittedHours: number | null = null) =>
    test.call('part.fit', { machineId, path, kind: 'new', fittedVisitId, fittedHours });
  const parts = async () => (await test.call('machine.page', { id: machineId })).fittedParts;
  return { test, machineId, visitId, later, fitPart, parts };
};

describe('a fitted part', () => {
  it('takes out what stood at the very same place, in one step that is taken back as one', async () => {
    const { test, visitId, later, fitPart, parts } = await opened();
    const first = await fitPart('ENG/HG.1', visitId, 4000);
    const second = await fitPart('ENG/HG.1', later, 4400);
    await fitPart('ENG/LNR.2', later, 4400);
    expect(await parts()).toMatchObject([
      { id: first.id, removedVisitId: later, removedHours: 4400 },
      { id: second.id, removedVisitId: null, removedHours: null },
      { path: 'ENG/LNR.2' },
    ]);
    await test.call('undo.undo', { visitId: later });
    await test.call('undo.undo', { visitId: later });
    expect(await parts()).toMatchObject([{ id: first.id, removedVisitId: null, removedHours: null }]);
  });

  it('cannot come out before it went in', async () => {
    const { test, visitId, later, fitPart } = await opened();
    const { id } = await fitPart('ENG/HG.1', later, 4400);
    await expect(test.call('part.remove', { id, visitId: later, hours: 4300 })).rejects.toThrow('part-out-before-in');
    await expect(test.call('part.remove', { id, visitId, hours: null })).rejects.toThrow('part-out-before-in');
    expect(await test.call('part.remove', { id, visitId: later, hours: 4400 })).toMatchObject({ removedHours: 4400 });
  });

  it('is put right, or struck off as never fitted', async () => {
    const { test, visitId, later, fitPart, parts } = await opened();
    const { id } = await fitPart('ENG/HG.1', later, 4400);
    await test.call('part.change', { id, kind: 'donor', path: 'ENG/LNR.3', fittedVisitId: visitId, fittedHours: 4000 });
    expect(await parts()).toMatchObject([
      { kind: 'donor', path: 'ENG/LNR.3', fittedVisitId: visitId, fittedHours: 4000 },
    ]);
    await test.call('part.strike', { id });
    expect(await parts()).toEqual([]);
  });

  it('stands on a part that the machine has, in a visit of the machine', async () => {
    const { test, visitId, fitPart } = await opened();
    const other = await addLoader(test, 'ZZ-1');
    await expect(fitPart('ENG/LNR.9', visitId)).rejects.toThrow('location-unknown');
    await expect(fitPart('ENG/LNR.1', other.visitId)).rejects.toThrow('not-found');
  });
});
