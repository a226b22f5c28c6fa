import { describe, expect, it } from 'vitest';
import { addLoader, openTestRecorder } from '../../support/test-recorder.ts';

describe('undo', () => {
  it('takes back one gesture at a time, and does it again', async () => {
    const test = openTestRecorder();
    const { call } = test;
    const { visitId } = await addLoader(test);
    const finding = await call('finding.add', { visitId, defect: 'crack', locations: ['ENG/HD.1'] });
    await call('finding.change', { id: finding.id, words: 'first' });
    await call('finding.change', { id: finding.id, words: 'second' });
    const words = async () => (await call('visit.get', { id: visitId })).findings[0]?.words;

    expect(await call('undo.state', { visitId })).toEqual({ undo: 'finding.change', redo: null });
    await call('undo.undo', { visitId });
    expect(await words()).toBe('first');
    await call('undo.undo', { visitId });
    expect(await words()).toBe('');
    expect(await call('undo.state', { visitId })).toEqual({ undo: 'finding.add', redo: 'finding.change' });
    await call('undo.redo', { visitId });
    await call('undo.redo', { visitId });
    expect(await words()).toBe('second');
    expect(await call('undo.state', { visitId })).toEqual({ undo: 'finding.change', redo: null });
    for (let times = 0; times < 3; times += 1) await call('undo.undo', { visitId });
    expect((await call('visit.get', { id: visitId })).findings).toEqual([]);
    await expect(call('undo.undo', { visitId })).rejects.toThrow('nothing-to-undo');
  });

  it('brings a finding back whole: places, quantities and links', async () => {
    const test = openTestRecorder();
    const { call } = test;
    const { visitId } = await addLoader(test);
    const cause = await call('finding.add', { visitId, defect: 'scale', locations: ['COOL/RAD'] });
    const before = await call('finding.add', {
      visitId,
      defect: 'crack',
      locations: ['ENG/HD.1/EVS.3.1@from=EVS.3.1;to=INJB.3', 'ENG/HD.1'],
      quantities: { len: { typed: '14 mm' } },
    });
    await call('undo.undo', { visitId });
    await call('undo.redo', { visitId });
    await call('finding.link', { fromId: cause.id, toId: before.id });
    await call('undo.undo', { visitId });
    await call('undo.redo', { visitId });
    const record = await call('visit.get', { id: visitId });
    expect(record.findings.find(({ id }) => id === before.id)).toEqual(before);
    expect(record.links).toMatchObject([{ fromId: cause.id, toId: before.id }]);
  });

  it('is this window only, and anything new clears what could be done again', async () => {
    const test = openTestRecorder();
    const { visitId } = await addLoader(test);
    const [first, second] = [test.as('window-1'), test.as('window-2')];
    await first('finding.add', { visitId, words: 'one' });
    await second('finding.add', { visitId, words: 'two' });
    await first('undo.undo', { visitId });
    expect((await first('visit.get', { id: visitId })).findings.map(({ words }) => words)).toEqual(['two']);
    await first('finding.add', { visitId, words: 'three' });
    await expect(first('undo.redo', { visitId })).rejects.toThrow('nothing-to-redo');
  });

  it('is refused with a word when someone else has changed the row, and then changes nothing', async () => {
    const test = openTestRecorder();
    const { visitId } = await addLoader(test);
    const finding = await test.as('window-1')('finding.add', { visitId, words: 'mine' });
    await test.as('window-1')('finding.change', { id: finding.id, words: 'mine again', urgency: 2 });
    await test.as('window-2')('finding.change', { id: finding.id, words: 'theirs' });
    await expect(test.as('window-1')('undo.undo', { visitId })).rejects.toThrow('changed-by-another');
    expect((await test.call('visit.get', { id: visitId })).findings[0]).toMatchObject({ words: 'theirs', urgency: 2 });
  });

  it('never takes away a reading that someone else has since filled further', async () => {
    const test = openTestRecorder();
    const { visitId } = await addLoader(test);
    const begun = { visitId, sheet: 'steering free play', at: 'STEER/DRAG', inputs: { arc: '64 mm' } };
    const { id } = await test.as('window-1')('reading.fill', begun);
    await test.as('window-2')('reading.change', { id, inputs: { radius: '200 mm' } });
    await expect(test.as('window-1')('undo.undo', { visitId })).rejects.toThrow('changed-by-another');
    expect((await test.call('visit.get', { id: visitId })).readings).toMatchObject([
      { id, inputs: { radius: '200 mm' } },
    ]);
  });
});
