/**
 * From the start of the process to did-finish-load: an Electron app of one empty window, and ours on a fresh folder,
 * taken in turns so that a busy machine treats both alike. Medians of seven, in milliseconds.
 *
 * `npm run build && xvfb-run -a node tests/bench/start/opening.mjs`
 */
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { electronRuntime } from '../../../electron/start/electron-runtime.mjs';

const rounds = 7;
const project = resolve(import.meta.dirname, '../../..');
const announce = join(import.meta.dirname, 'announce-load.cjs');
const workshop = mkdtempSync(join(tmpdir(), 'opening '));
const { path: electron, version } = await electronRuntime();

const empty = join(workshop, 'empty app');
mkdirSync(empty);
writeFileSync(join(empty, 'package.json'), '{"name":"empty","type":"module","main":"main.mjs"}');
writeFileSync(
  join(empty, 'main.mjs'),
  "import { app, BrowserWindow } from 'electron';\napp.whenReady().then(() => new BrowserWindow().loadURL('about:blank'));\n",
);

try {
  const taken = { empty: [], ours: [] };
  for (let round = 0; round < rounds; round++) {
    taken.empty.push(await openingMs(empty, []));
    taken.ours.push(await openingMs(project, ['--data', join(workshop, `record ${round}`)]));
  }
  const line = { electron: version, emptyMs: median(taken.empty), oursMs: median(taken.ours), taken };
  console.log(JSON.stringify(line, null, 2));
} finally {
  rmSync(workshop, { recursive: true, force: true, maxRetries: 5 });
}

function openingMs(app, words) {
  const startedAtMs = Date.now();
  const root = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const child = spawn(electron, ['-r', announce, app, ...root, ...words], {
    stdio: ['ignore', 'pipe', 'ignore'],
    env: { ...process.env, XDG_CONFIG_HOME: join(workshop, 'settings') },
  });
  return new Promise((done, failed) => {
    let loadedAtMs = 0;
    child.stdout.on('data', (text) => {
      const [, at] = /loaded (\d+)/.exec(String(text)) ?? [];
      if (at === undefined) return;
      loadedAtMs = Number(at);
      child.kill();
    });
    child.on('error', failed);
    child.on('close', () => (loadedAtMs ? done(loadedAtMs - startedAtMs) : failed(new Error(`${app} did not load`))));
  });
}

function median(values) {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];
}
