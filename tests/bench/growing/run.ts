/**
 * How well patches are grown, kind by kind, over more drawn patches and more taps than the tests see. A patch's outline is
 * exact. Time is of this thread, the drawn picture's reading included. `WITNESS_MARK_SEED` repeats a run,
 * `WITNESS_MARK_PATCHES` says how many patches a row (12).
 */
import { polygonArea } from '../../../shared-lib/geometry/plane.ts';
import { growArea } from '../../../shared-lib/growing/grow.ts';
import { lookAt } from '../../reference/shared-lib/growing/drawn-patch.ts';
import { apartPx, isHeld } from '../../reference/shared-lib/growing/off-by.ts';
import { patchesOf, rows } from './patches.ts';
import { tapsIn } from './taps.ts';

const seed = Number(process.env.WITNESS_MARK_SEED ?? 1);
const patches = Number(process.env.WITNESS_MARK_PATCHES ?? 12);

interface Case {
  readonly offPercent: number;
  readonly apart: number;
  readonly isHeld: boolean;
  readonly unsure: boolean;
  readonly ms: number;
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
const percent = (some: readonly unknown[], all: readonly unknown[]): string =>
  `${Math.round((100 * some.length) / Math.max(1, all.length))} %`;

console.log(`${patches} patches a row, from seed ${seed}, radius 30 to 110 px, tapped in five places each`);
const heads = ['found', 'area off', 'worst', 'border off', 'worst', 'held', 'doubted', 'wrong, sure', 'ms'];
console.log(['', ...heads].map((head, at) => (at === 0 ? head.padEnd(32) : head.padStart(12))).join(''));
for (const row of rows) {
  const found: Case[] = [];
  let tapped = 0;
  for (const patch of patchesOf(row, seed, patches)) {
    const look = lookAt(patch);
    for (const tap of tapsIn(patch)) {
      tapped += 1;
      const began = process.threadCpuUsage();
      const grown = growArea(look, patch.size, { points: [tap] });
      const { user, system } = process.threadCpuUsage(began);
      if (!grown) continue;
      const truth = polygonArea(patch.truth);
      found.push({
        offPercent: (100 * (grown.areaPx2 - truth)) / truth,
        apart: apartPx(patch.truth, grown.outline),
        isHeld: isHeld(grown, truth),
        unsure: grown.unsure,
        ms: (user + system) / 1000,
      });
    }
  }
  const sure = found.filter(({ unsure }) => !unsure);
  const worst = found.map(({ offPercent }) => offPercent).sort((a, b) => Math.abs(b) - Math.abs(a))[0] ?? Number.NaN;
  const wrong = sure.filter(({ offPercent }) => Math.abs(offPercent) > 15);
  const cells = [
    `${found.length} of ${tapped}`,
    `${mean(found.map(({ offPercent }) => offPercent)).toFixed(1)} %`,
    `${worst.toFixed(0)} %`,
    `${mean(found.map(({ apart }) => apart)).toFixed(2)} px`,
    `${Math.max(...found.map(({ apart }) => apart)).toFixed(1)} px`,
    percent(
      found.filter(({ isHeld: held }) => held),
      found,
    ),
    percent(
      found.filter(({ unsure }) => unsure),
      found,
    ),
    percent(wrong, found),
    median(found.map(({ ms }) => ms)).toFixed(0),
  ];
  console.log(row.name.padEnd(32) + cells.map((cell) => cell.padStart(12)).join(''));
}
