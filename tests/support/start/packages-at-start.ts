import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Photos, reports and seals: a start that loads one of these is a slow one. */
export const neededLater = [
  'sharp',
  'heic-decode',
  'libheif-js',
  '@myriaddreamin/typst-ts-node-compiler',
  'node-forge',
  '@signpdf/signpdf',
  'pdfjs-dist',
] as const;

/** Names every file that is loaded, before the recorder's own code. */
const listener = `
import { registerHooks } from 'node:module';
registerHooks({ load(url, context, next) {
  process.stderr.write('loads ' + url + '\\n');
  return next(url, context);
} });`;

/**
 * The packages that a recorder has loaded when it says that it is ready: by their own files, or by what a bundled file's
 * source map says it was made of.
 *
 * @param script  the recorder's first file, as it is written or as it is bundled
 */
export async function packagesAtStart(script: string, dataFolder: string): Promise<ReadonlySet<string>> {
  const child = spawn(
    process.execPath,
    ['--import', `data:text/javascript,${encodeURIComponent(listener)}`, script, '--data', dataFolder],
    { stdio: ['ignore', 'ignore', 'pipe', 'ipc'], serialization: 'advanced' },
  );
  let said = '';
  child.stderr?.on('data', (text) => {
    said += String(text);
  });
  const ended = new Promise((resolve) => child.once('close', resolve));
  await Promise.race([new Promise((resolve) => child.once('message', resolve)), ended]);
  child.kill('SIGKILL');
  await ended;
  const files = [...said.matchAll(/^loads (file:.+)$/gm)].flatMap(([, url]) => sourcesOf(fileURLToPath(url ?? '')));
  return new Set(files.flatMap((file) => /node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(file)?.[1] ?? []));
}

/** What a file was made of: itself, where it has no source map. */
function sourcesOf(file: string): readonly string[] {
  if (file.includes('/node_modules/') || !existsSync(`${file}.map`)) return [file];
  const { sources }: { sources: readonly string[] } = JSON.parse(readFileSync(`${file}.map`, 'utf8'));
  return sources;
}
