/**
 * How fast a change is kept, and how fast a large record answers:
 *
 * - a saved field with its journal entry, beside a bare commit of as many bytes on the same disk, in turns;
 * - the floor of a shop with 1,000 machines of 8 findings each, and a visit with 60 findings, 200 shots and 500 marks,
 *   beside their rows read bare.
 *
 *   node tests/bench/saving/run.ts
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { databaseFile } from '../../../electron/recorder/database/open.ts';
import { openRecorder, type Recorder } from '../../../electron/recorder/open-recorder.ts';
import { type Figure, inTurns, printFigure, timed } from '../ratio.ts';
import { openBareCommit } from './bare-commit.ts';
import { addLargeVisit, addMachines } from './large-record.ts';
import { openUnsynced } from './unsynced-recorder.ts';

const shop = { machines: 1000, findingsEach: 8 };
const largeVisit = { findings: 60, shots: 200, marks: 500 };
const saves = 300;
const readings = 15;

const saveFigure = async (recorder: Recorder, folder: string, visitId: string): Promise<Figure> => {
  const { findings } = await recorder.call('visit.get', { id: visitId });
  const [finding] = findings;
  if (!finding) throw new Error('the visit has no finding');
  const bare = openBareCommit(folder);
  let count = 0;
  try {
    const { oursMs, floorMs } = await inTurns(
      saves,
      () =>
        timed(() => {
          count += 1;
          return recorder.call('finding.change', { id: finding.id, words: `seen again, time ${count}` });
        }),
      () => timed(bare.commit),
    );
    return { what: 'a saved field with its journal entry', oursMs, floorMs, floor: 'a bare commit', target: 3 };
  } finally {
    bare.close();
  }
};

/** Rows of these tables, each read whole by the driver alone. */
const readBare = (sqlite: Database.Database, queries: readonly string[], ...parameters: readonly string[]) => {
  const statements = queries.map((query) => sqlite.prepare(query));
  return () => {
    for (const statement of statements) statement.all(...parameters);
  };
};

const figures = async (folder: string): Promise<Figure[]> => {
  const dataFolder = join(folder, 'record');
  const filling = await openUnsynced(dataFolder);
  const began = performance.now();
  await addMachines(filling, shop);
  const visitId = await addLargeVisit(filling, largeVisit);
  filling.close();
  console.log(`filled in ${((performance.now() - began) / 1000).toFixed(0)} s`);

  const recorder = openRecorder({ dataFolder, program: 'bench' });
  const sqlite = new Database(databaseFile(dataFolder), { readonly: true });
  try {
    const floorRows = readBare(
      sqlite,
      ['machine', 'layout', 'meter', 'visit', 'scope_item', 'finding', 'finding_location', 'ownership', 'owner'].map(
        (table) => `SELECT * FROM ${table}`,
      ),
    );
    const visitRows = readBare(
      sqlite,
      [
        'SELECT * FROM finding WHERE visit_id = ?',
        'SELECT * FROM shot JOIN original USING (digest) WHERE visit_id = ?',
        'SELECT mark.* FROM mark JOIN shot ON shot.id = mark.shot_id WHERE visit_id = ?',
      ],
      visitId,
    );
    const against = async (what: string, ours: () => unknown, floor: () => void, target: number): Promise<Figure> => ({
      what,
      floor: 'its rows read bare',
      target,
      ...(await inTurns(
        readings,
        () => timed(ours),
        () => timed(floor),
      )),
    });
    return [
      await saveFigure(recorder, folder, visitId),
      await against('the whole floor', () => recorder.call('machine.floor', {}), floorRows, 12),
      await against('the floor as it opens', () => recorder.call('machine.floor', { most: 60 }), floorRows, 1),
      await against('a large visit', () => recorder.call('visit.get', { id: visitId }), visitRows, 8),
    ];
  } finally {
    sqlite.close();
    await recorder.close();
  }
};

const folder = mkdtempSync(join(tmpdir(), 'bench-saving-'));
try {
  for (const figure of await figures(folder)) printFigure(figure);
  console.log(
    `load ${loadavg()
      .map((value) => value.toFixed(1))
      .join(' ')}`,
  );
} finally {
  rmSync(folder, { recursive: true, force: true });
}
