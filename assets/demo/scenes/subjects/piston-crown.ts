import { benchBump, benchTop } from '../engine/bench.ts';
import type { Vector } from '../engine/camera.ts';
import { fbm2, fbm3, mix, noise2, smooth } from '../engine/noise.ts';
import { type Scene, type Surface, shed } from '../engine/scene.ts';
import { blend, carve, extrude, length2, length3, torus } from '../engine/solids.ts';

/** A piston's crown, z = 0, edge radius 52; the fan end is at the top of the picture (y > 0). The edge is melted away at about four o'clock. */
const radius = 52;
const bite: Vector = [44, -25, 0];

export function scene(): Scene {
  function distance(x: number, y: number, z: number): number {
    const r = length2(x, y);
    const bench = z + 96;
    let d = extrude(r - radius, Math.abs(z + 46) - 46, 1);
    if (d < 10) {
      // Bowl with a raised middle, its lip rounded, and two shallow valve recesses.
      const inBowl = length2(x - 2, y - 1);
      const floor = z + 13.5 - 6.5 * smooth(20, 0, inBowl);
      const bowl = Math.max(inBowl - 24 + 0.25 * Math.max(-z - 3, 0) * 0.5, -floor);
      d = carve(d, blend(bowl, torus(x - 2, y - 1, z + 8, 18.5, 6.5), 2), 1.6);
      d = carve(d, Math.max(length2(x + 2, y - 38) - 17, -z - 1.5), 0.7);
      d = carve(d, Math.max(length2(x - 1, y + 37) - 14.5, -z - 1.4), 0.7);
      for (const g of [-10, -19, -30]) d = Math.max(d, -extrude(Math.abs(r - radius) - 4, Math.abs(z - g) - 1.4, 0.2));
      d = Math.min(d, extrude(r - radius + 0.3, Math.abs(z + 19) - 1.2, 0.2));
      // Melted edge: a ragged hollow that runs down past the top groove.
      const melt = length3((x - bite[0]) * 0.92, (y - bite[1]) * 0.78, (z - 1.5) * 0.62)
        - 15 - 8 * (fbm3(x * 0.11, y * 0.11, z * 0.07, 3, 501) - 0.5) - 2.4 * (noise2(x * 0.45, y * 0.45, 502) - 0.5);
      d = carve(d, melt, 1.6);
    }
    return Math.min(d, bench);
  }

  const melted = (x: number, y: number, z: number): number => length3((x - bite[0]) * 0.92, (y - bite[1]) * 0.78, (z - 1.5) * 0.62);

  function surface(x: number, y: number, z: number, _nx: number, _ny: number, nz: number, s: Surface): void {
    if (z < -92) {
      benchTop(x, y, s);
      return;
    }
    const r = length2(x, y);
    const fine = fbm3(x * 0.55, y * 0.55, z * 0.55, 4, 513);
    const m = melted(x, y, z);
    if (nz < 0.5 && r > radius - 1) {
      const lacquer = fbm2(Math.atan2(y, x) * 12, z * 0.2, 4, 514);
      s.r = mix(0.34, 0.14, lacquer); s.g = mix(0.33, 0.115, lacquer); s.b = mix(0.31, 0.09, lacquer);
      s.metal = 0.5; s.rough = 0.45;
      if (z > -9) { s.r *= 0.22; s.g *= 0.21; s.b *= 0.2; s.metal = 0.1; s.rough = 0.8; }
    } else {
      const cloud = fbm2(x * 0.05, y * 0.05, 6, 515);
      const inBowl = length2(x - 2, y - 1);
      // Spray pattern of the jets: six pale fingers in the bowl and over the lip.
      const finger = 0.5 + 0.5 * Math.cos(Math.atan2(y - 1, x - 2) * 6 + (noise2(x * 0.08, y * 0.08, 516) - 0.5) * 2.2);
      const pale = smooth(0.5, 0.95, finger) * smooth(5, 15, inBowl) * smooth(44, 22, inBowl);
      const soot = mix(0.014, 0.05, fine * cloud * 2);
      s.r = mix(soot * 1.03, mix(0.15, 0.26, cloud), pale * 0.75); s.g = mix(soot, mix(0.125, 0.21, cloud), pale * 0.75); s.b = mix(soot * 0.94, mix(0.1, 0.16, cloud), pale * 0.75);
      // Worn through to the metal round the edge.
      const bare = 0.7 * smooth(0.58, 0.76, fbm2(x * 0.09 + 2, y * 0.09, 5, 517)) * smooth(26, 40, r) * 0.9;
      s.r = mix(s.r, 0.4, bare); s.g = mix(s.g, 0.39, bare); s.b = mix(s.b, 0.375, bare);
      s.metal = mix(0.08, 0.7, bare); s.rough = mix(0.78, 0.42, bare);
      s.relief = 1.5;
    }
    // Near the burn: grey-white ash, then clean eaten alloy in the hollow itself.
    const ash = smooth(28, 17, m + (fine - 0.5) * 12) * (0.35 + 0.65 * fine);
    s.r = mix(s.r, mix(0.2, 0.4, fine), ash * 0.7); s.g = mix(s.g, mix(0.185, 0.37, fine), ash * 0.7); s.b = mix(s.b, mix(0.165, 0.33, fine), ash * 0.7);
    s.metal = mix(s.metal, 0.2, ash); s.rough = mix(s.rough, 0.72, ash);
    const hollow = smooth(19, 17, m + (fine - 0.5) * 3) * (z < -0.3 ? 1 : 0);
    s.r = mix(s.r, mix(0.3, 0.62, fine), hollow); s.g = mix(s.g, mix(0.29, 0.6, fine), hollow); s.b = mix(s.b, mix(0.275, 0.575, fine), hollow);
    s.metal = mix(s.metal, 0.85, hollow); s.rough = mix(s.rough, 0.38, hollow);
    s.relief = mix(s.relief, 2.2, Math.max(ash * 0.6, hollow));
  }

  const bump = (x: number, y: number, z: number): number =>
    z < -92 ? benchBump(x, y) : 0.2 * fbm3(x * 0.3, y * 0.3, z * 0.3, 5, 518);

  const outline: Vector[] = [];
  for (let i = 0; i <= 22; i++) {
    const k = 1.0 + (i / 22) * 3.6;
    let reach = 12;
    for (let step = 9; step < 24; step += 0.1) {
      const px = bite[0] + (step / 0.92) * Math.cos(k + 0.9);
      const py = bite[1] + (step / 0.78) * Math.sin(k + 0.9);
      if (distance(px, py, -0.6) > -0.2 && length2(px, py) < radius - 1) reach = step;
    }
    outline.push([bite[0] + (reach / 0.92) * Math.cos(k + 0.9), bite[1] + (reach / 0.78) * Math.sin(k + 0.9), 0]);
  }
  const edge = outline.filter((p) => length2(p[0], p[1]) < radius);
  const turn = (p: Vector | undefined): number => Math.atan2(p?.[1] ?? 0, p?.[0] ?? 0);
  const rim: Vector[] = [];
  const a0 = turn(edge[edge.length - 1]);
  const a1 = turn(edge[0]);
  for (let i = 0; i <= 8; i++) rim.push([radius * Math.cos(a0 + ((a1 - a0) * i) / 8), radius * Math.sin(a0 + ((a1 - a0) * i) / 8), 0]);
  const around = (hour: number): Vector => {
    const a = ((3 - hour) / 12) * 2 * Math.PI;
    return [radius * Math.cos(a), radius * Math.sin(a), 0];
  };
  return {
    name: 'piston-crown',
    what: 'Crown of piston 4 seen from above and the drive end; fan end at the top.',
    view: { width: 1340, height: 1005, focal: 1.42, eye: [26, -178, 176], target: [3, -6, -14], up: [0, 0.5, 1], rollDegrees: 2 },
    seed: 1511,
    apertureMm: 1.7, focusMm: 232, nearMm: 100, farMm: 1500,
    exposure: 0.95, noise: 0.055, occlusionMm: 14, normalMm: 0.05, step: 0.75,
    lights: [
      { at: [-380, 160, 420], radius: 140, colour: [0.66, 0.72, 0.8] },
      { at: [330, -160, 560], radius: 160, colour: [0.24, 0.22, 0.185] },
    ],
    surroundings: shed,
    truth: {
      features: { 'crown edge at 12': around(12), 'crown edge at 3': around(3), 'crown edge at 9': around(9), 'middle of the bowl': [2, 1, -7] },
      areas: { 'burnt edge': [...edge, ...rim] },
      planes: { crown: { origin: [0, 0, 0], u: [1, 0, 0], v: [0, 1, 0], what: 'flat of the crown, z = 0, edge radius 52 mm' } },
      remarks: ['The outline of the burnt edge is taken on the plane of the crown; the hollow is ragged.'],
    },
    orientation: 1, takenAt: '2026:05:26 15:47:12', offset: '+01:00',
    distance, surface, bump,
  };
}
