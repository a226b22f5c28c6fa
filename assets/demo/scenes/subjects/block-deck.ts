import type { Vector } from '../engine/camera.ts';
import { fbm2, fbm3, mix, noise2, smooth } from '../engine/noise.ts';
import { SteelRule } from '../engine/rule.ts';
import { type Scene, type Surface, shed } from '../engine/scene.ts';
import { box, carve, extrude, length2 } from '../engine/solids.ts';
import { crackLine, type Point, StrokeMap } from '../engine/strokes.ts';

/** The block's top deck, z = 0, x away from the fan end; cylinder c at x = (c - 2.5) * 118. A hairline runs from a coolant passage to a bolt hole beside cylinder 2. */
const pitch = 118;
const bore = 50;
const centreX = (cylinder: number): number => (cylinder - 2.5) * pitch;
const bolt: Point = [0, -66];
const passage: Point = [-25, -60];

export function scene(): Scene {
  const rule = new SteelRule({ x: -112, y: -128, z: 0.9, degrees: 13, lengthMm: 100, widthMm: 19 });
  const hairline = crackLine([passage[0] + 8.2, passage[1] - 1], [bolt[0] - 7.6, bolt[1] + 0.8], 0.14, 4, 205);
  const lines = new StrokeMap(-30, -80, 12, -45, 26, 3, [{ points: hairline, half: 0.13, halfEnd: 0.06 }]);
  const fold = (x: number): number => x - pitch * (Math.min(1, Math.max(-2, Math.round(x / pitch - 0.5))) + 0.5);
  /** How far down each piston stands. */
  const pistonZ = (x: number): number => (Math.round(x / pitch - 0.5) % 2 === 0 ? -14 : -92);

  function coolant(x: number, y: number): number {
    const fx = fold(x);
    const eaten = (noise2(x * 0.4, y * 0.4, 211) - 0.5) * 2 + (noise2(x * 1.3, y * 1.3, 212) - 0.5) * 0.7;
    const ax = Math.abs(fx);
    let d = length2(Math.max(Math.abs(ax - (pitch / 2 - 25)) - 4.5, 0), Math.abs(y) - 60) - 4.2 + eaten;
    d = Math.min(d, length2(ax - pitch / 2, Math.max(Math.abs(Math.abs(y) - 33) - 3.5, 0)) - 3.4 + eaten);
    return d;
  }
  function bolts(x: number, y: number): number {
    const fx = fold(x);
    return Math.min(length2(Math.abs(fx) - pitch / 2, Math.abs(y) - 66) - 6.8, length2(fx, Math.abs(y) - 74) - 6.8);
  }

  function distance(x: number, y: number, z: number): number {
    let d = box(x, y, z + 150, 262, 96, 150, 1);
    const ruler = rule.distance(x, y, z);
    if (d > 6) return Math.min(d - 2, ruler);
    const fx = fold(x);
    d = carve(d, Math.min(coolant(x, y), bolts(x, y) - 1 * smooth(-1.6, 0, z)), 0.8);
    const r = length2(fx, y);
    d = carve(d, r - bore, 0.6);
    const top = pistonZ(x);
    const crown = extrude(r - bore + 0.35, z - top, 0.8);
    const bowl = length2(length2(fx - 3, y) - 8, (z - top) * 1.5) - 15;
    d = Math.min(d, carve(crown, bowl, 1.4));
    return Math.min(d, ruler);
  }

  function surface(x: number, y: number, z: number, _nx: number, _ny: number, nz: number, s: Surface): void {
    if (rule.distance(x, y, z) < 0.05) return rule.surface(x, y, z, nz, s);
    const fx = fold(x);
    const radius = length2(fx, y);
    const cloud = fbm2(x * 0.04, y * 0.04, 6, 221);
    const fine = fbm2(x * 0.5, y * 0.5, 4, 222);
    if (z < -1.1 && radius < bore + 0.4) {
      if (radius > bore - 0.25) {
        // Bore: crosshatch above, polished streaks along the stroke, a black ring of carbon at the top.
        const a = Math.atan2(y, fx) * bore;
        const hatch = Math.sin((a + z * 1.6) * 4) * 0.5 + Math.sin((a - z * 1.6) * 4.1) * 0.5;
        const worn = smooth(0.45, 0.6, fbm2(a * 0.09, z * 0.015, 4, 223));
        let v = 0.42 + 0.05 * hatch * (1 - worn) + 0.06 * (noise2(a * 1.4, z * 0.03, 224) - 0.5);
        const carbon = smooth(-10, -7, z + noise2(a * 0.3, 0, 225) * 2);
        v = mix(v, 0.05, carbon * 0.9);
        s.r = v; s.g = v * 0.985; s.b = v * 0.96;
        s.metal = 0.85 * (1 - carbon); s.rough = mix(0.27, 0.7, carbon); s.coat = 0.3; s.coatRough = 0.25;
        s.relief = 0.5;
        return;
      }
      const crust = fbm2(x * 0.12, y * 0.12, 5, 226);
      const v = mix(0.03, 0.15, crust);
      const washed = smooth(36, 49, radius) * 0.5;
      s.r = mix(v, 0.4, washed); s.g = mix(v * 0.96, 0.39, washed); s.b = mix(v * 0.9, 0.37, washed);
      s.metal = mix(0.2, 0.75, washed); s.rough = 0.55; s.coat = 0.25; s.coatRough = 0.2; s.relief = 1.3;
      return;
    }
    const hole = coolant(x, y);
    const bolted = bolts(x, y);
    if (nz < 0.6 && z < -0.5) {
      const deep = Math.exp(Math.max(z, -60) / 9);
      if (bolted < 1.4) {
        const thread = 0.5 + 0.5 * Math.sin(z * 4.2);
        const v = 0.2 * thread * deep;
        s.r = v * 1.05; s.g = v * 0.98; s.b = v * 0.9; s.metal = 0.6; s.rough = 0.45;
        return;
      }
      const rusty = fbm3(x * 0.2, y * 0.2, z * 0.2, 4, 227);
      if (Math.abs(y) > 94) {
        const paint = smooth(0.42, 0.5, rusty);
        s.r = mix(0.12, 0.05, paint); s.g = mix(0.075, 0.07, paint); s.b = mix(0.05, 0.075, paint); s.rough = 0.6;
        return;
      }
      s.r = mix(0.09, 0.22, rusty) * deep; s.g = mix(0.055, 0.085, rusty) * deep; s.b = mix(0.04, 0.035, rusty) * deep;
      s.rough = 0.85; s.relief = 1.5;
      return;
    }
    let r = mix(0.2, 0.38, cloud);
    let g = r * 0.985;
    let b = r * 0.95;
    let metal = 0.68;
    let rough = 0.4 + 0.15 * fine;
    const tool = Math.sin((x + noise2(x * 0.05, y * 0.05, 228) * 0.3 + y * 0.04) * 4.1);
    r *= 1 + 0.04 * tool; g *= 1 + 0.04 * tool; b *= 1 + 0.04 * tool;
    // Gasket: black composition left in strips, orange sealant crumbs.
    const strip = smooth(0.5, 0.57, fbm2(x * 0.055 + 5, y * 0.055, 6, 229)) * smooth(52, 54, radius) * smooth(0.3, 1.6, Math.min(hole, bolted));
    r = mix(r, 0.045, strip * 0.92); g = mix(g, 0.044, strip * 0.92); b = mix(b, 0.046, strip * 0.92);
    metal = mix(metal, 0.02, strip); rough = mix(rough, 0.8, strip);
    const fire = smooth(2.4, 1.6, Math.abs(radius - 52.6));
    r = mix(r, 0.5, fire * 0.55); g = mix(g, 0.495, fire * 0.55); b = mix(b, 0.48, fire * 0.55);
    const edge = smooth(0.5, 0.1, Math.abs(radius - 55.2));
    r *= 1 - 0.5 * edge; g *= 1 - 0.5 * edge; b *= 1 - 0.5 * edge;
    const halo = smooth(8, 0.2, hole + (fine - 0.5) * 8) * smooth(0.3, 0.62, fbm2(x * 0.22, y * 0.22, 4, 230) + 0.16);
    r = mix(r, mix(0.25, 0.1, fine), halo * 0.85); g = mix(g, mix(0.11, 0.05, fine), halo * 0.85); b = mix(b, mix(0.04, 0.024, fine), halo * 0.85);
    metal = mix(metal, 0.02, halo); rough = mix(rough, 0.84, halo);
    const oil = smooth(0.5, 0.64, fbm2(x * 0.022 + 7, y * 0.022, 4, 231));
    s.coat = oil * 0.8 * (1 - halo); s.coatRough = 0.16;
    r *= 1 - oil * 0.3; g *= 1 - oil * 0.32; b *= 1 - oil * 0.38;
    // Scraped bright where the hairline was looked for.
    const rubbed = smooth(14, 6, length2(x - (passage[0] + bolt[0]) / 2 - 1, (y + 63) * 1.25)) * (0.8 + 0.2 * fine);
    const drag = 0.05 * (noise2((x + y) * 0.2, (x - y) * 3.2, 232) - 0.5);
    r = mix(r, 0.4 + drag, rubbed); g = mix(g, 0.395 + drag, rubbed); b = mix(b, 0.38 + drag, rubbed);
    metal = mix(metal, 0.6, rubbed); rough = mix(rough, 0.36, rubbed); s.coat *= 1 - rubbed;
    const d = lines.at(x, y);
    const stain = smooth(0.9, 0.1, d) * 0.35;
    const open = smooth(0.09, -0.03, d);
    r *= 1 - stain; g *= 1 - stain * 1.15; b *= 1 - stain * 1.3;
    r = mix(r, 0.012, open); g = mix(g, 0.01, open); b = mix(b, 0.008, open);
    metal *= 1 - open; rough = mix(rough, 0.9, open);
    s.r = r; s.g = g; s.b = b; s.metal = metal; s.rough = rough;
  }

  function bump(x: number, y: number, z: number): number {
    if (rule.distance(x, y, z) < 0.06) return rule.bump(x, y);
    const radius = length2(fold(x), y);
    if (z < -1.1 && radius < bore + 0.4) {
      if (radius > bore - 0.25) return 0.004 * noise2(Math.atan2(y, fold(x)) * 90, z * 0.05, 233);
      return 0.14 * fbm2(x * 0.4, y * 0.4, 4, 234);
    }
    const strip = smooth(0.5, 0.57, fbm2(x * 0.055 + 5, y * 0.055, 6, 229)) * smooth(52, 54, radius);
    return 0.005 * Math.sin((x + y * 0.04) * 4.1) + strip * 0.16 * (0.6 + 0.4 * fbm2(x * 0.8, y * 0.8, 3, 235)) + 0.05 * fbm2(x * 0.9, y * 0.9, 3, 236) - 0.1 * smooth(0.22, 0, lines.at(x, y));
  }

  const onDeck = (p: Point): Vector => [p[0], p[1], 0];
  return {
    name: 'block-deck',
    what: 'Top deck of the block seen from above and the side; fan end to the left; cylinder 2 left, cylinder 3 right.',
    view: { width: 1680, height: 1260, focal: 1.3, eye: [-22, -262, 168], target: [-8, -36, -8], up: [0, 0.3, 1], rollDegrees: 1.6 },
    seed: 1203,
    apertureMm: 1.2, focusMm: 285, nearMm: 80, farMm: 1600,
    exposure: 0.62, noise: 0.055, occlusionMm: 22, normalMm: 0.05, step: 0.9,
    lights: [
      { at: [-460, 300, 520], radius: 150, colour: [0.62, 0.68, 0.76] },
      { at: [240, -200, 700], radius: 190, colour: [0.26, 0.235, 0.2] },
    ],
    surroundings: shed,
    truth: {
      features: { ...rule.features(), 'bolt hole 5': onDeck(bolt), 'coolant passage 2': onDeck(passage), 'bore 2': [centreX(2), 0, 0], 'bore 3': [centreX(3), 0, 0] },
      cracks: { 'passage to bolt hole': hairline.map(onDeck) },
      planes: { deck: { origin: [0, 0, 0], u: [1, 0, 0], v: [0, 1, 0], what: 'the machined deck, z = 0' }, rule: { origin: rule.world(0, 0), u: [1, 0, 0], v: [0, 1, 0], what: 'upper face of the steel rule, 0.9 mm above the deck' } },
    },
    orientation: 1, takenAt: '2026:05:12 11:26:03', offset: '+01:00',
    distance, surface, bump,
  };
}
