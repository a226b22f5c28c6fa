import { benchTop, oldPaint } from '../engine/bench.ts';
import type { Vector } from '../engine/camera.ts';
import { fbm3, mix, noise2, smooth } from '../engine/noise.ts';
import { SteelRule } from '../engine/rule.ts';
import { type Scene, type Surface, shed } from '../engine/scene.ts';
import { blend, box, capsule, cylinder, hexagon, length2, length3, torus } from '../engine/solids.ts';

/**
 * Steering wheel, its rim a ring of 200 mm radius in the plane z = 0. On a strip of tape two lines show where the road wheels begin to move,
 * 58 mm apart along the rim; a rule lies on the rim beside them.
 */
const ring = 200;
const tube = 13;
const arcMm = 58;
const halfAngle = arcMm / ring / 2;

export function scene(): Scene {
  const rule = new SteelRule({ x: -75, y: ring + 1.5, z: tube + 0.9, degrees: 0, lengthMm: 150, widthMm: 25 });
  const spokes = [-Math.PI / 2, Math.PI / 6, (5 * Math.PI) / 6];

  function distance(x: number, y: number, z: number): number {
    const ruler = rule.distance(x, y, z);
    const r = length2(x, y);
    // The rim has finger dents on its inner side.
    const turnAt = Math.atan2(x, y);
    const dent = 1.1 * smooth(0.2, 1, Math.cos(turnAt * 34)) * smooth(ring, ring - tube, r);
    let d = torus(x, y, z, ring, tube) + dent;
    for (const k of spokes) {
      const cx = Math.cos(k);
      const sy = Math.sin(k);
      const u = x * cx + y * sy;
      const v = -x * sy + y * cx;
      const drop = -34 * smooth(190, 40, u);
      d = blend(d, box(u - 112, v, (z - drop) * 0.94, 88, 11, 3.4, 2.4), 5);
    }
    d = Math.min(d, cylinder(x, y, z + 36, 40, 10, 4), Math.max(hexagon(x, y, 15), Math.abs(z + 22) - 7), cylinder(x, y, z + 150, 24, 110, 2));
    // Dash behind, floor below, the lever.
    d = Math.min(d, box(x, y - 330, z + 130, 320, 60, 110, 16), z + 420);
    d = Math.min(d, capsule(x, y, z, 60, 292, -50, 96, 262, 34, 5), length3(x - 97, y - 261, z - 40) - 14);
    return Math.min(d, ruler);
  }

  function surface(x: number, y: number, z: number, _nx: number, _ny: number, nz: number, s: Surface): void {
    if (rule.distance(x, y, z) < 0.06) return rule.surface(x, y, z, nz, s);
    const fine = fbm3(x * 0.4, y * 0.4, z * 0.4, 4, 1211);
    const cloud = fbm3(x * 0.03, y * 0.03, z * 0.03, 4, 1212);
    if (z < -412) { benchTop(x * 0.4, y * 0.4, s); s.r *= 0.55; s.g *= 0.55; s.b *= 0.55; return; }
    if (y > 240 && length3(x - 97, y - 261, z - 40) < 14.3) { s.r = 0.016; s.g = 0.016; s.b = 0.017; s.rough = 0.35; s.coat = 0.5; return; }
    if (y > 250) { oldPaint(x, y, z, [0.03, 0.034, 0.036], 0.16, s); return; }
    const r = length2(x, y);
    const turnAt = Math.atan2(x, y);
    if (torus(x, y, z, ring, tube) < 0.4 && r > ring - tube - 0.3) {
      const along = turnAt * ring;
      // Black moulding, shiny where hands go, grey with dust underneath and cracked with age.
      const shiny = smooth(0.42, 0.6, cloud);
      const v = mix(0.018, 0.03, fine);
      s.r = v * 1.05; s.g = v; s.b = v * 0.97; s.rough = mix(0.55, 0.3, shiny); s.relief = 1;
      const crack = smooth(0.94, 0.98, Math.sin(along * 0.19 + 3 * noise2(along * 0.03, 1, 1213))) * smooth(0.35, 0.5, noise2(along * 0.2, z * 0.2, 1214));
      s.r *= 1 - 0.7 * crack; s.g *= 1 - 0.7 * crack; s.b *= 1 - 0.7 * crack;
      // Paper tape with its two pencil lines.
      const edge = 62 + 1.6 * (noise2(r * 0.8, z * 0.8, 1215) - 0.5);
      if (Math.abs(along) < edge && z > -6) {
        const crepe = noise2(along * 1.6, r * 0.3, 1216);
        const grime = smooth(0.45, 0.7, cloud + 0.2 * (fine - 0.5));
        s.r = mix(0.66, 0.45, grime * 0.6) * mix(0.92, 1.04, crepe); s.g = mix(0.57, 0.38, grime * 0.6) * mix(0.92, 1.04, crepe); s.b = mix(0.38, 0.26, grime * 0.6) * mix(0.92, 1.04, crepe);
        s.rough = 0.85; s.relief = 1.4;
        const line = Math.abs(Math.abs(along) - arcMm / 2);
        const lead = smooth(0.62, 0.3, line) * (0.75 + 0.25 * noise2(along * 4, r * 2, 1217));
        s.r = mix(s.r, 0.03, lead); s.g = mix(s.g, 0.03, lead); s.b = mix(s.b, 0.045, lead);
      }
      return;
    }
    if (z < -10 && r < 46) {
      if (z > -30 && r < 17) { const rust = smooth(0.4, 0.6, fine); s.r = mix(0.3, 0.11, rust); s.g = mix(0.29, 0.055, rust); s.b = mix(0.27, 0.03, rust); s.metal = 0.7 * (1 - rust); s.rough = 0.5; return; }
      s.r = 0.02; s.g = 0.02; s.b = 0.021; s.rough = 0.5;
      return;
    }
    oldPaint(x, y, z, [0.022, 0.024, 0.026], 0.3, s);
  }
  function bump(x: number, y: number, z: number): number {
    if (rule.distance(x, y, z) < 0.07) return rule.bump(x, y);
    const along = Math.atan2(x, y) * ring;
    if (Math.abs(along) < 62 && torus(x, y, z, ring, tube) < 0.5 && z > -6) return 0.09 * noise2(along * 1.6, length2(x, y) * 0.3, 1216);
    return 0.05 * fbm3(x * 0.9, y * 0.9, z * 0.9, 3, 1218);
  }

  /** On top of the rim, where the tape's line crosses the crest. */
  const onRim = (a: number): Vector => [ring * Math.sin(a), ring * Math.cos(a), tube];
  return {
    name: 'steering-play',
    what: 'Steering wheel rim with tape and rule: the two lines show where the road wheels begin to move.',
    view: { width: 1200, height: 900, focal: 1.22, eye: [-44, -24, 318], target: [6, 158, -14], up: [0, 1, 0.5], rollDegrees: -1.6 },
    seed: 2401,
    apertureMm: 2.2, focusMm: 372, nearMm: 90, farMm: 1600,
    exposure: 1.05, noise: 0.06, occlusionMm: 16, normalMm: 0.05, step: 0.88,
    lights: [
      { at: [-520, 420, 520], radius: 160, colour: [0.75, 0.82, 0.92] },
      { at: [380, -100, 560], radius: 170, colour: [0.24, 0.22, 0.19] },
    ],
    surroundings: shed,
    truth: {
      features: { ...rule.features(), 'line left, crest of the rim': onRim(-halfAngle), 'line right, crest of the rim': onRim(halfAngle), 'hub nut': [0, 0, -15] },
      cracks: { 'rim between the lines': Array.from({ length: 9 }, (_, i) => onRim(-halfAngle + (i / 4) * halfAngle)) },
      planes: { rule: { origin: rule.world(0, 0), u: [1, 0, 0], v: [0, 1, 0], what: 'upper face of the rule, z = 13.9' }, rim: { origin: [0, ring, tube], u: [1, 0, 0], v: [0, 1, 0], what: 'touches the crest of the rim, z = 13' } },
      remarks: ['The arc at the crest is 58 mm on a radius of 200 mm: 16.6 degrees. The straight distance is a little less.'],
    },
    orientation: 1, takenAt: '2025:10:06 11:20:43', offset: '+01:00',
    distance, surface, bump,
  };
}
