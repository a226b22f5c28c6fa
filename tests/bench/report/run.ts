/**
 * A report of 60 findings and 120 photos: ours, from the record to the sealed-ready PDF/A, beside the same photos and as
 * many words set by the same typesetter with a template of a few lines. Each side runs in a process of its own, cold (its
 * first report) and warm, in turns. Beside them the first print of a recorder that has shown the preview, as the window has.
 *
 *   npm run bench -- report
 */
import { fork } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { runRecorder } from '../../recorder/durability/recorder-child.ts';
import { printFigure } from '../ratio.ts';
import { makeLongVisit } from '../typesetting/long-visit.ts';

const findings = 60;
const photosEach = 2;
const rounds = Number(process.argv[2] ?? 7);

interface Side {
  run(): Promise<number>;
  close(): Promise<unknown>;
}

const record = (folder: string): string => join(folder, 'record');

/** Ours: the recorder as the shell runs it. */
const ours = async (folder: string, visitId: string): Promise<Side & { preview(): Promise<unknown> }> => {
  const child = await runRecorder(record(folder));
  let count = 0;
  return {
    preview: () => child.call('report.preview', { visitId }),
    run: async () => {
      count += 1;
      const token = `print ${count}`;
      child.send({ kind: 'offer', offer: { token, path: join(folder, `${token}.pdf`), for: 'write' } });
      const began = performance.now();
      await child.call('report.print', { visitId, token });
      return performance.now() - began;
    },
    close: () => {
      child.process.disconnect();
      return child.ended;
    },
  };
};

/** The floor: the typesetter alone, on the very pictures that ours prints. */
const bare = async (folder: string): Promise<Side> => {
  const child = fork(join(import.meta.dirname, 'bare-typesetting.ts'), [folder, String(findings), String(photosEach)]);
  const next = (): Promise<number> =>
    new Promise((resolve, reject) => {
      child.once('message', (took: number) => resolve(took));
      child.once('exit', () => reject(new Error('the bare typesetter ended')));
    });
  await next();
  return {
    run: () => {
      const answer = next();
      child.send('run');
      return answer;
    },
    close: async () => child.disconnect(),
  };
};

const folder = mkdtempSync(join(tmpdir(), 'bench-report-'));
// As the shell runs the recorder: code that was compiled once is not compiled again, on either side.
process.env.NODE_COMPILE_CACHE = join(folder, 'compiled');
try {
  const filling = await runRecorder(record(folder));
  const visitId = await makeLongVisit(filling, folder, findings, photosEach);
  filling.process.disconnect();
  await filling.ended;
  const cold: { oursMs: number[]; floorMs: number[] } = { oursMs: [], floorMs: [] };
  const warm: { oursMs: number[]; floorMs: number[] } = { oursMs: [], floorMs: [] };
  const previewedMs: number[] = [];
  // The first round compiles, on both sides, and does not count.
  for (let round = -1; round < rounds; round += 1) {
    const sides = { oursMs: await ours(folder, visitId), floorMs: await bare(folder) };
    const order = round % 2 === 0 ? (['oursMs', 'floorMs'] as const) : (['floorMs', 'oursMs'] as const);
    for (const times of [cold, warm]) {
      for (const side of order) {
        const tookMs = await sides[side].run();
        if (round >= 0) times[side].push(tookMs);
      }
    }
    await Promise.all([sides.oursMs.close(), sides.floorMs.close()]);
    const shown = await ours(folder, visitId);
    await shown.preview();
    const tookMs = await shown.run();
    if (round >= 0) previewedMs.push(tookMs);
    await shown.close();
  }
  console.log(
    `load ${loadavg()
      .map((value) => value.toFixed(1))
      .join(' ')}; ${readdirSync(folder).length} files`,
  );
  const what = `a report of ${findings} findings and ${findings * photosEach} photos`;
  printFigure({ what: `${what}, warm`, ...warm, floor: 'bare typesetting', target: 1.5 });
  printFigure({ what: `${what}, the first of a run`, ...cold, floor: 'bare typesetting', target: 1.5 });
  const previewed = { oursMs: previewedMs, floorMs: cold.floorMs };
  printFigure({ what: `${what}, the first after its preview`, ...previewed, floor: 'bare typesetting', target: 1.5 });
} finally {
  rmSync(folder, { recursive: true, force: true });
}
