import { describe, expect, it } from 'vitest';
import { addLoader, openTestRecorder } from '../../support/test-recorder.ts';

const open = async () => {
  const test = openTestRecorder();
  return { ...test, ...(await addLoader(test)) };
};

describe('a finding', () => {
  it('may be half filled: nothing but the visit is asked for, and it shows as unfinished', async () => {
    const { call, visitId } = await open();
    const finding = await call('finding.add', { visitId });
    expect(finding).toMatchObject({ number: 1, state: 'suspected', locations: [], safety: null });
    const { standing } = await call('visit.get', { id: visitId });
    expect(standing.lines[0]?.missing.length).toBeGreaterThan(0);
  });

  it('keeps a quantity as typed beside the number it was read as, and a thing that is no number as typed alone', async () => {
    const { call, visitId } = await open();
    const { id } = await call('finding.add', {
      visitId,
      defect: 'crack',
      quantities: { length: { typed: '7/16 in' } },
    });
    const again = await call('finding.change', { id, quantities: { depth: { typed: '4 2,5,0' } } });
    expect(again.quantities.length).toMatchObject({ typed: '7/16 in', origin: 'measured' });
    // NIST SP 811: 1 in = 25.4 mm exactly, so 7/16 in is 11.1125 mm.
    expect(
      again.quantities.length?.unit === 'in'
        ? (again.quantities.length.value ?? 0) * 25.4
        : again.quantities.length?.value,
    ).toBeCloseTo(11.1125, 9);
    expect(again.quantities.depth).toMatchObject({ typed: '4 2,5,0', value: null });
    expect((await call('finding.change', { id, quantities: { depth: null } })).quantities).not.toHaveProperty('depth');
  });

  it('is refused a place that the machine does not have, and nothing is written', async () => {
    const { call, visitId } = await open();
    const before = (await call('visit.get', { id: visitId })).findings;
    await expect(call('finding.add', { visitId, locations: ['ENG/LNR.5'] })).rejects.toThrow('location-unknown');
    await expect(call('finding.add', { visitId, locations: ['no such thing'] })).rejects.toThrow('location-malformed');
    expect((await call('visit.get', { id: visitId })).findings).toEqual(before);
  });

  it('keeps its number for life: a tracked one carries it into the next visit, a new one gets the next', async () => {
    const { call, visitId, machineId } = await open();
    await call('finding.add', { visitId, words: 'one' });
    const second = await call('finding.add', { visitId, words: 'two' });
    const next = (await call('visit.open', { machineId, date: '2026-09-01' })).visit.id;
    expect((await call('finding.add', { visitId: next, trackOf: second.id })).number).toBe(2);
    expect((await call('finding.add', { visitId: next })).number).toBe(3);
  });

  it('is superseded, never overwritten: the earlier one stays, the new one says why and stands at the same place', async () => {
    const { call, visitId } = await open();
    const first = await call('finding.add', { visitId, words: 'upper hose clamp', locations: ['COOL/HOSE.1'] });
    const second = await call('finding.supersede', { id: first.id, because: 'the hold test gave the same rate' });
    expect(second).toMatchObject({ supersedes: first.id, locations: ['COOL/HOSE.1'] });
    const record = await call('visit.get', { id: visitId });
    expect(record.findings.map(({ id }) => id)).toContain(first.id);
    expect(record.standing.lines.map(({ findingId }) => findingId)).toEqual([second.id]);
  });

  it('leads to others of its own visit only, once, and never to itself', async () => {
    const { call, visitId, machineId } = await open();
    const [a, b] = [await call('finding.add', { visitId }), await call('finding.add', { visitId })];
    await call('finding.link', { fromId: a.id, toId: b.id });
    await expect(call('finding.link', { fromId: a.id, toId: b.id })).rejects.toThrow('link-exists');
    await expect(call('finding.link', { fromId: a.id, toId: a.id })).rejects.toThrow('link-to-itself');
    const other = (await call('visit.open', { machineId, date: '2026-09-01' })).visit.id;
    const far = await call('finding.add', { visitId: other });
    await expect(call('finding.link', { fromId: a.id, toId: far.id })).rejects.toThrow('finding-of-another-visit');
  });
});
