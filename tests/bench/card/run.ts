/**
 * The calibration card in drawn views, more of them than the tests take: how many are found, how far off the points are, how
 * long it takes; then every photograph there is, where none may be found. `WITNESS_MARK_SEED` repeats a run,
 * `WITNESS_MARK_VIEWS` says how many views at 2 and 3 megapixels (200; larger ones are fewer in proportion). Every miss
 * prints its seed.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { greyOf, readUprightPixels } from '../../../electron/recorder/measuring/pixels.ts';
import { type Outcome, summarise, tryView } from '../../support/calibration/card-run.ts';
import { countFalseFinds } from './false-finds.ts';

const folder = join(import.meta.dirname, '../../../assets/demo/photos');
const names = readdirSync(folder).filter((name) => name.endsWith('.jpg'));
const backgrounds = await Promise.all(names.map(async (name) => greyOf(await readUprightPixels(join(folder, name)))));
const first = Number(process.env.WITNESS_MARK_SEED ?? 50_000);
const views = Number(process.env.WITNESS_MARK_VIEWS ?? 200);

const sizes = [
  { name: '2 megapixels', share: 0.7, photo: { width: 1632, height: 1224 } },
  { name: '3 megapixels, upright', share: 0.3, photo: { width: 1536, height: 2048 } },
  { name: '12 megapixels', share: 0.32, photo: { width: 4000, height: 3000 } },
  { name: '24 megapixels', share: 0.1, photo: { width: 6000, height: 4000 } },
];

const all: Outcome[] = [];
for (const { name, share, photo } of sizes) {
  const outcomes = Array.from({ length: Math.max(1, Math.round(share * views)) }, (_, k) => {
    const seed = first + all.length + k;
    const background = backgrounds[seed % backgrounds.length];
    if (!background) throw new Error('no demo photo');
    return tryView(seed, photo, background);
  });
  all.push(...outcomes);
  const { foundPercent, medianPx, rmsPx, within95Px, worstPx, medianMs, worstMs } = summarise(outcomes);
  console.log(
    `${name}: ${outcomes.length} views, found ${foundPercent.toFixed(1)} %; points off by ${medianPx.toFixed(3)} px in the median, ${rmsPx.toFixed(3)} rms, ${within95Px.toFixed(2)} at 95 %, ${worstPx.toFixed(2)} at worst; ${medianMs.toFixed(0)} ms a photo, ${worstMs.toFixed(0)} at most`,
  );
}
console.log(`all: ${all.length} views from seed ${first}, found ${summarise(all).foundPercent.toFixed(2)} %`);
for (const { seed, view } of all.filter(({ isFound }) => !isFound))
  console.log(`missed, seed ${seed}: ${JSON.stringify({ ...view, face: view.face.name })}`);

const { photographs, looks, found } = await countFalseFinds();
console.log(`without a card: ${photographs} photographs, ${looks} looks, found ${found.length}`);
for (const name of found) console.log(`found what is not there: ${name}`);
