import { spawnSync } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

const sources = ['renderer', 'electron/shell', 'electron/recorder', 'shared-lib', 'assets/fonts', 'package-lock.json'];
const results = ['dist/renderer/index.html', 'dist/shell/main.js', 'dist/shell/preload.cjs', 'dist/recorder/main.js'];

/** Builds the window, the shell and the recorder, unless they are newer than everything they are made of. */
export function buildWhenStale(project) {
  const built = Math.min(...results.map((file) => changedAtMs(join(project, file))));
  const changed = Math.max(...sources.map((name) => newestMs(join(project, name))));
  if (built > changed) return;
  console.error('Building the program (a few seconds).');
  const { status } = npmRun(project, ['run', '--silent', 'build']);
  if (status !== 0) throw new Error('The build failed.');
}

/** By the same npm that started this program, on every platform. */
export function npmRun(project, words) {
  const npm = process.env.npm_execpath;
  const [command, first] = npm ? [process.execPath, [npm]] : ['npm', []];
  return spawnSync(command, [...first, ...words], { cwd: project, stdio: 'inherit' });
}

function newestMs(path) {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (!stat?.isDirectory()) return stat?.mtimeMs ?? 0;
  const inside = readdirSync(path).map((name) => newestMs(join(path, name)));
  return Math.max(stat.mtimeMs, ...inside);
}

function changedAtMs(file) {
  return statSync(file, { throwIfNoEntry: false })?.mtimeMs ?? 0;
}
