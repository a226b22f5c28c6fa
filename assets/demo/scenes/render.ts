/**
 * Renders the demo's photos and writes the truth beside each.
 *
 *   node assets/demo/scenes/render.ts NAME...   one or more scenes
 *   node assets/demo/scenes/render.ts all       every scene
 *   options: --preview (a quarter of the size, into the system's temporary folder), --truth-only, --threads N, --samples N
 */
import { mkdir, writeFile } from 'node:fs/promises';
import { setPriority, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { Worker } from 'node:worker_threads';
import sharp from 'sharp';
import { cameraOf } from './engine/camera.ts';
import { develop } from './engine/develop.ts';
import type { Scene } from './engine/scene.ts';
import { truthOf } from './engine/truth.ts';
import { sceneNamed, sceneNames } from './subjects/index.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    preview: { type: 'boolean', default: false },
    'truth-only': { type: 'boolean', default: false },
    threads: { type: 'string', default: '2' },
    samples: { type: 'string' },
    scale: { type: 'string' },
  },
});
// Others may be working on the same machine.
setPriority(0, 4);
const names = positionals.includes('all') ? sceneNames : positionals;
if (names.length === 0) {
  console.error(`Name a scene: ${sceneNames.join(', ')}, or all.`);
  process.exit(2);
}

const photos = join(import.meta.dirname, '..', 'photos');
const scale = values.scale ? Number(values.scale) : values.preview ? 0.34 : 1;
const samples = values.samples ? Number(values.samples) : values.preview ? 1 : 4;

async function light(scene: Scene, width: number, height: number): Promise<Float32Array> {
  const picture = new SharedArrayBuffer(width * height * 3 * 4);
  const counter = new SharedArrayBuffer(4);
  const workerData = { name: scene.name, scale, samples, picture, counter };
  await Promise.all(
    Array.from({ length: Number(values.threads) }, () =>
      new Promise<void>((resolve, reject) => {
        const worker = new Worker(new URL('./render-rows.ts', import.meta.url), { workerData });
        worker.on('error', reject);
        worker.on('exit', (code) => (code === 0 ? resolve() : reject(new Error(`worker stopped with ${code}`))));
      }),
    ),
  );
  return new Float32Array(picture);
}

for (const name of names) {
  const scene = await sceneNamed(name);
  const camera = cameraOf(scene.view, scale);
  const begun = performance.now();
  if (!values.preview) {
    await mkdir(photos, { recursive: true });
    await writeFile(join(photos, `${name}.truth.json`), `${JSON.stringify(truthOf(scene, camera), null, 1)}\n`);
  }
  if (values['truth-only']) continue;
  const linear = await light(scene, camera.width, camera.height);
  const bytes = develop(linear, camera.width, camera.height, scene);
  let image = sharp(bytes, { raw: { width: camera.width, height: camera.height, channels: 3 } });
  if (values.preview) {
    await image.png().toFile(join(tmpdir(), `preview-${name}.png`));
  } else {
    if (scene.orientation === 6) image = sharp(await image.rotate(270).raw().toBuffer(), { raw: { width: camera.height, height: camera.width, channels: 3 } });
    await image
      .jpeg({ quality: 84, chromaSubsampling: '4:2:0', mozjpeg: true })
      .withExif({
        IFD0: { Make: 'Bench phone', Model: 'Bench phone', Orientation: String(scene.orientation), Software: 'rendered scene' },
        IFD2: { DateTimeOriginal: scene.takenAt, OffsetTimeOriginal: scene.offset },
      })
      .withMetadata({ orientation: scene.orientation })
      .toFile(join(photos, `${name}.jpg`));
  }
  console.log(`${name}: ${camera.width} x ${camera.height}, ${((performance.now() - begun) / 1000).toFixed(0)} s`);
}
