import { closeSync, openSync, writeSync } from 'node:fs';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { damageBeside } from '../../../electron/recorder/database/damage-beside.ts';
import { damageIn, databaseFile } from '../../../electron/recorder/database/open.ts';
import { addLoader, freshFolder, openTestRecorder } from '../../support/test-recorder.ts';
import { startRecorder } from './start-recorder.ts';

/** A record with pages enough that one can be spoilt which nobody reads at the start. */
const closedRecord = async (): Promise<string> => {
  const bench = openTestRecorder();
  const { visitId } = await addLoader(bench);
  for (let number = 1; number <= 60; number += 1) {
    await bench.call('finding.add', { visitId, kind: 'condition', words: `worn part ${number} `.repeat(40) });
  }
  await bench.recorder.close();
  return bench.dataFolder;
};

/** Overwrites the last page of a table's own tree with what no page may begin with. */
const spoil = (dataFolder: string, table: string): void => {
  const file = databaseFile(dataFolder);
  const sqlite = new Database(file, { readonly: true });
  const pageSize = sqlite.pragma('page_size', { simple: true }) as number;
  const { last } = sqlite
    .prepare(`SELECT max(pageno) AS last FROM dbstat WHERE name = ? AND pagetype = 'leaf'`)
    .get(table) as { last: number };
  sqlite.close();
  const handle = openSync(file, 'r+');
  writeSync(handle, Buffer.alloc(pageSize, 0xee), 0, pageSize, (last - 1) * pageSize);
  closeSync(handle);
};

describe('the check after the start', () => {
  it('goes on in a thread of its own: calls made meanwhile are answered first', async () => {
    const bench = openTestRecorder();
    const { visitId } = await addLoader(bench);
    const order: string[] = [];
    const check = damageBeside(bench.dataFolder).then((damage) => order.push(`checked: ${damage}`));
    await bench.call('finding.add', { visitId, kind: 'condition', words: 'found meanwhile' });
    order.push('saved');
    await bench.call('visit.get', { id: visitId });
    order.push('read');
    await check;
    expect(order).toEqual(['saved', 'read', 'checked: null']);
  });

  it('finds a spoilt page, by the same words as the whole check', async () => {
    const dataFolder = await closedRecord();
    expect(await damageBeside(dataFolder)).toBeNull();
    spoil(dataFolder, 'journal');
    const found = await damageBeside(dataFolder);
    expect(found).toMatch(/invalid page number|btree|page|malformed/i);
    expect(found).toBe(damageIn(dataFolder, 'quick_check'));
  });

  it('says why it could not be made', async () => {
    await expect(damageBeside(freshFolder())).rejects.toThrow();
  });

  it('tells the window; what does not need the page goes on, what does is refused by name', async () => {
    const dataFolder = await closedRecord();
    spoil(dataFolder, 'journal');
    const child = await startRecorder(dataFolder);
    expect(await child.call('app.state', {})).toMatchObject({ damage: null });
    await expect(child.call('machine.floor', {})).rejects.toThrow('folder-damaged');
    const told = await child.event(({ event }) => event === 'damage');
    expect(told).toEqual({ event: 'damage', what: damageIn(dataFolder, 'quick_check') });
    expect(await child.call('app.state', {})).toMatchObject({ damage: Reflect.get(told, 'what') });
  });
});
