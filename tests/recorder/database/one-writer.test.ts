import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { readMigrations } from '../../../electron/recorder/database/migrate.ts';
import { databaseFile } from '../../../electron/recorder/database/open.ts';
import { openRecorder } from '../../../electron/recorder/open-recorder.ts';
import { addLoader, freshFolder, openTestRecorder } from '../../support/test-recorder.ts';

describe('a data folder', () => {
  it('has one writer: a second is refused with the name of the first', () => {
    const { dataFolder } = openTestRecorder();
    expect(() => openRecorder({ dataFolder, program: 'second' })).toThrow(/folder-held.*"holder":"tests"/);
  });

  it('can be read beside its writer, and a change is refused there', async () => {
    const test = openTestRecorder();
    const { machineId } = await addLoader(test);
    const reader = openRecorder({ dataFolder: test.dataFolder, program: 'reader', readOnly: true });
    try {
      const floor = await reader.call('machine.floor', {});
      expect(floor.map(({ machine }) => machine.id)).toEqual([machineId]);
      await expect(reader.call('person.add', { name: 'X', trade: '' })).rejects.toThrow();
      expect((await test.call('app.state', {})).people).toEqual([]);
    } finally {
      await reader.close();
    }
  });

  it('is free again however its holder ends', async () => {
    const dataFolder = freshFolder();
    const child = spawn(
      process.execPath,
      [
        '-e',
        `import(${JSON.stringify(join(import.meta.dirname, '../../../electron/recorder/open-recorder.ts'))}).then(({ openRecorder }) => { openRecorder({ dataFolder: ${JSON.stringify(dataFolder)}, program: 'killed' }); console.log('held'); setInterval(() => {}, 1000); })`,
      ],
      { stdio: ['ignore', 'pipe', 'inherit'] },
    );
    await once(child.stdout, 'data');
    expect(() => openRecorder({ dataFolder, program: 'early' })).toThrow(/folder-held.*killed/);
    child.kill('SIGKILL');
    await once(child, 'exit');
    const recorder = openRecorder({ dataFolder, program: 'late' });
    await recorder.close();
  });

  it('written by a newer program is refused by name and left as it is', () => {
    const dataFolder = freshFolder();
    const known = readMigrations().length;
    const newer = new Database(databaseFile(dataFolder));
    newer.pragma(`user_version = ${known + 1}`);
    newer.close();
    expect(() => openRecorder({ dataFolder, program: 'older' })).toThrow(/folder-newer/);
    const after = new Database(databaseFile(dataFolder));
    expect(after.pragma('user_version', { simple: true })).toBe(known + 1);
    after.close();
  });

  it('that holds something else than a record is refused as damaged', async () => {
    const dataFolder = freshFolder();
    const { writeFileSync } = await import('node:fs');
    writeFileSync(databaseFile(dataFolder), 'this is no database, but it is longer than a header would be '.repeat(40));
    expect(() => openRecorder({ dataFolder, program: 'tests' })).toThrow(/folder-damaged/);
  });
});
