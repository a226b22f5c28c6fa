/**
 * The app inside the spare runtime. A stock Electron carries a default app that runs the folder named on the command
 * line; the spare one does not, so this does the same: `electron [-r module] <app folder> [arguments]`.
 * The top-level await holds back `ready` until that app's own main module has run, as in a stock Electron.
 */
import { existsSync, readFileSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { app } from 'electron';

const { folder, preloaded } = readCommandLine(process.argv.slice(1));
if (folder === undefined) {
  console.error('usage: electron [-r module] <app folder> [arguments]');
  app.exit(2);
} else {
  try {
    await runApp(resolve(folder), preloaded);
  } catch (error) {
    console.error(error);
    app.exit(1);
  }
}

function readCommandLine(words) {
  const preloaded = [];
  for (let at = 0; at < words.length; at++) {
    if (words[at] === '-r' || words[at] === '--require') preloaded.push(resolve(words[++at]));
    else if (words[at].startsWith('--app=')) return { folder: words[at].slice('--app='.length), preloaded };
    else if (!words[at].startsWith('-')) return { folder: words[at], preloaded };
  }
  return { folder: undefined, preloaded };
}

async function runApp(folder, preloaded) {
  const require = createRequire(`${folder}/`);
  Object.defineProperty(process, 'defaultApp', { value: true, enumerable: true });
  for (const module of preloaded) require(module);
  const manifest = join(folder, 'package.json');
  if (existsSync(manifest)) {
    const { name, productName, version } = JSON.parse(readFileSync(manifest, 'utf8'));
    if (version) app.setVersion(version);
    if (productName ?? name) app.setName(productName ?? name);
  }
  app.setAppPath(statSync(folder).isDirectory() ? folder : dirname(folder));
  await import(pathToFileURL(require.resolve(folder)));
}
