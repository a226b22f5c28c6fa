/** Shared grounds: the steel bench top, old paint that flakes to rust, and the dim shop behind. */
import { fbm2, fbm3, mix, noise2, smooth } from './noise.ts';
import type { Surface } from './scene.ts';

/** Sheet-steel bench, dark with years of oil, scratched bright in places. */
export function benchTop(x: number, y: number, s: Surface): void {
  const cloud = fbm2(x * 0.014, y * 0.014, 5, 901);
  const fine = fbm2(x * 0.25, y * 0.25, 4, 902);
  const ring = smooth(1.6, 0.4, Math.abs(Math.sqrt((x - 92) ** 2 + (y + 64) ** 2) - 37 + noise2(x * 0.1, y * 0.1, 903) * 2)) * smooth(0.35, 0.55, fine + 0.1);
  const scratchA = smooth(0.83, 0.93, noise2(x * 0.016 + y * 0.004, y * 1.7 - x * 0.42, 904));
  const scratchB = smooth(0.86, 0.95, noise2(y * 0.02 - x * 0.006, x * 1.5 + y * 0.5, 905));
  const bright = Math.max(scratchA, scratchB) * smooth(0.38, 0.6, cloud);
  let v = mix(0.035, 0.11, cloud) * mix(0.8, 1.2, fine);
  v = mix(v, 0.32, bright * 0.6);
  const rust = smooth(0.6, 0.78, fbm2(x * 0.03 + 20, y * 0.03, 5, 906) + 0.1 * (fine - 0.5));
  s.r = mix(v, 0.062, rust * 0.7);
  s.g = mix(v * 0.98, 0.034, rust * 0.7);
  s.b = mix(v * 0.94, 0.019, rust * 0.7);
  s.r *= 1 - 0.5 * ring;
  s.g *= 1 - 0.5 * ring;
  s.b *= 1 - 0.5 * ring;
  s.metal = mix(0.45, 0.85, bright) * (1 - rust);
  s.rough = mix(0.5, 0.38, bright) + 0.3 * rust;
  s.relief = 0.5;
}
export const benchBump = (x: number, y: number): number => 0.12 * fbm2(x * 0.2, y * 0.2, 4, 902);

/** Old paint over steel: chalked, chipped to primer and rust. `wear` 0 to 1 says how much has gone. Returns how much paint is left at the point. */
export function oldPaint(x: number, y: number, z: number, colour: readonly [number, number, number], wear: number, s: Surface): number {
  const cloud = fbm3(x * 0.02, y * 0.02, z * 0.02, 5, 911);
  const fine = fbm3(x * 0.3, y * 0.3, z * 0.3, 4, 912);
  const chips = fbm3(x * 0.075, y * 0.075, z * 0.075, 6, 913) + 0.16 * (fine - 0.5);
  const edge = 0.72 - 0.34 * wear;
  const bare = smooth(edge, edge + 0.012, chips);
  const primer = smooth(edge - 0.022, edge - 0.012, chips) * (1 - bare);
  const chalk = mix(0.8, 1.18, cloud) * mix(0.92, 1.08, fine);
  let r = colour[0] * chalk;
  let g = colour[1] * chalk;
  let b = colour[2] * chalk;
  const dirt = smooth(0.45, 0.7, fbm3(x * 0.035 + 9, y * 0.035, z * 0.035, 5, 914));
  r = mix(r, 0.085, dirt * 0.55); g = mix(g, 0.07, dirt * 0.55); b = mix(b, 0.052, dirt * 0.55);
  r = mix(r, 0.3, primer * 0.6); g = mix(g, 0.24, primer * 0.6); b = mix(b, 0.2, primer * 0.6);
  const iron = smooth(0.35, 0.65, fine * 0.6 + 0.4 * fbm3(x * 0.12, y * 0.12, z * 0.12, 4, 916));
  r = mix(r, mix(0.04, 0.155, iron), bare); g = mix(g, mix(0.024, 0.068, iron), bare); b = mix(b, mix(0.016, 0.028, iron), bare);
  s.r = r; s.g = g; s.b = b;
  s.metal = 0;
  s.rough = mix(mix(0.42, 0.7, dirt), 0.88, bare);
  s.relief = 1;
  return 1 - bare;
}
export function paintBump(x: number, y: number, z: number, wear: number): number {
  const chips = fbm3(x * 0.075, y * 0.075, z * 0.075, 6, 913) + 0.16 * (fbm3(x * 0.3, y * 0.3, z * 0.3, 4, 912) - 0.5);
  const edge = 0.72 - 0.34 * wear;
  return -0.16 * smooth(edge - 0.006, edge + 0.006, chips) + 0.05 * fbm3(x * 0.6, y * 0.6, z * 0.6, 3, 915);
}

/** The shop out of focus behind the subject. */
export function backdrop(dx: number, dy: number, dz: number, out: Float64Array): void {
  const a = Math.atan2(dx, dy);
  const soft = fbm2(a * 3.4 + 5, dz * 4.2, 3, 921);
  const shelf = smooth(0.5, 0.72, noise2(a * 5, dz * 2.4, 922));
  const v = 0.022 + 0.1 * soft * soft + 0.07 * shelf;
  const warm = noise2(a * 2.2, dz * 2.2, 923);
  out[0] = v * mix(0.92, 1.2, warm);
  out[1] = v * mix(0.97, 1, warm);
  out[2] = v * mix(1.1, 0.8, warm);
}
