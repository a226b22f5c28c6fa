/**
 * `npm test`: every check there is, in order, from the cheapest to the real window. Nothing is left out because
 * something before it failed, except the window's tests when the window could not be built. The last line counts.
 */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { npmRun } from '../electron/start/build-when-stale.mjs';
import { missingForTests, provide } from '../electron/start/system-libraries.mjs';

const project = resolve(import.meta.dirname, '..');
const results = join(project, 'test-results');
rmSync(results, { recursive: true, force: true });
mkdirSync(results, { recursive: true });

// Poppler reads the reports that the recorder's tests make; the display is for the window's.
const isSystemReady = provide(missingForTests());

const steps = [];
step('types', () => asOneCheck(npmRun(project, ['run', '--silent', 'types'])));
step('lint and import arrows', () => asOneCheck(npmRun(project, ['run', '--silent', 'lint'])));
step('unit and reference', () => vitest('unit', 'reference'));
step('recorder and hostile', () => vitest('recorder', 'hostile'));
const isBuilt = step('build', () => asOneCheck(npmRun(project, ['run', '--silent', 'build'])));
if (isBuilt && isSystemReady) step('app', app);
else steps.push({ name: 'app', passed: 0, failed: 1, skipped: 0, seconds: 0, remark: 'could not be run' });

summarise();

function step(name, run) {
  console.log(`\n== ${name}`);
  const startedAtMs = Date.now();
  const counts = run();
  steps.push({ name, ...counts, seconds: (Date.now() - startedAtMs) / 1000 });
  return counts.failed === 0;
}

function asOneCheck({ status }) {
  return { passed: status === 0 ? 1 : 0, failed: status === 0 ? 0 : 1, skipped: 0 };
}

function vitest(...projects) {
  const file = join(results, `${projects.join('-')}.json`);
  const words = ['run', ...projects.flatMap((name) => ['--project', name]), '--reporter=default', '--reporter=json'];
  const vitestFile = join(project, 'node_modules/vitest/vitest.mjs');
  const { status } = spawnSync(process.execPath, [vitestFile, ...words, `--outputFile.json=${file}`], {
    cwd: project,
    stdio: 'inherit',
  });
  const report = readReport(file);
  return settled(status, {
    passed: report?.numPassedTests ?? 0,
    failed: report?.numFailedTests ?? 0,
    skipped: (report?.numPendingTests ?? 0) + (report?.numTodoTests ?? 0),
  });
}

function app() {
  const { status } = spawnSync(process.execPath, [join(project, 'electron/start/test-app.mjs')], {
    cwd: project,
    stdio: 'inherit',
  });
  const stats = readReport(join(results, 'app.json'))?.stats;
  return settled(status, {
    passed: stats?.expected ?? 0,
    failed: (stats?.unexpected ?? 0) + (stats?.flaky ?? 0),
    skipped: stats?.skipped ?? 0,
  });
}

/** A runner that failed without naming a test, for instance because a file did not load, is a failure all the same. */
function settled(status, counts) {
  return status !== 0 && counts.failed === 0 ? { ...counts, failed: 1 } : counts;
}

function readReport(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    // The runner ended before it could write one; its exit code tells.
    return undefined;
  }
}

function summarise() {
  const total = (key) => steps.reduce((sum, counts) => sum + counts[key], 0);
  console.log('\n== summary');
  for (const { name, passed, failed, skipped, seconds, remark } of steps) {
    const counts = `${passed} passed, ${failed} failed, ${skipped} skipped`;
    console.log(`${name.padEnd(24)} ${counts}${remark ? ` (${remark})` : `, ${seconds.toFixed(0)} s`}`);
  }
  console.log(`${total('passed')} passed, ${total('failed')} failed, ${total('skipped')} skipped`);
  process.exitCode = total('failed') === 0 ? 0 : 1;
}
