/**
 * Runs a script with the project's own Node, whatever Node the system has: `node electron/start/node.mjs SCRIPT [WORDS]`.
 *
 * The Node binaries are optional packages, one per platform, that all carry a `node` command. npm 10 and older take
 * that link away again together with the packages of the other platforms, so it is mended here: what npm runs
 * afterwards finds the right `node` first on its path.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

/** As the recorder's packages ask for. */
const oldest = [22, 14];
const project = resolve(import.meta.dirname, '../..');
const isWindows = process.platform === 'win32';

const [script, ...words] = process.argv.slice(2);
const binary = ownNode();
if (binary === undefined) {
  console.error('The Node that runs this program is not here: run npm ci first (without --omit=optional).');
  process.exitCode = 1;
} else {
  link(binary);
  if (isNewEnough()) await runHere(resolve(script));
  else await runWith(join(project, 'node_modules', binary));
}

/** @returns {string | undefined} below node_modules: of the carriers, only the one for this platform is installed */
function ownNode() {
  const { optionalDependencies } = JSON.parse(readFileSync(join(project, 'package.json'), 'utf8'));
  return Object.keys(optionalDependencies)
    .map((name) => join(name, 'bin', isWindows ? 'node.exe' : 'node'))
    .find((path) => existsSync(join(project, 'node_modules', path)));
}

function link(binary) {
  const commands = join(project, 'node_modules/.bin');
  const path = join(commands, isWindows ? 'node.cmd' : 'node');
  if (existsSync(path)) return;
  mkdirSync(commands, { recursive: true });
  if (isWindows) writeFileSync(path, `@"%~dp0\\..\\${binary}" %*\r\n`);
  else symlinkSync(join('..', binary), path);
}

function isNewEnough() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  return major > oldest[0] || (major === oldest[0] && minor >= oldest[1]);
}

async function runHere(script) {
  process.argv.splice(1, 2, script);
  await import(pathToFileURL(script).href);
}

function runWith(node) {
  const child = spawn(node, [script, ...words], { stdio: 'inherit' });
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal));
  return new Promise((ended) => {
    child.on('close', (code) => {
      process.exitCode = code ?? 1;
      ended();
    });
  });
}
