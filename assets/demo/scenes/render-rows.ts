/** Renders rows of one scene, taken one by one from a shared counter, into a shared picture of linear light. */
import { parentPort, workerData } from 'node:worker_threads';
import { cameraOf } from './engine/camera.ts';
import { hash3 } from './engine/noise.ts';
import { Tracer } from './engine/shade.ts';
import { sceneNamed } from './subjects/index.ts';

interface Job {
  readonly name: string;
  readonly scale: number;
  readonly samples: number;
  readonly picture: SharedArrayBuffer;
  readonly counter: SharedArrayBuffer;
}

const job = workerData as Job;
const scene = await sceneNamed(job.name);
const camera = cameraOf(scene.view, job.scale);
const picture = new Float32Array(job.picture);
const counter = new Int32Array(job.counter);
const tracer = new Tracer(scene);
const { eye, right, down, forward } = camera;

/** How many samples this pixel gets: more where the first ones disagree (edges, fine texture, blur). */
function wanted(least: number, most: number, taken: number): number {
  if (taken < 2) return Math.min(2, job.samples);
  return most - least > 0.2 * (most + least) + 0.014 ? job.samples : 2;
}


for (;;) {
  const row = Atomics.add(counter, 0, 1);
  if (row >= camera.height) break;
  for (let column = 0; column < camera.width; column++) {
    let r = 0;
    let g = 0;
    let b = 0;
    let least = Number.POSITIVE_INFINITY;
    let most = 0;
    let taken = 0;
    const shiftX = hash3(column, row, 1, scene.seed);
    const shiftY = hash3(column, row, 2, scene.seed);
    while (taken < wanted(least, most, taken)) {
      const s = taken;
      // An even spread that can stop at any count (Roberts' R2 sequence), started at random in each pixel.
      const jx = ((shiftX + s * 0.7548776662466927) % 1) - 0.5;
      const jy = ((shiftY + s * 0.5698402909980532) % 1) - 0.5;
      const px = (column + jx - camera.cx) / camera.focalPx;
      const py = (row + jy - camera.cy) / camera.focalPx;
      // The sharp point of this pixel on the plane in focus; the ray starts somewhere on the lens and goes through it.
      const turn = 2 * Math.PI * ((shiftY + s * 0.6180339887498949) % 1);
      const away = scene.apertureMm * Math.sqrt((shiftX + s * 0.41421356) % 1);
      const lx = away * Math.cos(turn);
      const ly = away * Math.sin(turn);
      const cx = px * scene.focusMm - lx;
      const cy = py * scene.focusMm - ly;
      const cz = scene.focusMm;
      const l = 1 / Math.sqrt(cx * cx + cy * cy + cz * cz);
      tracer.trace(
        eye[0] + right[0] * lx + down[0] * ly,
        eye[1] + right[1] * lx + down[1] * ly,
        eye[2] + right[2] * lx + down[2] * ly,
        (right[0] * cx + down[0] * cy + forward[0] * cz) * l,
        (right[1] * cx + down[1] * cy + forward[1] * cz) * l,
        (right[2] * cx + down[2] * cy + forward[2] * cz) * l,
        true,
        scene.nearMm,
      );
      // A single glint must not outshine its pixel.
      const sr = Math.min(4, tracer.out[0] ?? 0);
      const sg = Math.min(4, tracer.out[1] ?? 0);
      const sb = Math.min(4, tracer.out[2] ?? 0);
      const bright = sr + sg + sb;
      if (bright < least) least = bright;
      if (bright > most) most = bright;
      r += sr;
      g += sg;
      b += sb;
      taken++;
    }
    const i = (row * camera.width + column) * 3;
    picture[i] = r / taken;
    picture[i + 1] = g / taken;
    picture[i + 2] = b / taken;
  }
}
parentPort?.postMessage('done');
