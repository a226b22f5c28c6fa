import type { Vector } from '../engine/camera.ts';
import { fbm2, fbm3, mix, noise2, smooth } from '../engine/noise.ts';
import { SteelRule } from '../engine/rule.ts';
import { type Scene, type Surface, shed } from '../engine/scene.ts';
import { box, carve, extrude, length2, rectangle, torus } from '../engine/solids.ts';

/** The end of a head with its water outlet off: flange face z = 0, an opening 62 by 40 mm narrowed by mineral crust. */
const opening = { a: 31, b: 20, r: 17 };

export function scene(): Scene {
  const rule = new SteelRule({ x: -58, y: -60, z: 0.9, degrees: 3, lengthMm: 100, widthMm: 19 });
  const studs: readonly (readonly [number, number])[] = [[-47, 0], [47, 0]];
  /** Crust standing in from the wall, mm. */
  const crust = (x: number, y: number, z: number): number => {
    const low = smooth(14, -16, y);
    return 2.2 + 5.4 * low * smooth(0, -9, z) + 6.2 * (fbm3(x * 0.09, y * 0.09, z * 0.09, 4, 651) - 0.42) + 1.1 * fbm3(x * 0.5, y * 0.5, z * 0.5, 3, 652);
  };

  function distance(x: number, y: number, z: number): number {
    const ruler = rule.distance(x, y, z);
    if (z > 32) return Math.min(z - 29, ruler);
    const hole = rectangle(x, y, opening.a, opening.b, opening.r);
    // Casting: a flange pad, and the rougher wall of the head behind it.
    const pad = rectangle(x, y, 66, 34, 26);
    let d = extrude(pad, Math.abs(z + 20) - 20, 1.2);
    d = Math.min(d, box(x, y, z + 66, 190, 78, 52, 10) - 0.9 * fbm3(x * 0.2, y * 0.2, z * 0.2, 3, 653));
    d = carve(d, Math.max(hole, -z - 70), 0.9);
    if (hole < 4 && z < 3) {
      // The crust is what is left between the metal wall and a smaller, rougher hollow.
      const hollow = hole + crust(x, y, z) * smooth(0.5, -4, z);
      const shell = Math.max(-hollow * 0.55, hole - 0.9, z + 0.5);
      d = Math.min(d, shell);
      d = Math.min(d, z + 62);
    }
    for (const [sx, sy] of studs) {
      const r = length2(x - sx, y - sy);
      d = Math.min(d, extrude(r - 3.9 + 0.12 * Math.sin(z * 5.0), Math.abs(z - 11) - 13, 0.8));
    }
    // Stub of the bypass pipe.
    d = Math.min(d, torus(x + 108, z - 2, y - 14, 13, 2.2));
    return Math.min(d, ruler);
  }

  function surface(x: number, y: number, z: number, _nx: number, _ny: number, nz: number, s: Surface): void {
    if (rule.distance(x, y, z) < 0.05) return rule.surface(x, y, z, nz, s);
    const fine = fbm3(x * 0.5, y * 0.5, z * 0.5, 4, 661);
    const cloud = fbm3(x * 0.045, y * 0.045, z * 0.045, 5, 662);
    const hole = rectangle(x, y, opening.a, opening.b, opening.r);
    for (const [sx, sy] of studs) {
      if (length2(x - sx, y - sy) < 4.4 && z > 0.1) {
        const rust = smooth(0.4, 0.6, fbm3(x * 0.3, y * 0.3, z * 0.3, 4, 663));
        s.r = mix(0.3, 0.17, rust); s.g = mix(0.29, 0.08, rust); s.b = mix(0.27, 0.045, rust); s.metal = 0.7 * (1 - rust); s.rough = mix(0.35, 0.8, rust);
        return;
      }
    }
    if (hole < 0.6 && z < -0.3) {
      if (z < -60.5) { s.r = 0.03; s.g = 0.022; s.b = 0.016; s.rough = 0.9; return; }
      // Mineral: chalk white to tan, brown where rust bled into it, grey-green down in the hole.
      const band = fbm2(Math.atan2(y, x) * 3 + z * 0.02, z * 0.16, 4, 664);
      let r = mix(0.5, 0.72, fine);
      let g = mix(0.455, 0.67, fine);
      let b = mix(0.37, 0.57, fine);
      const tan = smooth(0.42, 0.62, cloud);
      r = mix(r, 0.42, tan * 0.7); g = mix(g, 0.31, tan * 0.7); b = mix(b, 0.185, tan * 0.7);
      const rust = smooth(0.5, 0.68, band);
      r = mix(r, 0.26, rust * 0.75); g = mix(g, 0.115, rust * 0.75); b = mix(b, 0.05, rust * 0.75);
      const deep = Math.exp(Math.min(0, z + 4) / 26);
      s.r = r * deep; s.g = g * deep; s.b = b * deep;
      s.rough = 0.86; s.relief = 2.2;
      s.coat = smooth(0.52, 0.66, fbm3(x * 0.06, y * 0.06 + 4, z * 0.06, 3, 665)) * smooth(6, -14, y) * 0.8; s.coatRough = 0.14;
      return;
    }
    const flange = rectangle(x, y, 66, 34, 26) < 0.3 && z > -1.4;
    if (flange && nz > 0.8) {
      const tool = Math.sin((y + noise2(x * 0.04, y * 0.04, 666) * 0.5) * 5.5);
      let v = mix(0.27, 0.42, cloud) * (1 + 0.05 * tool);
      const paper = smooth(0.5, 0.56, fbm2(x * 0.09 + 2, y * 0.09, 6, 667));
      const bleed = smooth(7, 0.3, hole + (fine - 0.5) * 6);
      s.r = mix(v, 0.2, paper * 0.9); s.g = mix(v * 0.985, 0.145, paper * 0.9); s.b = mix(v * 0.96, 0.09, paper * 0.9);
      s.r = mix(s.r, 0.4, bleed * 0.7); s.g = mix(s.g, 0.3, bleed * 0.7); s.b = mix(s.b, 0.19, bleed * 0.7);
      s.metal = 0.65 * (1 - paper) * (1 - bleed); s.rough = mix(0.38, 0.86, Math.max(paper, bleed));
      v = 0;
      return;
    }
    // Cast iron with engine enamel worn off.
    const enamel = smooth(0.56, 0.5, cloud + 0.2 * (fine - 0.5));
    s.r = mix(mix(0.1, 0.19, fine), 0.036, enamel); s.g = mix(mix(0.06, 0.1, fine), 0.052, enamel); s.b = mix(mix(0.04, 0.06, fine), 0.06, enamel);
    s.rough = mix(0.85, 0.5, enamel); s.relief = 1.6;
    const run = smooth(0.5, 0.64, fbm2(x * 0.1, y * 0.014, 4, 668)) * smooth(0, -30, y);
    s.r = mix(s.r, 0.34, run * 0.6); s.g = mix(s.g, 0.28, run * 0.6); s.b = mix(s.b, 0.2, run * 0.6);
  }

  function bump(x: number, y: number, z: number): number {
    if (rule.distance(x, y, z) < 0.06) return rule.bump(x, y);
    const hole = rectangle(x, y, opening.a, opening.b, opening.r);
    if (hole < 0.6 && z < -0.3) return 0.16 * fbm3(x * 0.7, y * 0.7, z * 0.7, 4, 669);
    if (z > -1.4) return 0.006 * Math.sin(y * 5.5) + 0.1 * smooth(0.5, 0.56, fbm2(x * 0.09 + 2, y * 0.09, 6, 667));
    return 0.24 * fbm3(x * 0.4, y * 0.4, z * 0.4, 4, 670);
  }

  const rim: Vector[] = [];
  for (let i = 0; i < 36; i++) {
    const k = (i / 36) * 2 * Math.PI;
    let reach = 10;
    for (let step = 10; step < 40; step += 0.05) if (rectangle(step * Math.cos(k), step * Math.sin(k), opening.a, opening.b, opening.r) < 0) reach = step;
    rim.push([reach * Math.cos(k), reach * Math.sin(k), 0]);
  }
  return {
    name: 'coolant-passage',
    what: 'Water outlet of the head, housing off: mineral crust in the passage.',
    view: { width: 1340, height: 1005, focal: 1.35, eye: [-36, 62, 214], target: [0, -10, -6], up: [0, 1, 0.1], rollDegrees: 2.4 },
    seed: 1709,
    apertureMm: 1.3, focusMm: 224, nearMm: 90, farMm: 900,
    exposure: 0.72, noise: 0.055, occlusionMm: 13, normalMm: 0.05, step: 0.8,
    lights: [
      { at: [-330, 420, 420], radius: 130, colour: [0.58, 0.63, 0.7] },
      { at: [150, -60, 560], radius: 150, colour: [0.36, 0.33, 0.28] },
    ],
    surroundings: shed,
    truth: {
      features: { ...rule.features(), 'stud left': [-47, 0, 24], 'stud right': [47, 0, 24] },
      areas: { 'edge of the opening': rim },
      planes: { flange: { origin: [0, 0, 0], u: [1, 0, 0], v: [0, -1, 0], what: 'machined flange, z = 0; opening 62 by 40 mm' }, rule: { origin: rule.world(0, 0), u: [1, 0, 0], v: [0, 1, 0], what: 'upper face of the rule, 0.9 mm above the flange' } },
    },
    orientation: 1, takenAt: '2026:05:12 10:58:44', offset: '+01:00',
    distance, surface, bump,
  };
}
