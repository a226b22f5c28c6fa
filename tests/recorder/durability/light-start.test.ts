import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { freshFolder } from '../../support/test-recorder.ts';

const script = join(import.meta.dirname, '../../../electron/recorder/main.ts');

/** Names every package that is loaded, before the recorder's own code. */
const listener = `
import { registerHooks } from 'node:module';
registerHooks({ load(url, context, next) {
  const [, name] = /node_modules\\/((?:@[^/]+\\/)?[^/]+)\\//.exec(url) ?? [];
  if (name) process.stderr.write('package ' + name + '\\n');
  return next(url, context);
} });`;

it('is ready without the libraries of photos, reports and seals: they are loaded when they are needed', async () => {
  const child = spawn(
    process.execPath,
    ['--import', `data:text/javascript,${encodeURIComponent(listener)}`, script, '--data', freshFolder()],
    { stdio: ['ignore', 'ignore', 'pipe', 'ipc'], serialization: 'advanced' },
  );
  let said = '';
  child.stderr?.on('data', (text) => {
    said += String(text);
  });
  await new Promise((resolve) => child.once('message', resolve));
  const ended = new Promise((resolve) => child.once('close', resolve));
  child.kill('SIGKILL');
  await ended;
  const packages = new Set([...said.matchAll(/^package (.+)$/gm)].map(([, name]) => name ?? ''));
  expect(packages).toContain('better-sqlite3');
  for (const heavy of [
    'sharp',
    'heic-decode',
    'libheif-js',
    '@myriaddreamin/typst-ts-node-compiler',
    'node-forge',
    '@signpdf/signpdf',
    'pdfjs-dist',
  ]) {
    expect(packages).not.toContain(heavy);
  }
});
