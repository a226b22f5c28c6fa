import { benchBump, benchTop } from '../engine/bench.ts';
import type { Vector } from '../engine/camera.ts';
import { fbm2, fbm3, hash3, mix, noise2, smooth } from '../engine/noise.ts';
import { type Scene, type Surface, shed } from '../engine/scene.ts';
import { carve, extrude, length2, torus } from '../engine/solids.ts';

/** A wet liner standing on its lower end on a bench: axis z, flange on top at z = 0 (depths run down), thrust side towards the viewer (y < 0). */
const outer = 59;
const tall = 232;
const pitDepthMm = 2.3;

export function scene(): Scene {
  /** Pits per cell of a grid on the unrolled outside: along the girth a, down the liner z. */
  const cellMm = 3.1;
  const band = (a: number, z: number): number => {
    const edge = (fbm2(a * 0.06, z * 0.06, 3, 301) - 0.5) * 26;
    return smooth(21, 6, Math.abs(a + 3) + edge * 0.5) * smooth(44, 30, Math.abs(z + 118) + edge * 0.6);
  };
  interface Pit { a: number; z: number; r: number; }
  const pits = new Map<number, Pit>();
  for (let i = -18; i <= 18; i++) {
    for (let j = -68; j <= -2; j++) {
      const a = (i + 0.15 + 0.7 * hash3(i, j, 1, 302)) * cellMm;
      const z = (j + 0.15 + 0.7 * hash3(i, j, 2, 302)) * cellMm;
      const chance = band(a, z);
      if (hash3(i, j, 3, 302) < chance * 0.95) pits.set(i * 1000 + j, { a, z, r: 0.3 + 1.7 * chance * hash3(i, j, 4, 302) ** 2.4 });
    }
  }
  /** Depth dug out of the coolant side. */
  function dug(a: number, z: number): number {
    const ci = Math.floor(a / cellMm);
    const cj = Math.floor(z / cellMm);
    let depth = 0;
    for (let j = -1; j <= 1; j++) {
      for (let i = -1; i <= 1; i++) {
        const pit = pits.get((ci + i) * 1000 + cj + j);
        if (!pit) continue;
        const d = length2(a - pit.a, z - pit.z) * (1 + 0.5 * (noise2(a * 1.2, z * 1.2, 303) - 0.5));
        if (d < pit.r) depth += Math.sqrt(1 - (d / pit.r) ** 2) * Math.min(pitDepthMm, pit.r * 1.25);
      }
    }
    return depth + 0.5 * band(a, z) * smooth(0.4, 0.7, fbm2(a * 0.7, z * 0.7, 3, 304));
  }

  function distance(x: number, y: number, z: number): number {
    const bench = z + tall;
    const r = length2(x, y);
    let d = extrude(r - outer, Math.abs(z + tall / 2) - tall / 2, 0.8);
    if (d < 3 && y < 10) d += dug(Math.atan2(x, -y) * outer, z);
    // Flange, its relief, upper and lower lands, ring grooves for the seals.
    d = Math.min(d, extrude(r - outer - 6.5, Math.abs(z + 5) - 5, 0.5));
    d = carve(d, torus(x, y, z + 11, outer + 0.4, 1.3), 0.4);
    d = Math.min(d, extrude(r - outer - 1.6, Math.abs(z + 203) - 21, 0.7));
    for (const g of [-190, -201, -212]) d = Math.max(d, -extrude(Math.abs(r - outer - 1.6) - 3, Math.abs(z - g) - 2.4, 0.3));
    d = Math.max(d, -(r - 52.5));
    return Math.min(d, bench);
  }

  function surface(x: number, y: number, z: number, _nx: number, _ny: number, nz: number, s: Surface): void {
    if (z < -tall + 0.4) {
      benchTop(x, y, s);
      return;
    }
    const r = length2(x, y);
    const a = Math.atan2(x, -y) * outer;
    if (r < 53.2) {
      const v = 0.42 + 0.06 * (noise2(a * 0.9, z * 0.04, 313) - 0.5);
      s.r = v; s.g = v * 0.99; s.b = v * 0.97; s.metal = 0.85; s.rough = 0.28;
      return;
    }
    const fine = fbm3(x * 0.5, y * 0.5, z * 0.5, 4, 314);
    const machined = z > -10.6 || (z < -181 && r > outer + 1) ? 1 : 0;
    if (machined && nz < 0.9) {
      const turned = 0.5 + 0.5 * Math.sin(z * 9 + noise2(a * 0.02, z, 315));
      const grime = smooth(0.42, 0.66, fbm2(a * 0.07, z * 0.09, 5, 316));
      const v = mix(0.36, 0.46, turned);
      s.r = mix(v, 0.1, grime * 0.75); s.g = mix(v * 0.98, 0.075, grime * 0.75); s.b = mix(v * 0.95, 0.055, grime * 0.75);
      s.metal = mix(0.8, 0.1, grime); s.rough = mix(0.3, 0.7, grime);
      if (z < -181 && Math.abs(r - outer - 1.6) > 0.4) { s.r = 0.02; s.g = 0.02; s.b = 0.021; s.metal = 0; s.rough = 0.55; }
      return;
    }
    if (nz > 0.9) {
      const v = mix(0.3, 0.5, fine);
      s.r = v; s.g = v * 0.98; s.b = v * 0.96; s.metal = 0.8; s.rough = 0.35;
      return;
    }
    // Coolant side: brown and grey water stain, tide lines, pale scale, rust; bright-edged black pits on the thrust side.
    const cloud = fbm2(a * 0.03, z * 0.02, 6, 317);
    const tide = fbm2(a * 0.015, z * 0.12, 4, 318);
    let cr = mix(0.07, 0.19, cloud);
    let cg = mix(0.058, 0.145, cloud);
    let cb = mix(0.05, 0.11, cloud);
    const pale = smooth(0.5, 0.66, tide) * smooth(0.35, 0.6, fine);
    cr = mix(cr, 0.36, pale * 0.6); cg = mix(cg, 0.315, pale * 0.6); cb = mix(cb, 0.25, pale * 0.6);
    const rust = smooth(0.54, 0.66, fbm2(a * 0.06 + 4, z * 0.05, 5, 319));
    cr = mix(cr, mix(0.12, 0.22, fine), rust * 0.75); cg = mix(cg, mix(0.055, 0.1, fine), rust * 0.75); cb = mix(cb, 0.035, rust * 0.75);
    let metal = 0.1;
    let rough = 0.74;
    const b = band(a, z);
    const scoured = b * 0.75;
    cr = mix(cr, mix(0.2, 0.3, fine), scoured); cg = mix(cg, mix(0.185, 0.27, fine), scoured); cb = mix(cb, mix(0.17, 0.25, fine), scoured);
    metal = mix(metal, 0.45, scoured); rough = mix(rough, 0.5, scoured);
    const depth = outer - r;
    const black = smooth(0.12, 1.1, depth);
    cr = mix(cr, mix(0.05, 0.018, black), black); cg = mix(cg, mix(0.036, 0.014, black), black); cb = mix(cb, mix(0.025, 0.011, black), black);
    metal *= 1 - black; rough = mix(rough, 0.85, black);
    s.r = cr; s.g = cg; s.b = cb; s.metal = metal; s.rough = rough; s.relief = 1;
  }

  function bump(x: number, y: number, z: number): number {
    if (z < -tall + 0.4) return benchBump(x, y);
    const r = length2(x, y);
    if (z > -10.6 || z < -181) return 0.008 * Math.sin(z * 9);
    if (r < 53.2) return 0;
    return 0.12 * fbm3(x * 0.35, y * 0.35, z * 0.35, 5, 320);
  }

  const onSide = (a: number, z: number): Vector => [outer * Math.sin(a / outer), -outer * Math.cos(a / outer), z];
  const outline: Vector[] = [];
  for (let i = 0; i < 28; i++) {
    const t = (i / 28) * 2 * Math.PI;
    // The edge of the pitted band along this direction: where the band's own measure falls under a tenth.
    let k = 1;
    for (let step = 0.4; step < 1.4; step += 0.02) if (band(-3 + 22 * step * Math.cos(t), -118 + 46 * step * Math.sin(t)) > 0.12) k = step;
    outline.push(onSide(-3 + 22 * k * Math.cos(t), -118 + 46 * k * Math.sin(t)));
  }
  const deep = [...pits.values()].sort((p, q) => q.r - p.r).slice(0, 4);
  const features: Record<string, Vector> = { 'flange top, thrust side': [0, -outer - 6.5, 0], 'below the flange, thrust side': [0, -outer, -14], 'first seal groove': [0, -outer - 1.6, -190] };
  deep.forEach((p, i) => { features[`pit ${i + 1}`] = onSide(p.a, p.z); });
  return {
    name: 'liner-coolant-side',
    what: 'Wet liner 4 standing on the bench, coolant side, thrust side to the front.',
    view: { width: 1005, height: 1340, focal: 1.36, eye: [62, -392, 34], target: [3, 0, -112], up: [0, 0, 1], rollDegrees: 1.5 },
    seed: 1307,
    apertureMm: 2.4, focusMm: 352, nearMm: 200, farMm: 1800,
    exposure: 0.86, noise: 0.055, occlusionMm: 16, normalMm: 0.05, step: 0.8,
    lights: [
      { at: [-520, -260, 260], radius: 150, colour: [0.72, 0.78, 0.86] },
      { at: [420, -420, 520], radius: 170, colour: [0.2, 0.18, 0.15] },
    ],
    surroundings: { ...shed, panels: [...shed.panels, { towards: [-0.8, -0.6, 0.1], wide: 0.3, high: 0.5, colour: [2.2, 2.4, 2.7] }] },
    truth: {
      features,
      areas: { 'pitted band': outline },
      planes: { 'tangent at the thrust side': { origin: [0, -outer, 0], u: [1, 0, 0], v: [0, 0, -1], what: `touches the liner's outside (radius ${outer} mm) along the thrust line` } },
      remarks: [`${pits.size} pits, the deepest about ${pitDepthMm} mm by construction.`],
    },
    orientation: 6, takenAt: '2026:05:26 14:08:51', offset: '+01:00',
    distance, surface, bump,
  };
}
