import { oldPaint, paintBump } from '../engine/bench.ts';
import type { Vector } from '../engine/camera.ts';
import { fbm2, fbm3, mix, noise2, smooth } from '../engine/noise.ts';
import { type Scene, type Surface, shed } from '../engine/scene.ts';
import { box, capsule, extrude, length2, torus } from '../engine/solids.ts';
import { type Point, StrokeMap } from '../engine/strokes.ts';

/** Lift cylinder, axis z upward, viewer at y < 0: chromed rod of radius 22.5 above, gland at z = 0 and below, barrel under it. */
const rod = 22.5;

export function scene(): Scene {
  // Scores on the unrolled rod: along the girth a (0 at the front), along z.
  const scores: Point[][] = [
    [[-3.2, 26], [-3.0, 60], [-3.3, 96], [-3.1, 131]],
    [[-0.9, 34], [-1.1, 70], [-0.8, 112]],
    [[1.8, 41], [1.7, 66], [1.9, 88]],
    [[-5.6, 58], [-5.5, 104]],
  ];
  const lines = new StrokeMap(-14, 10, 12, 150, 24, 2, [
    { points: scores[0] ?? [], half: 0.34, halfEnd: 0.16 },
    { points: scores[1] ?? [], half: 0.22, halfEnd: 0.08 },
    { points: scores[2] ?? [], half: 0.13, halfEnd: 0.05 },
    { points: scores[3] ?? [], half: 0.1, halfEnd: 0.05 },
  ]);
  const runs = (a: number, z: number): number => {
    const ragged = (fbm2(a * 0.1, z * 0.045, 4, 704) - 0.5) * 26;
    const front = smooth(21, 13, Math.abs(a + 2 + (noise2(z * 0.03, 0, 701) - 0.5) * 14) + ragged + 0.06 * (z + 30));
    const fingers = smooth(0.4, 0.52, noise2(a * 0.16 + 40, z * 0.006, 702) + 0.12 * noise2(a * 0.6, z * 0.03, 703) - smooth(-20, -190, z) * 0.16);
    return Math.max(front * smooth(-230, -40, z), fingers * smooth(34, 18, Math.abs(a + 2)) * smooth(-190, -60, z));
  };

  function distance(x: number, y: number, z: number): number {
    const r = length2(x, y);
    const wall = 150 - y;
    if (r > 90) return Math.min(r - 78, wall);
    let d = Math.max(r - rod, -z - 40);
    // Wiper, gland nut with flats, barrel.
    d = Math.min(d, torus(x, y, z - 0.8, rod + 2.6, 2.4));
    d = Math.min(d, extrude(r - 37, Math.abs(z + 11) - 10.4, 1.2));
    let nut = extrude(r - 43, Math.abs(z + 36) - 15, 1.4);
    for (const k of [0.4, 1.45, 2.5, 3.54, 4.6, 5.64]) {
      const c = Math.cos(k);
      const sn = Math.sin(k);
      nut = Math.max(nut, -extrude(length2((x * c + y * sn) - 46, -x * sn + y * c) - 7, Math.abs(z + 36) - 40, 0.4));
    }
    d = Math.min(d, nut, extrude(r - 40, Math.abs(z + 150) - 99, 0.8));
    // Port boss with its pipe, at the right.
    d = Math.min(d, extrude(length2(y, z + 104) - 13, Math.abs(x - 42) - 18, 1.5), capsule(x, y, z, 62, 0, -104, 70, 6, -260, 8));
    const rail = Math.min(box(x + 108, y - 46, z, 26, 30, 400, 2), box(x - 128, y - 60, z, 24, 30, 400, 2));
    return Math.min(d, wall, rail);
  }

  function surface(x: number, y: number, z: number, _nx: number, _ny: number, nz: number, s: Surface): void {
    const r = length2(x, y);
    const a = Math.atan2(x, -y) * (z > -1 ? rod : 40);
    const fine = fbm3(x * 0.4, y * 0.4, z * 0.4, 4, 711);
    if (y > 20 && r > 70) {
      oldPaint(x, y, z, y > 120 ? [0.045, 0.05, 0.05] : [0.1, 0.125, 0.115], 0.3, s);
      return;
    }
    if (z > -0.5 && r < rod + 0.15) {
      // Hard chrome: mirror with fine wipe marks, oil film low down, specks of rust, grooves.
      const wipe = noise2(a * 5, z * 0.02, 712);
      s.r = 0.62; s.g = 0.625; s.b = 0.635; s.metal = 1;
      s.rough = 0.13 + 0.08 * wipe;
      s.relief = 1;
      const speck = smooth(0.76, 0.8, fbm2(a * 0.5, z * 0.35, 4, 713)) * smooth(30, 80, z);
      s.r = mix(s.r, 0.15, speck); s.g = mix(s.g, 0.07, speck); s.b = mix(s.b, 0.03, speck); s.metal *= 1 - speck; s.rough = mix(s.rough, 0.8, speck);
      const film = smooth(62, 4, z + (noise2(a * 0.3, z * 0.06, 714) - 0.5) * 50) * 0.9;
      s.r = mix(s.r, 0.2, film * 0.6); s.g = mix(s.g, 0.165, film * 0.6); s.b = mix(s.b, 0.09, film * 0.6);
      s.rough = mix(s.rough, 0.24, film); s.coat = film;
      const d = lines.at(a, z);
      const groove = smooth(0.08, -0.06, d);
      const torn = smooth(0.7, 0.05, d) * 0.5;
      s.r *= 1 - torn * 0.5; s.g *= 1 - torn * 0.5; s.b *= 1 - torn * 0.5; s.rough = mix(s.rough, 0.5, torn);
      s.r = mix(s.r, 0.045, groove); s.g = mix(s.g, 0.035, groove); s.b = mix(s.b, 0.028, groove); s.metal = mix(s.metal, 0.3, groove); s.rough = mix(s.rough, 0.6, groove);
      return;
    }
    const wet = z < 2 ? runs(a, z) : 0;
    if (z > -2 && r < rod + 5.4) {
      s.r = 0.018; s.g = 0.018; s.b = 0.019; s.rough = 0.55;
    } else {
      oldPaint(x, y, z, [0.125, 0.155, 0.14], 0.22 + (nz > 0.5 ? 0.2 : 0), s);
      const dust = smooth(0.36, 0.6, fbm3(x * 0.04, y * 0.04, z * 0.03, 4, 715));
      s.r = mix(s.r, 0.2, dust * 0.5); s.g = mix(s.g, 0.155, dust * 0.5); s.b = mix(s.b, 0.1, dust * 0.5);
    }
    // Oil: darkens, shines, holds black paste at its edge.
    const paste = smooth(0.15, 0.45, wet) * smooth(0.95, 0.6, wet);
    s.r = mix(mix(s.r, 0.024, wet * 0.94), 0.009, paste * 0.85); s.g = mix(mix(s.g, 0.017, wet * 0.94), 0.007, paste * 0.85); s.b = mix(mix(s.b, 0.008, wet * 0.94), 0.005, paste * 0.85);
    s.coat = Math.max(s.coat, wet); s.coatRough = 0.1 + 0.12 * fine;
    s.rough = mix(s.rough, 0.45, wet);
  }

  function bump(x: number, y: number, z: number): number {
    const r = length2(x, y);
    if (z > -0.5 && r < rod + 0.2) return -0.1 * smooth(0.12, -0.1, lines.at(Math.atan2(x, -y) * rod, z)) + 0.0006 * noise2(Math.atan2(x, -y) * 110, z * 0.02, 716);
    return paintBump(x, y, z, 0.24) * (z < 2 ? 1 - 0.8 * runs(Math.atan2(x, -y) * 40, z) : 1);
  }

  const onRod = (a: number, z: number): Vector => [rod * Math.sin(a / rod), -rod * Math.cos(a / rod), z];
  const cracks = Object.fromEntries(scores.map((line, i) => [`score ${i + 1}`, line.map(([a, z]) => onRod(a, z))]));
  return {
    name: 'lift-rod',
    what: 'Left lift cylinder: rod and gland, seen from the front at chest height.',
    view: { width: 1110, height: 1480, focal: 1.56, eye: [-70, -366, 118], target: [0, 0, 30], up: [0, 0, 1], rollDegrees: 1 },
    seed: 1801,
    apertureMm: 2.4, focusMm: 366, nearMm: 150, farMm: 1200,
    exposure: 0.9, noise: 0.055, occlusionMm: 16, normalMm: 0.05, step: 0.85,
    lights: [
      { at: [-480, -320, 380], radius: 150, colour: [0.6, 0.66, 0.74] },
      { at: [360, -420, 300], radius: 150, colour: [0.2, 0.18, 0.15] },
    ],
    surroundings: {
      ...shed, level: [0.09, 0.088, 0.085],
      panels: [
        { towards: [-0.8, -0.55, 0.1], wide: 0.22, high: 0.9, colour: [3.6, 3.9, 4.4] },
        { towards: [0.7, -0.8, 0.2], wide: 0.1, high: 0.8, colour: [1.8, 1.6, 1.35] },
        { towards: [0.1, -0.3, 1], wide: 0.8, high: 0.15, colour: [3.5, 3.2, 2.8] },
        { towards: [0.1, -1, 0], wide: 0.05, high: 0.9, colour: [0.02, 0.02, 0.02] },
      ],
    },
    truth: {
      features: { 'gland top, front': [0, -37, -0.6], 'foot of the gland nut, front': [0, -43, -51], 'lower end of score 1': onRod(-3.2, 26), 'upper end of score 1': onRod(-3.1, 131) },
      cracks,
      areas: { 'wet gland and barrel': [[-14, -1], [12, -1], [14, -50], [11, -78], [-13, -78], [-17, -50]].map(([a, z]): Vector => [40 * Math.sin((a ?? 0) / 40), -40 * Math.cos((a ?? 0) / 40), z ?? 0]) },
      planes: { 'tangent at the front of the rod': { origin: [0, -rod, 0], u: [1, 0, 0], v: [0, 0, -1], what: `touches the rod (radius ${rod} mm) along its front line` } },
    },
    orientation: 6, takenAt: '2026:05:11 14:33:09', offset: '+01:00',
    distance, surface, bump,
  };
}
