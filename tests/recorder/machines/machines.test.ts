import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { databaseFile } from '../../../electron/recorder/database/open.ts';
import { loaderLayout } from '../../support/loader-layout.ts';
import { addLoader, openTestRecorder } from '../../support/test-recorder.ts';

const open = async () => {
  const test = openTestRecorder();
  return { ...test, ...(await addLoader(test)) };
};

describe('a machine', () => {
  it('stands on the floor with plate, owner and hours, and is found by any part of them', async () => {
    const test = await open();
    await addLoader(test, 'ZZ-9911');
    const { call } = test;
    expect((await call('machine.floor', {})).map(({ machine }) => machine.serial)).toEqual(['ZZ-9911', 'TL-0001']);
    expect((await call('machine.floor', { find: '991' })).map(({ machine }) => machine.serial)).toEqual(['ZZ-9911']);
    expect(await call('machine.floor', { find: 'aspen load' })).toHaveLength(2);
    expect(await call('machine.floor', { find: 'no such' })).toEqual([]);
  });

  it('keeps a layout that a finding stands on: the change is refused with the places it would orphan', async () => {
    const { call, machineId, visitId } = await open();
    await call('finding.add', { visitId, locations: ['ENG/LNR.4'] });
    const smaller = { ...loaderLayout, engine: { ...loaderLayout.engine, cylinders: 3 } };
    const refused = await call('machine.setLayout', { id: machineId, layout: smaller }).catch((error) => error);
    expect(refused.wire).toMatchObject({ code: 'layout-orphans', details: { places: ['ENG/LNR.4'] } });
    const larger = { ...loaderLayout, engine: { ...loaderLayout.engine, cylinders: 6 } };
    const page = await call('machine.setLayout', { id: machineId, layout: larger });
    expect(page.layout).toMatchObject({ version: 2, layout: { engine: { cylinders: 6 } } });
    await call('finding.add', { visitId, locations: ['ENG/LNR.6'] });
  });

  it('has true hours: the reading plus what earlier meters ran, and they never fall without a word', async () => {
    const { call, machineId, page } = await open();
    const meterId = page.meters[0]?.id ?? '';
    const at = (reading: number, id = meterId) => ({ meterId: id, typed: `${reading} h`, reading, estimate: false });
    await call('visit.open', { machineId, date: '2026-06-01', meter: at(4000) });
    await expect(call('visit.open', { machineId, date: '2026-07-01', meter: at(12) })).rejects.toThrow('hours-fall');
    const replaced = await call('meter.add', {
      machineId,
      name: 'new meter',
      offsetHours: 4000,
      from: '2026-06-20',
      until: null,
      dead: false,
    });
    const record = await call('visit.open', { machineId, date: '2026-07-01', meter: at(12, replaced.id) });
    expect(record.trueHours).toBe(4012);
    expect((await call('machine.page', { id: machineId })).visits.map(({ trueHours }) => trueHours)).toEqual([
      null,
      4000,
      4012,
    ]);
  });

  it('changes hands with a date, and keeps who had it before', async () => {
    const { call, machineId } = await open();
    const page = await call('machine.setOwner', {
      id: machineId,
      owner: { name: 'Greta Holt', kind: 'person', capacity: 'owner' },
      from: '2026-08-01',
    });
    expect(page.owner?.name).toBe('Greta Holt');
  });

  it('ends the time of who had it before on the shop’s day, where no other is said', async () => {
    const { call, machineId, dataFolder } = await open();
    // 8:00 UTC on the 11th is 23:00 on the 10th there.
    await call('shop.change', { timeZone: '-09:00' });
    await call('machine.setOwner', {
      id: machineId,
      owner: { name: 'Greta Holt', kind: 'person', capacity: 'owner' },
    });
    const sqlite = new Database(databaseFile(dataFolder), { readonly: true });
    const ends = sqlite.prepare('SELECT until_date FROM ownership WHERE until_date IS NOT NULL').pluck().all();
    sqlite.close();
    expect(ends).toEqual(['2026-05-10']);
  });
});
