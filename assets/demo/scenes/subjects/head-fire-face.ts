import { benchBump, benchTop } from '../engine/bench.ts';
import type { Vector } from '../engine/camera.ts';
import { type Cells, cells2, clamp01, fbm2, fbm3, mix, noise2, smooth } from '../engine/noise.ts';
import { SteelRule } from '../engine/rule.ts';
import { type Scene, type Surface, shed } from '../engine/scene.ts';
import { box, carve, extrude, length2 } from '../engine/solids.ts';
import { crackLine, type Point, StrokeMap } from '../engine/strokes.ts';

/**
 * A four-cylinder head lying face up: its fire face is the plane z = 0, x along the engine away from the fan end.
 * Cylinder c has its centre at x = (c - 2.5) * 118.
 */
const pitch = 118;
const centreX = (cylinder: number): number => (cylinder - 2.5) * pitch;
const intake = { y: 26, seat: 24.5, valve: 21.8 };
const exhaust = { y: -24.5, seat: 21, valve: 18.4 };
const injector = { x: 34, y: 1.5, sleeve: 8.2, bore: 4.3 };

export function scene(): Scene {
  const rule = new SteelRule({ x: -104, y: -107, z: 0.9, degrees: 4.5, lengthMm: 150, widthMm: 25 });
  const seatToBore = ((): Point[] => {
    const dx = injector.x;
    const dy = injector.y - exhaust.y;
    const l = length2(dx, dy);
    const from: Point = [centreX(3) + (dx / l) * (exhaust.seat - 1.4), exhaust.y + (dy / l) * (exhaust.seat - 1.4)];
    const to: Point = [centreX(3) + injector.x - (dx / l) * injector.sleeve, injector.y - (dy / l) * injector.sleeve];
    return crackLine(from, to, 0.1, 4, 77);
  })();
  const branchFrom = seatToBore[9] ?? [0, 0];
  const branch = crackLine(branchFrom, [branchFrom[0] + 3.4, branchFrom[1] - 1.6], 0.16, 3, 78);
  const lines = new StrokeMap(40, -30, 110, 20, 24, 3, [
    { points: seatToBore, half: 0.16, halfEnd: 0.08 },
    { points: branch, half: 0.07, halfEnd: 0.02 },
  ]);
  const checks = { x: centreX(2) + 1, y: 1.6, a: 8.2, b: 2.6 };
  const web: Cells = { first: 0, second: 0, id: 0 };

  /** Folded into one cylinder's frame; ends of the head stay unfolded. */
  const fold = (x: number): number => x - pitch * (Math.min(1, Math.max(-2, Math.round(x / pitch - 0.5))) + 0.5);

  function holes(x: number, y: number): number {
    const fx = fold(x);
    const ax = Math.abs(fx);
    const ay = Math.abs(y);
    let d = length2(ax - pitch / 2, ay - 70) - 7;
    d = Math.min(d, length2(ax - 14, ay - 78) - 6.6);
    // Coolant holes: long ones at the corners, drops between the cylinders, eaten at the edge.
    const eaten = (noise2(x * 0.32, y * 0.32, 91) - 0.5) * 3.2 + (noise2(x * 1.1, y * 1.1, 92) - 0.5) * 1;
    d = Math.min(d, length2(Math.max(Math.abs(ax - 41) - 6, 0), ay - 59) - 4.6 + eaten);
    d = Math.min(d, length2(ax - pitch / 2, Math.max(Math.abs(y + 30) - 5, 0)) - 4.2 + eaten);
    d = Math.min(d, length2(ax - pitch / 2, Math.max(Math.abs(y - 32) - 3, 0)) - 4 + eaten);
    d = Math.min(d, length2(fx - 57, y - 52) - 3.1);
    return d;
  }

  function distance(x: number, y: number, z: number): number {
    const bench = z + 92;
    let d = box(x, y, z + 45, 250, 92, 45, 1.2);
    if (d > 6) return Math.min(d - 2, bench, rule.distance(x, y, z));
    const fx = fold(x);
    d = carve(d, holes(x, y) , 0.9);
    const ri = length2(fx, y - intake.y);
    const re = length2(fx, y - exhaust.y);
    // Seat pockets with their cone, then the valve faces sunk in them.
    const ci = Math.max(ri - intake.seat + 1 + Math.max(-z * 0.9 - 1, -1), -z - 9);
    const ce = Math.max(re - exhaust.seat + 1 + Math.max(-z * 0.9 - 1, -1), -z - 9);
    d = Math.max(d, -Math.max(ci, -30 - z) * 0.72);
    d = Math.max(d, -Math.max(ce, -30 - z) * 0.72);
    const valveI = extrude(ri - intake.valve, Math.abs(z + 4.2 + ri * 0.012) - 2.4, 0.7);
    const dish = Math.max(re * 0.01, 0);
    const valveE = extrude(re - exhaust.valve, Math.abs(z + 4.5 + dish) - 2.4, 0.7);
    d = Math.min(d, valveI, valveE);
    const rj = length2(fx - injector.x, y - injector.y);
    d = carve(d, Math.max(rj - injector.sleeve, -z - 2.6), 0.5);
    d = Math.min(d, Math.max(extrude(rj - injector.sleeve + 0.15, z + 1.1, 0.6), -(rj - injector.bore)));
    return Math.min(d, bench, rule.distance(x, y, z));
  }

  function surface(x: number, y: number, z: number, _nx: number, _ny: number, nz: number, s: Surface): void {
    if (z < -88) {
      benchTop(x, y, s);
      return;
    }
    if (rule.distance(x, y, z) < 0.05) {
      rule.surface(x, y, z, nz, s);
      return;
    }
    const fx = fold(x);
    const ri = length2(fx, y - intake.y);
    const re = length2(fx, y - exhaust.y);
    const rj = length2(fx - injector.x, y - injector.y);
    const rb = length2(fx, y);
    const cloud = fbm2(x * 0.035, y * 0.035, 6, 63);
    const fine = fbm2(x * 0.4, y * 0.4, 4, 64);
    const hole = holes(x, y);

    if (z < -1.2 && ri < intake.valve + 0.4) {
      // Intake valve: dark, oily carbon.
      const crust = fbm2(x * 0.22, y * 0.22, 5, 65);
      const v = mix(0.016, 0.07, crust * crust);
      s.r = v * 1.06; s.g = v; s.b = v * 0.93;
      s.rough = 0.6; s.metal = 0.12; s.relief = 1.4;
      return;
    }
    if (z < -1.2 && re < exhaust.valve + 0.4) {
      // Exhaust valve: dry, pale tan to grey.
      const ash = fbm2(x * 0.16, y * 0.16, 5, 66);
      const worn = smooth(2, exhaust.valve, re);
      s.r = mix(0.16, 0.31, ash) * mix(0.6, 1, worn);
      s.g = mix(0.13, 0.255, ash) * mix(0.6, 1, worn);
      s.b = mix(0.105, 0.195, ash) * mix(0.6, 1, worn);
      s.rough = 0.72; s.metal = 0.15; s.relief = 1.1;
      return;
    }
    if (rj < injector.sleeve + 0.05 && z > -4) {
      // Copper sleeve, brown with heat.
      const tarnish = fbm2(x * 0.5, y * 0.5, 4, 67);
      s.r = mix(0.46, 0.2, tarnish); s.g = mix(0.3, 0.12, tarnish); s.b = mix(0.15, 0.07, tarnish);
      s.metal = 0.85; s.rough = 0.36; s.relief = 0.4;
      if (rj < injector.bore + 0.5) { s.r *= 0.25; s.g *= 0.25; s.b *= 0.25; }
      return;
    }
    if (z < -0.9 && (ri < intake.seat + 0.5 || re < exhaust.seat + 0.5)) {
      const v = mix(0.24, 0.4, fine);
      s.r = v; s.g = v * 0.98; s.b = v * 0.95; s.metal = 0.8; s.rough = 0.3; s.relief = 0.3;
      return;
    }
    if (nz < 0.6 && z < -0.6) {
      // Walls of holes and the cast sides: rust in the coolant holes, black in the bolt holes.
      const rusty = fbm3(x * 0.2, y * 0.2, z * 0.2, 4, 68);
      const wet = hole < 1.4 ? 1 : 0.4;
      const deep = Math.exp(Math.max(z, -40) / 7);
      s.r = mix(0.08, 0.2 * wet + 0.05, rusty) * deep; s.g = mix(0.055, 0.085, rusty) * deep; s.b = mix(0.04, 0.04, rusty) * deep;
      s.rough = 0.85; s.relief = 1.5;
      return;
    }
    // The face: milled iron, gasket print, soot inside the fire ring, rust round the coolant holes.
    let r = mix(0.22, 0.4, cloud);
    let metal = 0.72;
    let rough = 0.36 + 0.16 * fine;
    let g = r * 0.985;
    let b = r * 0.955;
    const tool = Math.sin((length2(x + 900, y - 40) + noise2(x * 0.06, y * 0.06, 62) * 0.2) * 5.2);
    const lit = 1 + 0.035 * tool;
    r *= lit; g *= lit; b *= lit;
    // Grey graphite left by the gasket.
    const print = smooth(0.53, 0.6, fbm2(x * 0.05 + 9, y * 0.05, 6, 69)) * smooth(53.6, 55.2, rb);
    r = mix(r, 0.1, print * 0.82); g = mix(g, 0.1, print * 0.82); b = mix(b, 0.104, print * 0.82);
    metal = mix(metal, 0.1, print); rough = mix(rough, 0.62, print);
    const smear = smooth(0.6, 0.72, fbm2(x * 0.11, y * 0.11 + 4, 5, 80));
    r = mix(r, r * 0.7, smear); g = mix(g, g * 0.68, smear); b = mix(b, b * 0.64, smear);
    // The bright band the fire ring has kept clean, and its two pressed edges.
    const ring = smooth(1.7, 1.2, Math.abs(rb - 52.2));
    r = mix(r, 0.6, ring * 0.75); g = mix(g, 0.6, ring * 0.75); b = mix(b, 0.585, ring * 0.75);
    metal = mix(metal, 0.92, ring); rough = mix(rough, 0.3, ring);
    const edge = smooth(0.55, 0.1, Math.abs(Math.abs(rb - 52.2) - 1.9));
    r *= 1 - 0.55 * edge; g *= 1 - 0.57 * edge; b *= 1 - 0.6 * edge;
    // Soot.
    const inside = smooth(50.6, 49.4, rb);
    if (inside > 0) {
      const patch = fbm2(x * 0.075 + 31, y * 0.075, 5, 70);
      const thick = clamp01(0.8 + 1.4 * (patch - 0.4)) * 0.97;
      const dark = mix(0.02, 0.07, fine);
      const warm = smooth(0.3, 0.5, patch);
      const nearExhaust = smooth(34, 20, re);
      const sr = mix(dark * 1.05, mix(0.11, 0.3, nearExhaust), (1 - warm) * 0.7 + nearExhaust * 0.32);
      const sg = mix(dark, mix(0.095, 0.25, nearExhaust), (1 - warm) * 0.7 + nearExhaust * 0.3);
      const sb = mix(dark * 0.95, mix(0.08, 0.19, nearExhaust), (1 - warm) * 0.7 + nearExhaust * 0.28);
      r = mix(r, sr, inside * thick); g = mix(g, sg, inside * thick); b = mix(b, sb, inside * thick);
      metal = mix(metal, 0.15, inside * thick); rough = mix(rough, 0.66, inside * thick);
      // Rubbed clean between the seats and towards the injector, so that the damage can be seen.
      const rubbed = Math.max(
        smooth(11, 5, length2((x - checks.x) * 0.62, y - checks.y)),
        smooth(11, 5.5, length2(x - centreX(3) - 21, y + 8)),
      ) * (0.72 + 0.28 * fine);
      r = mix(r, 0.37, rubbed); g = mix(g, 0.36, rubbed); b = mix(b, 0.345, rubbed);
      metal = mix(metal, 0.55, rubbed); rough = mix(rough, 0.42, rubbed);
    }
    // Seat ring rims.
    const rims = Math.max(smooth(0.5, 0.1, Math.abs(ri - intake.seat - 1.5)), smooth(0.5, 0.1, Math.abs(re - exhaust.seat - 1.5)));
    r *= 1 - 0.3 * rims; g *= 1 - 0.3 * rims; b *= 1 - 0.3 * rims;
    // Rust halo at the coolant holes.
    const coolant = Math.min(Math.abs(Math.abs(fx) - 41) < 20 && Math.abs(y) > 45 ? hole : 9, Math.abs(Math.abs(fx) - pitch / 2) < 14 && Math.abs(y) < 46 ? hole : 9);
    const halo = smooth(8.5, 0.2, coolant + (fine - 0.5) * 9) * smooth(0.25, 0.6, fbm2(x * 0.25, y * 0.25, 4, 71) + 0.18);
    r = mix(r, mix(0.24, 0.1, fine), halo * 0.85); g = mix(g, mix(0.105, 0.05, fine), halo * 0.85); b = mix(b, mix(0.04, 0.025, fine), halo * 0.85);
    metal = mix(metal, 0.02, halo); rough = mix(rough, 0.82, halo);
    const crust = smooth(1.3, 0.5, coolant + (fine - 0.5) * 2.4);
    r = mix(r, 0.52, crust * 0.6); g = mix(g, 0.46, crust * 0.6); b = mix(b, 0.38, crust * 0.6);
    metal = mix(metal, 0, crust * 0.7);
    // Scratches from the scraper.
    const scratch = smooth(0.86, 0.93, noise2(x * 0.08 + y * 0.02, y * 3.4 - x * 0.7, 72)) * smooth(0.5, 0.7, cloud);
    r = mix(r, 0.62, scratch * 0.5); g = mix(g, 0.62, scratch * 0.5); b = mix(b, 0.61, scratch * 0.5);
    // Oil film.
    const oil = smooth(0.56, 0.68, fbm2(x * 0.02 + 3, y * 0.02 - 8, 4, 73));
    s.coat = oil * 0.75; s.coatRough = 0.2;
    r *= 1 - oil * 0.25; g *= 1 - oil * 0.27; b *= 1 - oil * 0.33;
    // Heat checks: edges of small cells, fading out of the bridge.
    const field = smooth(1.1, 0.72, length2((x - checks.x) / checks.a, (y - checks.y) / checks.b));
    if (field > 0) {
      cells2(x * 0.62 + (noise2(x, y, 74) - 0.5) * 0.4, y * 0.62 + (noise2(x, y, 75) - 0.5) * 0.4, 76, web);
      const gap = smooth(0.16, 0.03, web.second - web.first) * field;
      r = mix(r, 0.02, gap * 0.92); g = mix(g, 0.017, gap * 0.92); b = mix(b, 0.015, gap * 0.92);
      metal *= 1 - gap; rough = mix(rough, 0.8, gap);
    }
    const d = lines.at(x, y);
    const open = smooth(0.1, -0.04, d);
    const bleed = smooth(0.85, 0.1, d) * 0.42;
    r = mix(r, r * 0.5, bleed); g = mix(g, g * 0.46, bleed); b = mix(b, b * 0.42, bleed);
    r = mix(r, 0.01, open); g = mix(g, 0.009, open); b = mix(b, 0.008, open);
    metal *= 1 - open; rough = mix(rough, 0.9, open);
    s.coat *= 1 - Math.max(open, halo);
    s.r = r; s.g = g; s.b = b; s.metal = metal; s.rough = rough;
    s.relief = 1;
  }

  function bump(x: number, y: number, z: number): number {
    if (z < -88) return benchBump(x, y);
    if (rule.distance(x, y, z) < 0.06) return rule.bump(x, y);
    const fx = fold(x);
    const inside = smooth(50.6, 49.4, length2(fx, y));
    const tool = 0.004 * Math.sin((length2(x + 900, y - 40) + noise2(x * 0.06, y * 0.06, 62) * 0.2) * 5.2);
    const soot = inside * 0.11 * fbm2(x * 0.7, y * 0.7, 4, 81);
    const ring = 0.08 * smooth(1.9, 2.1, Math.abs(length2(fx, y) - 52.2));
    const pits = 0.1 * fbm2(x * 0.9, y * 0.9, 3, 82) * (0.25 + smooth(9, 0, holes(x, y)));
    const gap = -0.12 * smooth(0.25, 0, lines.at(x, y));
    return tool + soot + ring + pits + gap + (z < -1.2 ? 0.12 * fbm2(x * 0.35, y * 0.35, 4, 83) : 0);
  }

  const onFace = (p: Point): Vector => [p[0], p[1], 0];
  const features: Record<string, Vector> = { ...rule.features() };
  for (const c of [2, 3]) {
    features[`injector bore ${c}`] = [centreX(c) + injector.x, injector.y, -0.9];
    features[`intake seat ${c}`] = [centreX(c), intake.y, 0];
    features[`exhaust seat ${c}`] = [centreX(c), exhaust.y, 0];
    features[`bridge ${c}`] = [centreX(c), 1.6, 0];
  }
  features['bolt hole between 2 and 3, near side'] = [0, -70, 0];
  features['bolt hole between 2 and 3, far side'] = [0, 70, 0];
  const ellipse = Array.from({ length: 20 }, (_, i): Vector => {
    const a = (i / 20) * 2 * Math.PI;
    return [checks.x + checks.a * 1.02 * Math.cos(a), checks.y + checks.b * 1.02 * Math.sin(a), 0];
  });

  return {
    name: 'head-fire-face',
    what: 'Cylinder head lying face up on the bench, fire face seen from below; fan end to the left; cylinders 2 and 3 in full.',
    view: { width: 1680, height: 1260, focal: 1.3, eye: [10, -196, 300], target: [3, -12, 0], up: [0, 0.9, 0.4], rollDegrees: -2.2 },
    seed: 1101,
    apertureMm: 1.1, focusMm: 358, nearMm: 120, farMm: 1600,
    exposure: 0.64, noise: 0.055, occlusionMm: 14, normalMm: 0.05, step: 0.9,
    lights: [
      { at: [-420, 330, 560], radius: 150, colour: [0.5, 0.55, 0.62] },
      { at: [260, -340, 760], radius: 190, colour: [0.3, 0.275, 0.235] },
    ],
    surroundings: shed,
    truth: {
      features,
      cracks: { 'seat to injector bore, cylinder 3': seatToBore.map(onFace), 'side branch': branch.map(onFace) },
      areas: { 'heat checks, bridge 2': ellipse },
      planes: { 'fire face': { origin: [0, 0, 0], u: [1, 0, 0], v: [0, 1, 0], what: 'the machined face, z = 0' }, rule: { origin: rule.world(0, 0), u: [1, 0, 0], v: [0, 1, 0], what: 'upper face of the steel rule, 0.9 mm above the fire face' } },
      remarks: ['Seen from below: left and right of the machine are swapped.'],
    },
    orientation: 1, takenAt: '2026:05:12 10:42:18', offset: '+01:00',
    distance, surface, bump,
  };
}
