/**
 * Puts the project's own Node first on the path of its scripts, where npm has not done so. The Node binaries are
 * optional packages, one per platform, that all carry a `node` command; npm 10 and older take the link away again
 * with the packages of the other platforms.
 */
import { existsSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';

const project = resolve(import.meta.dirname, '../..');
const modules = join(project, 'node_modules');
const isWindows = process.platform === 'win32';
const link = join(modules, '.bin', isWindows ? 'node.cmd' : 'node');

const { optionalDependencies } = JSON.parse(readFileSync(join(project, 'package.json'), 'utf8'));
const binary = Object.keys(optionalDependencies)
  .map((name) => join(name, 'bin', isWindows ? 'node.exe' : 'node'))
  .find((path) => existsSync(join(modules, path)));

if (binary === undefined) {
  console.error(`No Node binary for ${process.platform}-${process.arch} was installed; the recorder cannot run here.`);
} else if (!existsSync(link)) {
  mkdirSync(join(modules, '.bin'), { recursive: true });
  if (isWindows) writeFileSync(link, `@"%~dp0\\..\\${binary}" %*\r\n`);
  else symlinkSync(join('..', binary), link);
}
