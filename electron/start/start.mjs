/** `npm start`: everything between a fresh checkout and the open window. */
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { buildWhenStale } from './build-when-stale.mjs';
import { missingForBinary, provide } from './system-libraries.mjs';

const project = resolve(import.meta.dirname, '../..');

/** Chromium's complaints of a missing message bus or graphics card: the program uses neither. */
const isNoise = (line) => /:ERROR:(bus|object_proxy|viz_main_impl)\.cc/.test(line);

try {
  process.exitCode = await start(process.argv.slice(2));
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}

async function start(words) {
  if (!existsSync(join(project, 'node_modules/electron/package.json'))) throw new Error('Run npm ci first.');
  if (process.platform === 'linux' && !process.env.DISPLAY && !process.env.WAYLAND_DISPLAY) {
    throw new Error('There is no display here to open a window on; npm run wm -- --help shows the command line.');
  }
  buildWhenStale(project);
  // Loaded here: what it needs is there only after npm ci.
  const { electronRuntime } = await import('./electron-runtime.mjs');
  const runtime = await electronRuntime();
  if (runtime.spareBecause) {
    console.error(`Running on a spare Electron ${runtime.version}, for trying out only: ${runtime.spareBecause}.`);
  }
  if (!provide(missingForBinary(runtime.path))) return 1;
  return run(runtime.path, ['.', ...flags(), ...words]);
}

function flags() {
  if (process.getuid?.() !== 0) return [];
  console.error('Started as root, so the window runs without its sandbox; use an ordinary account for real work.');
  return ['--no-sandbox'];
}

function run(electron, words) {
  const child = spawn(electron, words, { cwd: project, stdio: ['ignore', 'inherit', 'pipe'] });
  createInterface({ input: child.stderr }).on('line', (line) => {
    if (!isNoise(line)) console.error(line);
  });
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal));
  return new Promise((ended, failed) => {
    child.on('error', failed);
    child.on('close', (code) => ended(code ?? 1));
  });
}
