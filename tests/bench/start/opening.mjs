/**
 * From the start of the process: an Electron app of one empty window to did-finish-load, and ours, on a folder of 1,000
 * machines, until the first rows of the floor are drawn and a key stands in the search. In turns, so that a busy machine
 * treats both alike; the first round fills caches on both sides and does not count. Each run is asked to end as soon as it
 * is there, which is late enough for the compiled code of the first screen to be kept.
 *
 * `npm run bench -- start`
 */
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { buildWhenStale } from '../../../electron/start/build-when-stale.mjs';
import { electronRuntime } from '../../../electron/start/electron-runtime.mjs';
import { printFigure, quantile } from '../ratio.ts';
import { addMachines } from '../saving/large-record.ts';
import { openUnsynced } from '../saving/unsynced-recorder.ts';

const rounds = Number(process.argv[2] ?? 9);
const machines = 1000;
const project = resolve(import.meta.dirname, '../../..');
const announce = join(import.meta.dirname, 'announce.cjs');
const workshop = mkdtempSync(join(tmpdir(), 'opening '));
buildWhenStale(project);
const { path: electron, version } = await electronRuntime();

const empty = join(workshop, 'empty app');
mkdirSync(empty);
writeFileSync(join(empty, 'package.json'), '{"name":"empty","type":"module","main":"main.mjs"}');
writeFileSync(
  join(empty, 'main.mjs'),
  "import { app, BrowserWindow } from 'electron';\napp.whenReady().then(() => new BrowserWindow().loadURL('about:blank'));\n",
);
const folder = join(workshop, 'record');
const filling = await openUnsynced(folder);
await filling.call('app.begin', { with: 'empty' });
await addMachines(filling, { machines, findingsEach: 3 });
filling.close();

try {
  const floorMs = [];
  const ours = [];
  for (let round = -1; round < rounds; round += 1) {
    const bare = await opening(empty, [], 'loaded');
    const own = await opening(project, ['--data', folder], 'usable');
    if (round < 0) continue;
    floorMs.push(bare.loaded);
    ours.push(own);
  }
  const oursMs = ours.map(({ usable }) => usable);
  console.log(
    `Electron ${version}, load ${loadavg()
      .map((value) => value.toFixed(1))
      .join(' ')}`,
  );
  for (const mark of ['loaded', 'drawn']) {
    console.log(
      `ours ${mark}: ${quantile(
        ours.map((each) => each[mark]),
        0.5,
      )} ms`,
    );
  }
  printFigure({
    what: `start until the first rows of ${machines} machines are drawn and the search takes a key`,
    oursMs,
    floorMs,
    floor: 'an empty window',
    target: 2,
  });
} finally {
  rmSync(workshop, { recursive: true, force: true, maxRetries: 5 });
}

/** Milliseconds from the start to each announcement, up to the last one waited for. */
function opening(app, words, last) {
  const startedAtMs = Date.now();
  const root = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const child = spawn(electron, ['-r', announce, app, ...root, ...words], {
    stdio: ['ignore', 'pipe', 'ignore'],
    env: { ...process.env, XDG_CONFIG_HOME: join(workshop, 'settings') },
  });
  const at = {};
  return new Promise((done, failed) => {
    const patience = setTimeout(() => child.kill('SIGKILL'), 60_000);
    child.stdout.on('data', (text) => {
      for (const [, what, time] of String(text).matchAll(/(loaded|drawn|usable) (\d+)/g))
        at[what] = Number(time) - startedAtMs;
      if (at[last] !== undefined) child.kill();
    });
    child.on('error', failed);
    child.on('close', () => {
      clearTimeout(patience);
      if (at[last] === undefined) failed(new Error(`${app} did not get to '${last}'`));
      else done(at);
    });
  });
}
