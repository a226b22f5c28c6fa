/**
 * `npm run bench`: every figure, one script after the other, each beside its own floor in the same run. Words after `--`
 * choose some of them: `npm run bench -- search saving`. Figures, not verdicts: a busy machine blurs them.
 */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

interface Bench {
  readonly name: string;
  readonly script: string;
  /** Opens a window or a browser, so it needs a display. */
  readonly display?: true;
}

const benches: readonly Bench[] = [
  { name: 'search', script: 'search/run.ts' },
  { name: 'saving', script: 'saving/run.ts' },
  { name: 'sheets', script: 'sheets/time-sheets.ts' },
  { name: 'photos', script: 'photos/run.ts' },
  { name: 'tracing', script: 'tracing/evaluate.ts' },
  { name: 'variations', script: 'tracing/variations.ts' },
  { name: 'growing', script: 'growing/run.ts' },
  { name: 'uncertainty', script: 'uncertainty/run.ts' },
  { name: 'card', script: 'card/run.ts' },
  { name: 'typesetting', script: 'typesetting/run.ts' },
  { name: 'report', script: 'report/run.ts' },
  { name: 'start', script: 'start/opening.mjs', display: true },
  { name: 'stage', script: 'stage/run.ts', display: true },
];

const wanted = process.argv.slice(2);
const display = process.platform === 'linux' ? ['xvfb-run', '-a', '-s', '-screen 0 2048x1200x24'] : [];

for (const { name, script, display: needsDisplay } of benches) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  console.log(`\n== ${name}`);
  const command = [...(needsDisplay ? display : []), process.execPath, join(import.meta.dirname, script)];
  const [program = process.execPath, ...words] = command;
  const { status } = spawnSync(program, words, { stdio: 'inherit' });
  if (status !== 0) process.exitCode = 1;
}
