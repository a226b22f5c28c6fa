import { benchBump, benchTop } from '../engine/bench.ts';
import type { Vector } from '../engine/camera.ts';
import { fbm2, fbm3, mix, noise2, smooth } from '../engine/noise.ts';
import { type Scene, type Surface, shed } from '../engine/scene.ts';
import { carve, cylinder, extrude, length2 } from '../engine/solids.ts';

/** A piston standing on its skirt on the bench: axis z, crown at z = 118, thrust side towards the viewer (y < 0), pin along x. */
const radius = 52;
const tall = 118;

export function scene(): Scene {
  const torn = (a: number, z: number): number => {
    const streak = (noise2(a * 0.55, z * 0.035, 401) - 0.5) * 18 + (noise2(a * 1.7, z * 0.05, 402) - 0.5) * 9;
    return smooth(20, 12, Math.abs(a - 2) + (noise2(a * 0.3, z * 0.05, 403) - 0.5) * 10) * smooth(33, 24, Math.abs(z - 41) + streak * 0.6);
  };
  const grooves = [102, 93, 82];

  function distance(x: number, y: number, z: number): number {
    const bench = z;
    const r = length2(x, y);
    let d = extrude(r - radius, Math.abs(z - tall / 2) - tall / 2, 1.2);
    if (d < 8) {
      grooves.forEach((g, i) => {
        const h = i === 2 ? 2.4 : 1.5;
        d = Math.max(d, -extrude(Math.abs(r - radius) - 4.4, Math.abs(z - g) - h, 0.2));
      });
      // Top and second ring in place, the oil ring as two rails.
      d = Math.min(d, extrude(Math.abs(r - radius + 3.4) - 3.5, Math.abs(z - 102) - 1.32, 0.25));
      d = Math.min(d, extrude(Math.abs(r - radius + 3.5) - 3.4, Math.abs(z - 93) - 1.3, 0.25));
      d = Math.min(d, extrude(Math.abs(r - radius + 3.3) - 3.5, Math.abs(Math.abs(z - 82) - 1.7) - 0.4, 0.2));
      // Pin bores and the cut-away under the bosses.
      d = carve(d, cylinder(y, z - 56, x, 17, 80, 0.5), 1);
      d = carve(d, extrude(length2(y * 0.9, z - 46) - 36, 40 - Math.abs(x), 2), 3);
      d = Math.max(d, -(extrude(r - 40, Math.abs(z - 20) - 50, 3)));
    }
    return Math.min(d, bench);
  }

  function surface(x: number, y: number, z: number, _nx: number, _ny: number, nz: number, s: Surface): void {
    const r = length2(x, y);
    if (r > radius + 1.2 || z < 0.05) {
      benchTop(x, y, s);
      return;
    }
    const a = Math.atan2(x, -y) * radius;
    const fine = fbm3(x * 0.5, y * 0.5, z * 0.5, 4, 412);
    if (nz > 0.8 && z > tall - 6) {
      const crust = fbm2(x * 0.15, y * 0.15, 5, 413);
      const v = mix(0.02, 0.1, crust);
      s.r = v; s.g = v * 0.95; s.b = v * 0.88; s.rough = 0.75; s.relief = 2;
      return;
    }
    let v = mix(0.44, 0.54, fine);
    let cr = v;
    let cg = v * 0.985;
    let cb = v * 0.96;
    let metal = 0.75;
    let rough = 0.38;
    // Turned skirt: fine rings.
    const ringed = Math.sin(z * 13);
    cr *= 1 + 0.05 * ringed; cg *= 1 + 0.05 * ringed; cb *= 1 + 0.05 * ringed;
    // Lands: brown lacquer and carbon, black above the top ring.
    const lands = smooth(74, 80, z);
    const lacquer = smooth(0.34, 0.62, fbm2(a * 0.05, z * 0.12, 5, 414));
    cr = mix(cr, mix(0.2, 0.1, lacquer), lands * 0.8); cg = mix(cg, mix(0.13, 0.062, lacquer), lands * 0.8); cb = mix(cb, mix(0.08, 0.035, lacquer), lands * 0.8);
    rough = mix(rough, 0.42, lands);
    metal = mix(metal, 0.35, lands);
    const top = smooth(103.6, 105.5, z + (noise2(a * 0.2, z * 0.4, 415) - 0.5) * 4);
    cr = mix(cr, 0.028, top * 0.94); cg = mix(cg, 0.026, top * 0.94); cb = mix(cb, 0.024, top * 0.94);
    metal *= 1 - top * 0.9; rough = mix(rough, 0.8, top);
    // Rings: bright running face.
    if (r > radius - 0.05) {
      const faint = 0.5 + 0.08 * (noise2(a * 1.5, z * 0.4, 416) - 0.5);
      if (Math.abs(z - 102) < 1.35 || Math.abs(z - 93) < 1.35 || Math.abs(Math.abs(z - 82) - 1.7) < 0.45) {
        cr = faint; cg = faint * 0.99; cb = faint * 0.97; metal = 0.9; rough = 0.26;
      }
    } else if (lands > 0.5 && r < radius - 0.4) {
      cr = 0.02; cg = 0.018; cb = 0.016; metal = 0; rough = 0.8;
    }
    // Lacquer streaks down the skirt, bedded-in dark patch.
    const bedded = smooth(34, 18, Math.abs(a)) * smooth(76, 66, z) * smooth(4, 14, z);
    cr *= 1 - 0.28 * bedded; cg *= 1 - 0.29 * bedded; cb *= 1 - 0.31 * bedded;
    const drip = smooth(0.55, 0.75, fbm2(a * 0.16, z * 0.02, 4, 417)) * smooth(80, 30, z) * 0.6;
    cr = mix(cr, 0.15, drip); cg = mix(cg, 0.095, drip); cb = mix(cb, 0.05, drip);
    // Torn and smeared along the stroke.
    const t = torn(a, z);
    if (t > 0) {
      const streak = noise2(a * 2.6, z * 0.05, 418) * 0.6 + noise2(a * 7, z * 0.12, 419) * 0.4;
      const bright = smooth(0.5, 0.78, streak);
      const burnt = smooth(0.52, 0.36, streak);
      let tr = mix(0.2, 0.86, bright);
      let tg = mix(0.19, 0.85, bright);
      let tb = mix(0.18, 0.83, bright);
      tr = mix(tr, 0.035, burnt * 0.85); tg = mix(tg, 0.03, burnt * 0.85); tb = mix(tb, 0.027, burnt * 0.85);
      cr = mix(cr, tr, t); cg = mix(cg, tg, t); cb = mix(cb, tb, t);
      metal = mix(metal, 0.75 - burnt * 0.5, t); rough = mix(rough, 0.42 + burnt * 0.2, t);
    }
    s.coat = 0.25; s.coatRough = 0.25;
    s.r = cr; s.g = cg; s.b = cb; s.metal = metal; s.rough = rough; s.relief = 1;
  }

  function bump(x: number, y: number, z: number): number {
    const r = length2(x, y);
    if (r > radius + 1.2 || z < 0.05) return benchBump(x, y);
    const a = Math.atan2(x, -y) * radius;
    const t = torn(a, z);
    const streak = noise2(a * 2.6, z * 0.05, 418) * 0.6 + noise2(a * 7, z * 0.12, 419) * 0.4;
    const turned = z < 74 ? 0.012 * Math.sin(z * 13) * (1 - t) : 0;
    return turned + t * 0.3 * streak + (z > 103 ? 0.12 * fbm3(x * 0.6, y * 0.6, z * 0.6, 3, 421) : 0.01 * fbm3(x, y, z, 2, 422));
  }

  const onSkirt = (a: number, z: number): Vector => [radius * Math.sin(a / radius), -radius * Math.cos(a / radius), z];
  const outline: Vector[] = [];
  for (let i = 0; i < 28; i++) {
    const k = (i / 28) * 2 * Math.PI;
    let reach = 0.6;
    for (let step = 0.4; step < 1.6; step += 0.02) if (torn(2 + 18 * step * Math.cos(k), 41 + 30 * step * Math.sin(k)) > 0.3) reach = step;
    outline.push(onSkirt(2 + 18 * Math.min(reach, 1.25) * Math.cos(k), 41 + 30 * Math.min(reach, 1.2) * Math.sin(k)));
  }
  return {
    name: 'piston-skirt',
    what: 'Piston 4 standing on its skirt, thrust side to the front.',
    view: { width: 1260, height: 1680, focal: 1.42, eye: [-50, -262, 118], target: [2, 0, 58], up: [0, 0, 1], rollDegrees: -1.2 },
    seed: 1409,
    apertureMm: 2, focusMm: 220, nearMm: 120, farMm: 1500,
    exposure: 0.6, noise: 0.052, occlusionMm: 13, normalMm: 0.04, step: 0.82,
    lights: [
      { at: [-420, -240, 430], radius: 160, colour: [0.58, 0.63, 0.7] },
      { at: [380, -300, 520], radius: 150, colour: [0.22, 0.2, 0.17] },
    ],
    surroundings: { ...shed, panels: [...shed.panels, { towards: [-0.75, -0.75, 0.25], wide: 0.28, high: 0.6, colour: [2.4, 2.6, 2.9] }] },
    truth: {
      features: { 'top ring, thrust side': onSkirt(0, 102), 'second ring, thrust side': onSkirt(0, 93), 'crown edge, thrust side': onSkirt(0, 118), 'foot of the skirt, thrust side': onSkirt(0, 0.5) },
      areas: { 'torn skirt': outline },
      planes: { 'tangent at the thrust side': { origin: [0, -radius, 0], u: [1, 0, 0], v: [0, 0, -1], what: `touches the skirt (radius ${radius} mm) along the thrust line` } },
    },
    orientation: 1, takenAt: '2026:05:26 15:31:40', offset: '+01:00',
    distance, surface, bump,
  };
}
