/**
 * How often the stated uncertainty holds the true length, for each way of calibrating and class by class, over more photos
 * than the tests draw. `WITNESS_MARK_SEED` repeats a run, `WITNESS_MARK_VIEWS` says how many photos a way (4,000).
 */
import { heldByClass } from '../../reference/shared-lib/calibration/held.ts';
import { simulate, simulateCard } from '../../reference/shared-lib/calibration/simulated-photos.ts';
import { seeded } from '../../reference/shared-lib/tracing/drawn-surface.ts';

const seed = Number(process.env.WITNESS_MARK_SEED ?? 70_000);
const photos = Number(process.env.WITNESS_MARK_VIEWS ?? 4000);

console.log(`${photos} photos a way, seed ${seed}; wanted 93 to 97 %`);
for (const way of ['known-length', 'known-circle', 'known-points', 'card'] as const) {
  const random = seeded(seed);
  const { all, classes } = heldByClass(() => (way === 'card' ? simulateCard(random) : simulate(way, random)), photos);
  const parts = [...classes].map(([name, held]) => `${name} ${held.percent.toFixed(1)} % of ${held.photos}`).sort();
  console.log(
    `${way}: held ${all.percent.toFixed(1)} %, errors ${all.rmsErrors.toFixed(2)} u rms; ${parts.join(', ')}`,
  );
}
