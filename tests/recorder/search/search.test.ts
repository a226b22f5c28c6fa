import { describe, expect, it } from 'vitest';
import { matchOf } from '../../../electron/recorder/search/find.ts';
import { addLoader, openTestRecorder } from '../../support/test-recorder.ts';

const open = async () => {
  const test = openTestRecorder();
  const first = await addLoader(test, 'BL-6050-M');
  const second = await addLoader(test, 'TR-7711-Q');
  const found = async (find: string) =>
    (await test.call('machine.floor', { find })).map(({ machine }) => machine.serial);
  return { ...test, first, second, found };
};

describe('the search', () => {
  it('finds a machine by the middle of its serial, whatever the case', async () => {
    const { found } = await open();
    expect(await found('605')).toEqual(['BL-6050-M']);
    expect(await found('11-q')).toEqual(['TR-7711-Q']);
    expect(await found('999')).toEqual([]);
  });

  it('finds what was just written, by the beginning of its last word, and says what it found', async () => {
    const { call, first, found } = await open();
    const finding = await call('finding.add', {
      visitId: first.visitId,
      defect: 'crack',
      locations: ['ENG/HD.1/EVS.3.1'],
      words: 'Hairline from the seat',
    });
    expect(await found('hairl')).toEqual(['BL-6050-M']);
    expect(await found('exhaust seat cyl')).toEqual(['BL-6050-M']);
    const [hit] = await call('machine.floor', { find: 'hairline' });
    expect(hit?.found).toMatchObject({ visitId: first.visitId, findingId: finding.id });
    expect(hit?.found?.words).toContain('crack');
  });

  it('follows a change, an undo and the bin', async () => {
    const { call, first, found } = await open();
    const { visitId } = first;
    const { id } = await call('finding.add', { visitId, words: 'porous casting' });
    await call('finding.change', { id, words: 'chafed loom' });
    expect(await found('porous')).toEqual([]);
    expect(await found('chafed')).toEqual(['BL-6050-M']);
    await call('undo.undo', { visitId });
    expect(await found('porous')).toEqual(['BL-6050-M']);
    await call('finding.bin', { id });
    expect(await found('porous')).toEqual([]);
  });

  it('finds the owner, without an accent too, and no longer the one before', async () => {
    const { call, first, found } = await open();
    await call('machine.setOwner', {
      id: first.machineId,
      owner: { name: 'Zoë Brandt', kind: 'person', capacity: 'owner' },
    });
    expect(await found('zoe')).toEqual(['BL-6050-M']);
    expect(await found('aspen')).toEqual(['TR-7711-Q']);
  });

  it('takes every letter as a letter: nothing typed is an operator or breaks it', async () => {
    const { found } = await open();
    for (const typed of ['"', "'", '*', 'NOT', 'a AND', '(', 'x:y', '-', '^', 'NEAR(', '\u0000', '🙂', '%_', '6050"']) {
      await expect(found(typed)).resolves.toBeInstanceOf(Array);
    }
    expect(matchOf('exhaust "seat" OR')).toBe('"exhaust" "seat" "OR"*');
    expect(matchOf(' - ')).toBeNull();
  });
});
