/**
 * What a Linux system must have for the window and for the tests, and how to get it: the one place where this stands.
 * As root on Debian the missing packages are installed; anyone else is told their names.
 *
 * `node electron/start/system-libraries.mjs` provides everything, before anything else of the project is installed.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Shared library of the Electron binary, by the Debian 12 package that holds it. */
const packageOfLibrary = {
  'libasound.so.2': 'libasound2',
  'libatk-1.0.so.0': 'libatk1.0-0',
  'libatk-bridge-2.0.so.0': 'libatk-bridge2.0-0',
  'libatspi.so.0': 'libatspi2.0-0',
  'libcairo.so.2': 'libcairo2',
  'libcups.so.2': 'libcups2',
  'libdbus-1.so.3': 'libdbus-1-3',
  'libdrm.so.2': 'libdrm2',
  'libexpat.so.1': 'libexpat1',
  'libgbm.so.1': 'libgbm1',
  'libgio-2.0.so.0': 'libglib2.0-0',
  'libglib-2.0.so.0': 'libglib2.0-0',
  'libgobject-2.0.so.0': 'libglib2.0-0',
  'libgtk-3.so.0': 'libgtk-3-0',
  'libnspr4.so': 'libnspr4',
  'libnss3.so': 'libnss3',
  'libnssutil3.so': 'libnss3',
  'libpango-1.0.so.0': 'libpango-1.0-0',
  'libsmime3.so': 'libnss3',
  'libudev.so.1': 'libudev1',
  'libX11.so.6': 'libx11-6',
  'libxcb.so.1': 'libxcb1',
  'libXcomposite.so.1': 'libxcomposite1',
  'libXdamage.so.1': 'libxdamage1',
  'libXext.so.6': 'libxext6',
  'libXfixes.so.3': 'libxfixes3',
  'libxkbcommon.so.0': 'libxkbcommon0',
  'libXrandr.so.2': 'libxrandr2',
};

/** Programs that the tests use: a display without a screen, and an independent reader of PDF. */
const packagesOfProgram = {
  'xvfb-run': ['xvfb', 'xauth'],
  pdftotext: ['poppler-utils'],
};

/** @returns {string[]} packages (or bare library names, where no package is known) that this binary lacks */
export function missingForBinary(binary) {
  if (process.platform !== 'linux') return [];
  const { stdout } = spawnSync('ldd', [binary], { encoding: 'utf8' });
  const absent = [...(stdout ?? '').matchAll(/^\s*(\S+) => not found/gm)].map(([, library]) => library);
  return unique(absent.map((library) => packageOfLibrary[library] ?? library));
}

/** The same before there is a binary to ask. */
function missingForAnyBinary() {
  // /sbin is not on everyone's path.
  const { stdout } = spawnSync('/sbin/ldconfig', ['-p'], { encoding: 'utf8' });
  const absent = Object.keys(packageOfLibrary).filter((library) => !stdout?.includes(`\t${library} `));
  return unique(absent.map((library) => packageOfLibrary[library]));
}

/** @returns {string[]} packages of the programs that the tests need and that are not on the path */
export function missingForTests() {
  if (process.platform !== 'linux') return [];
  const folders = (process.env.PATH ?? '').split(delimiter);
  const absent = Object.keys(packagesOfProgram).filter(
    (program) => !folders.some((folder) => existsSync(join(folder, program))),
  );
  return unique(absent.flatMap((program) => packagesOfProgram[program]));
}

/**
 * Installs the packages, or says which ones to install.
 * @returns {boolean} true when nothing is missing any more
 */
export function provide(packages) {
  if (packages.length === 0) return true;
  const isRoot = process.getuid?.() === 0;
  if (!isRoot || !existsSync('/usr/bin/apt-get')) {
    console.error(`This system lacks: ${packages.join(' ')}. On Debian: sudo apt-get install ${packages.join(' ')}`);
    return false;
  }
  console.error(`Installing what the system lacks: ${packages.join(' ')}`);
  const apt = (...words) =>
    spawnSync('apt-get', words, {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    }).status === 0;
  const isDone = apt('update', '-q') && apt('install', '-q', '-y', '--no-install-recommends', ...packages);
  if (!isDone) console.error(`apt-get could not install them all: ${packages.join(' ')}`);
  return isDone;
}

const unique = (names) => [...new Set(names)];

if (process.argv[1] && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  if (!provide([...missingForAnyBinary(), ...missingForTests()])) process.exitCode = 1;
}
