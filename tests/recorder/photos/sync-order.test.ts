import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { digestOfFile, fixture, freshDataFolder } from './photo-room.ts';

const hasStrace = spawnSync('strace', ['-V'], { stdio: 'ignore' }).status === 0;

/** Calls in the order they ended, each as one line, whichever thread made them. */
const endedCalls = (trace: string): string[] => {
  const begun = new Map<string, string>();
  const ended: string[] = [];
  for (const line of trace.split('\n')) {
    const [, thread = '', call = ''] = /^(\d+)\s+(.*)$/.exec(line) ?? [];
    const resumed = /^<\.\.\. \w+ resumed>(.*)$/.exec(call);
    if (call.endsWith('<unfinished ...>')) begun.set(thread, call.slice(0, -'<unfinished ...>'.length));
    else if (resumed) ended.push(`${begun.get(thread)}${resumed[1]}`);
    else if (call !== '') ended.push(call);
  }
  return ended;
};

it.skipIf(!hasStrace)(
  'has the file synced, renamed, and its folder synced before it says so (skipped without strace)',
  () => {
    // A plain name: the tracer writes other letters as escapes.
    const dataFolder = join(freshDataFolder(), '..', `traced-photos-${process.pid}`);
    const source = fixture('gps.jpg');
    const trace = join(freshDataFolder(), 'trace');
    try {
      execFileSync('strace', [
        ...['-f', '-y', '-s', '300', '-e', 'trace=fsync,fdatasync,rename,renameat,renameat2,write', '-o', trace],
        ...[process.execPath, join(import.meta.dirname, 'take-one.ts'), dataFolder, source],
      ]);
      const digest = digestOfFile(source);
      const shelf = join(dataFolder, 'originals', digest.slice(0, 2));
      const calls = endedCalls(readFileSync(trace, 'utf8'));
      const place = (what: RegExp): number => calls.findIndex((call) => what.test(call) && / = (0|\d+)$/.test(call));
      const order = [
        place(new RegExp(`^f(data)?sync\\(\\d+<${dataFolder}/originals/incoming/[^>]+\\.part>`)),
        place(new RegExp(`^rename.*incoming/.*\\.part".*"${shelf}/${digest}"`)),
        place(new RegExp(`^fsync\\(\\d+<${shelf}>`)),
        calls.findLastIndex((call) => new RegExp(`^fsync\\(\\d+<${dataFolder}/originals>`).test(call)),
        place(/^write\(1<.*"taken in /),
      ];
      expect(order).not.toContain(-1);
      expect(order).toEqual(order.toSorted((a, b) => a - b));
      // Everything of the file was written before it was synced.
      const lastWrite = calls.findLastIndex((call) => /^write\(\d+<[^>]+\.part>/.test(call));
      expect(lastWrite).toBeLessThan(order[0] ?? -1);
    } finally {
      execFileSync('rm', ['-rf', dataFolder]);
    }
  },
);
