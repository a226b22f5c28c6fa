import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import { copiesFolder } from '../../../electron/recorder/backup/copies.ts';
import { migrate, readMigrations, schemaVersion } from '../../../electron/recorder/database/migrate.ts';
import { databaseFile } from '../../../electron/recorder/database/open.ts';
import type { Tables } from '../../../electron/recorder/database/tables.ts';
import { chainStart, firstBreak } from '../../../electron/recorder/journal/chain.ts';
import { openRecorder } from '../../../electron/recorder/open-recorder.ts';
import { loaderLayout } from '../../support/loader-layout.ts';
import { freshFolder } from '../../support/test-recorder.ts';

/** A folder as the first version wrote it: a machine, a visit and a finding, before there was a search. */
const firstVersion = (): string => {
  const dataFolder = join(freshFolder(), 'record');
  mkdirSync(dataFolder);
  onTestFinished(() => rmSync(copiesFolder(dataFolder), { recursive: true, force: true }));
  const sqlite = new Database(databaseFile(dataFolder));
  migrate(sqlite, readMigrations().slice(0, 1), () => {});
  const layout = JSON.stringify(loaderLayout).replaceAll("'", "''");
  sqlite.exec(`
    INSERT INTO shop VALUES (1, 'Old Shop', '', '', 'metric', 'a4', '+00:00', 1, NULL);
    INSERT INTO machine VALUES ('m', 'old loader', NULL, 'OL-7788', NULL, NULL, NULL, 1);
    INSERT INTO layout VALUES ('l', 'm', 1, '${layout}');
    INSERT INTO visit VALUES ('v', 'm', 'l', NULL, '2026-01-02', 'Smokes.', 0, 0, 1, 250, '{}', NULL, '', NULL, 0, NULL, 1, NULL);
    INSERT INTO finding (id, visit_id, number, kind, defect, words, state, methods, quantities, safety_judged, facts,
      if_left, watch_for, action_words, do_not_operate, do_not_run, loop_start, created_at_ms, binned)
      VALUES ('f', 'v', 1, 'condition', 'crack', 'porous web', 'suspected', '[]', '{}', 0, '[]', '', '', '', 0, 0, 0, 1, 0);
    INSERT INTO finding_location VALUES ('p', 'f', 0, 'ENG/HD.1');`);
  sqlite.close();
  return dataFolder;
};

describe('a folder of an older version', () => {
  it('is copied, brought up to date, and says all that it said; what is new works on it', async () => {
    const dataFolder = firstVersion();
    const recorder = openRecorder({ dataFolder, program: 'tests' });
    onTestFinished(() => recorder.close());
    const record = await recorder.call('visit.get', { id: 'v' });
    expect(record.findings).toMatchObject([{ id: 'f', words: 'porous web', locations: ['ENG/HD.1'] }]);
    expect((await recorder.call('machine.floor', { find: 'porous' })).map(({ machine }) => machine.id)).toEqual(['m']);
    expect((await recorder.call('machine.floor', { find: '778' })).map(({ machine }) => machine.id)).toEqual(['m']);
    await recorder.call('finding.change', { id: 'f', words: 'hairline' });
    expect(readdirSync(copiesFolder(dataFolder))).toEqual([expect.stringMatching(/^record before version 2, /)]);
  });

  it('keeps its journal entry by entry, in a chain that holds and that nobody changes', async () => {
    const dataFolder = join(freshFolder(), 'record');
    mkdirSync(dataFolder);
    onTestFinished(() => rmSync(copiesFolder(dataFolder), { recursive: true, force: true }));
    const sqlite = new Database(databaseFile(dataFolder));
    migrate(sqlite, readMigrations().slice(0, 11), () => {});
    sqlite.exec("INSERT INTO shop VALUES (1, 'Old Shop', '', '', 'metric', 'a4', '+00:00', 1, NULL, '')");
    const insert = sqlite.prepare(`
      INSERT INTO journal (seq, step_id, at_ms, zone_offset_min, person_id, window_id, visit_id, machine_id, operation,
        undoable, reverses, changes, previous_digest, digest)
      VALUES (@seq, 'step', 5, 120, NULL, 'w', NULL, 'm', 'machine.change', 1, NULL, '[]', @previous, @digest)`);
    let previous = chainStart;
    for (const seq of [1, 2, 3]) {
      // RFC 8785 for these values: keys in order, no spaces.
      const text = `{"at_ms":5,"changes":"[]","machine_id":"m","operation":"machine.change","person_id":null,"previous_digest":"${previous}","reverses":null,"seq":${seq},"step_id":"step","undoable":1,"visit_id":null,"window_id":"w","zone_offset_min":120}`;
      const digest = createHash('sha256').update(text).digest('hex');
      insert.run({ seq, previous, digest });
      previous = digest;
    }
    const before = sqlite.prepare('SELECT * FROM journal ORDER BY seq').all();
    sqlite.close();

    const recorder = openRecorder({ dataFolder, program: 'tests' });
    onTestFinished(() => recorder.close());
    const after = new Database(databaseFile(dataFolder));
    onTestFinished(() => void after.close());
    const entries = after.prepare('SELECT * FROM journal ORDER BY seq').all() as Tables['journal'][];
    expect(entries).toEqual(before);
    expect(firstBreak(entries)).toBeNull();
    for (const change of ['UPDATE journal SET at_ms = 0', 'DELETE FROM journal']) {
      expect(() => after.exec(change)).toThrow(/append-only/);
    }
    await recorder.call('person.add', { name: 'Ada Quill', trade: 'mechanic' });
    expect(firstBreak(after.prepare('SELECT * FROM journal ORDER BY seq').all() as Tables['journal'][])).toBeNull();
  });

  it('is not read beside a holder as if it were up to date', () => {
    const dataFolder = firstVersion();
    expect(() => openRecorder({ dataFolder, program: 'tests', readOnly: true })).toThrow(/folder-older/);
    expect(existsSync(copiesFolder(dataFolder))).toBe(false);
  });

  it('is left whole when a migration fails half way', () => {
    const dataFolder = firstVersion();
    const sqlite = new Database(databaseFile(dataFolder));
    const broken = [
      ...readMigrations().slice(0, 1),
      {
        version: 2,
        name: '0002-broken.sql',
        sql: 'CREATE TABLE half (id TEXT) STRICT; INSERT INTO nowhere VALUES (1);',
      },
    ];
    expect(() => migrate(sqlite, broken, () => {})).toThrow(/nowhere/);
    expect(schemaVersion(sqlite)).toBe(1);
    expect(sqlite.prepare("SELECT count(*) AS n FROM sqlite_master WHERE name = 'half'").get()).toEqual({ n: 0 });
    sqlite.close();
  });
});
