/** `npm run test:app`: Playwright on the real window. Words after `--` go to Playwright. */
import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { dirname, resolve } from 'node:path';
import { buildWhenStale } from './build-when-stale.mjs';
import { electronRuntime } from './electron-runtime.mjs';
import { missingForBinary, missingForTests, provide } from './system-libraries.mjs';

const project = resolve(import.meta.dirname, '../..');

try {
  process.exitCode = await test(process.argv.slice(2));
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}

async function test(words) {
  buildWhenStale(project);
  const runtime = await electronRuntime();
  if (runtime.spareBecause) console.error(`Testing on a spare Electron ${runtime.version}: ${runtime.spareBecause}.`);
  if (!provide([...missingForBinary(runtime.path), ...missingForTests()])) return 1;
  const playwright = createRequire(import.meta.url).resolve('@playwright/test/cli');
  const command = [process.execPath, playwright, 'test', ...words];
  // A display of its own, also where there is a screen: windows that take the focus disturb each other's tests.
  const display = process.platform === 'linux' ? ['xvfb-run', '-a', '-s', '-screen 0 2048x1200x24'] : [];
  const [program, ...rest] = [...display, ...command];
  const { status } = spawnSync(program, rest, {
    cwd: project,
    stdio: 'inherit',
    env: { ...process.env, ELECTRON_OVERRIDE_DIST_PATH: dirname(runtime.path) },
  });
  return status ?? 1;
}
