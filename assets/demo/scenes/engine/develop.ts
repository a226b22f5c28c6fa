/** From linear light to a picture as a bench phone would give it: fall-off, tone curve, sensor noise, a touch of sharpening. */
import { hash3, noise2 } from './noise.ts';
import type { Scene } from './scene.ts';

const curve = (v: number): number => {
  // A filmic shoulder (Narkowicz' fit, constants from memory), then the sRGB transfer.
  const c = Math.min(1, Math.max(0, (v * (2.51 * v + 0.03)) / (v * (2.43 * v + 0.59) + 0.14)));
  return c <= 0.0031308 ? c * 12.92 : 1.055 * Math.pow(c, 1 / 2.4) - 0.055;
};

export function develop(linear: Float32Array, width: number, height: number, scene: Scene): Uint8Array {
  const encoded = new Float32Array(width * height * 3);
  const half = Math.sqrt(width * width + height * height) / 2;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const r = Math.sqrt((x - width / 2) ** 2 + (y - height / 2) ** 2) / half;
      const fall = 1 - 0.42 * r * r;
      const i = (y * width + x) * 3;
      // Colour speckle is coarser than brightness speckle, as in a phone's own smoothing.
      const grain = (hash3(x, y, 11, scene.seed) + hash3(x, y, 12, scene.seed) + hash3(x, y, 13, scene.seed) - 1.5) * 0.9;
      for (let c = 0; c < 3; c++) {
        const light = (linear[i + c] ?? 0) * scene.exposure * fall;
        const tint = (noise2(x * 0.4, y * 0.4, scene.seed + 40 + c) - 0.5) * 0.8;
        const v = curve(light);
        encoded[i + c] = v + (grain + tint) * scene.noise * (0.35 + 0.9 * Math.sqrt(Math.max(0, v * (1 - v))));
      }
    }
  }
  const bytes = new Uint8Array(width * height * 3);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      for (let c = 0; c < 3; c++) {
        const at = (xx: number, yy: number): number =>
          encoded[(Math.min(height - 1, Math.max(0, yy)) * width + Math.min(width - 1, Math.max(0, xx))) * 3 + c] ?? 0;
        const v = at(x, y);
        const around = (at(x - 1, y) + at(x + 1, y) + at(x, y - 1) + at(x, y + 1)) / 4;
        bytes[(y * width + x) * 3 + c] = Math.max(0, Math.min(255, Math.round((v + (v - around) * 0.35) * 255)));
      }
    }
  }
  return bytes;
}
