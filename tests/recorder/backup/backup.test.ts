import { existsSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import { takePaths } from '../../../electron/cli/take-paths.ts';
import { copiesFolder, daysToKeep } from '../../../electron/recorder/backup/copies.ts';
import { copyBeforeMigration } from '../../../electron/recorder/backup/daily-copy.ts';
import { verifyCopy } from '../../../electron/recorder/backup/verify-copy.ts';
import { backupFolder, restoreFolder } from '../../../electron/recorder/backup/whole-folder.ts';
import { databaseFile } from '../../../electron/recorder/database/open.ts';
import { openRecorder } from '../../../electron/recorder/open-recorder.ts';
import { addLoader, freshFolder, openTestRecorder } from '../../support/test-recorder.ts';

const photo = join(import.meta.dirname, '../../fixtures/photos/palette.png');

const withPhoto = async () => {
  const test = openTestRecorder(join(freshFolder(), 'record'));
  onTestFinished(() => rmSync(copiesFolder(test.dataFolder), { recursive: true, force: true }));
  const machine = await addLoader(test);
  const listeners: ((event: never) => void)[] = [];
  test.events.push = (...events) => {
    for (const event of events) for (const listener of listeners) listener(event as never);
    return 0;
  };
  await takePaths(
    { recorder: test.recorder, listen: (listener) => listeners.push(listener as never) },
    machine.visitId,
    [photo],
  );
  return { ...test, ...machine };
};

describe('a copy', () => {
  it('is made once a day beside the folder, checked, and says what the record says', async () => {
    const { recorder, dataFolder } = await withPhoto();
    expect(await recorder.copyDaily()).toBe(true);
    expect(await recorder.copyDaily()).toBe(false);
    const [name = ''] = readdirSync(copiesFolder(dataFolder));
    expect(name).toBe('record 2026-05-11.sqlite');
    const copy = verifyCopy(join(copiesFolder(dataFolder), name));
    expect(copy).toEqual(verifyCopy(databaseFile(dataFolder)));
    expect(copy.entries).toBeGreaterThan(2);
  });

  it('is made before a migration, and a damaged one is told', async () => {
    const { dataFolder } = await withPhoto();
    const sqlite = new Database(databaseFile(dataFolder));
    copyBeforeMigration(sqlite, dataFolder, Date.UTC(2026, 5, 1));
    sqlite.close();
    const [name = ''] = readdirSync(copiesFolder(dataFolder));
    expect(name).toMatch(/^record before version \d+, 2026-06-01T/);
    const file = join(copiesFolder(dataFolder), name);
    verifyCopy(file);
    writeFileSync(file, Buffer.alloc(4096, 7), { flag: 'r+' });
    expect(() => verifyCopy(file)).toThrow();
  });

  it('of the newest fourteen days and the first of each older month is kept', () => {
    const days = Array.from({ length: 90 }, (_, at) => new Date(Date.UTC(2026, 0, 1 + at)).toISOString().slice(0, 10));
    const kept = daysToKeep(days);
    expect(kept.size).toBe(14 + 3);
    expect([...kept].sort().slice(0, 3)).toEqual(['2026-01-01', '2026-02-01', '2026-03-01']);
  });
});

describe('a whole backup', () => {
  it('is taken while the folder is in use, and becomes a record again with every photo', async () => {
    const { dataFolder, call, machineId } = await withPhoto();
    const target = join(freshFolder(), 'kopie');
    const copied = await backupFolder(dataFolder, target);
    expect(copied).toMatchObject({ originals: 1 });
    await call('machine.change', { id: machineId, plate: { bay: 'after the backup' } });

    const again = join(freshFolder(), 'wieder da');
    expect(await restoreFolder(target, again)).toEqual(copied);
    const restored = openRecorder({ dataFolder: again, program: 'tests' });
    onTestFinished(() => restored.close());
    const [machine] = await restored.call('machine.floor', {});
    expect(machine).toMatchObject({ machine: { id: machineId }, shots: 1 });
    expect(machine?.machine.bay).toBeUndefined();
  });

  it('is refused where something lies already, and a lost photo is told by name', async () => {
    const { dataFolder } = await withPhoto();
    await expect(backupFolder(dataFolder, dataFolder)).rejects.toThrow('file-unwritable');
    const target = join(freshFolder(), 'copy');
    await backupFolder(dataFolder, target);
    rmSync(join(target, 'originals'), { recursive: true });
    const again = join(freshFolder(), 'again');
    await expect(restoreFolder(target, again)).rejects.toThrow('folder-damaged');
    expect(existsSync(again)).toBe(false);
    await expect(restoreFolder(join(target, 'nothing'), again)).rejects.toThrow('not-found');
  });
});
