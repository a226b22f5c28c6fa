import { oldPaint, paintBump } from '../engine/bench.ts';
import type { Vector } from '../engine/camera.ts';
import { fbm2, fbm3, mix, noise2, smooth } from '../engine/noise.ts';
import { type Scene, type Surface, shed } from '../engine/scene.ts';
import { blend, box, carve, cylinder, extrude, hexagon, length2, length3 } from '../engine/solids.ts';

/** Engine-to-frame strap: braided copper, its lug bolted to the frame (plane z = 0) at the origin; the braid leaves to the upper left. */
const turn = (148 * Math.PI) / 180;
const c = Math.cos(turn);
const sn = Math.sin(turn);
const braidHalf = 10;

export function scene(): Scene {
  const along = (x: number, y: number): number => x * c + y * sn;
  const across = (x: number, y: number): number => -x * sn + y * c;
  /** Height of the braid's middle over the frame: it lifts off in a slack bow. */
  const bow = (u: number): number => 5 + 20 * smooth(20, 86, u) - 8 * smooth(96, 150, u);
  const crustHeight = (x: number, y: number, z: number): number => 4.2 * (fbm3(x * 0.14, y * 0.14, z * 0.14, 4, 1101) - 0.43) + 1.2 * (fbm3(x * 0.55, y * 0.55, z * 0.55, 3, 1102) - 0.4);

  const metalParts = (x: number, y: number, z: number): number => {
    const u = along(x, y);
    const v = across(x, y);
    let lug = extrude(length2(x, y) - 14, Math.abs(z - 2) - 1.9, 0.7);
    lug = blend(lug, box(u - 19, v, z - 2.6, 12, 8, 2.2, 1), 3);
    lug = blend(lug, box(u - 31, v, z - 4.6, 11, 11.4, 4.2, 2), 3);
    const crimp = Math.min(length2(u - 27, z - 9.4), length2(u - 34, z - 9.4)) - 1.6;
    lug = carve(lug, Math.max(crimp, Math.abs(v) - 9), 0.8);
    const washer = cylinder(x, y, z - 4.6, 11.4, 0.9, 0.4);
    const bolt = Math.max(extrude(hexagon(x * 0.94 - y * 0.34, x * 0.34 + y * 0.94, 8.4), Math.abs(z - 9.2) - 3.6, 0.5), length2(length2(x, y), z - 1) - 14.4);
    return Math.min(lug, washer, bolt);
  };
  const braid = (x: number, y: number, z: number): number => {
    const u = along(x, y);
    const v = across(x, y);
    const h = z - bow(u);
    const weave = 0.34 * Math.max(Math.sin((u + v) * 1.75), Math.sin((u - v) * 1.75));
    const frayed = 0.5 * (noise2(u * 0.2, v * 0.4, 1103) - 0.5);
    return box(u - 130, v + frayed, h, 96, braidHalf, 2, 1.6) * 0.75 - weave * 0.4;
  };
  const crust = (x: number, y: number, z: number, parts: number, copper: number): number => {
    // Blooms from under the lug and along the crimp.
    const near = Math.min(parts, copper + Math.max(0, along(x, y) - 58) * 0.2, z + Math.max(0, length2(x + 5, y - 3) - 22) * 0.5);
    if (near > 4.5) return (near - 2.6) * 0.7;
    const reach = 1.5 - 0.045 * Math.max(0, length3(x + 10, y - 6, z) - 17);
    return (near - Math.max(-1.4, Math.min(2.6, crustHeight(x, y, z) + reach - 1.5))) * 0.7;
  };

  function distance(x: number, y: number, z: number): number {
    if (z > 44) return z - 40;
    const parts = metalParts(x, y, z);
    const copper = braid(x, y, z);
    let d = Math.min(z, parts, copper);
    if (length2(x + 14, y - 8) < 74 && z < 24) d = Math.min(d, crust(x, y, z, parts, copper));
    // A cable clipped below, and the edge of a gusset.
    const cable = length2(y + 66 + 0.0012 * (x - 20) * (x - 20), z - 8) - 7;
    return Math.min(d, cable * 0.95, box(x - 118, y - 20, z - 26, 7, 130, 26, 1.5));
  }

  function surface(x: number, y: number, z: number, _nx: number, _ny: number, _nz: number, s: Surface): void {
    const fine = fbm3(x * 0.6, y * 0.6, z * 0.6, 4, 1111);
    const cloud = fbm3(x * 0.07, y * 0.07, z * 0.07, 5, 1112);
    const near = length2(x + 14, y - 8) < 74 && z < 24;
    if (near && crust(x, y, z, metalParts(x, y, z), braid(x, y, z)) < 0.07 && Math.min(metalParts(x, y, z), braid(x, y, z), z) > 0.14) {
      // Powder: white to blue-green, rust bleeding at its foot.
      const green = smooth(0.36, 0.6, cloud);
      s.r = mix(0.58, 0.22, green) * mix(0.7, 1.1, fine); s.g = mix(0.6, 0.4, green) * mix(0.7, 1.1, fine); s.b = mix(0.54, 0.35, green) * mix(0.7, 1.1, fine);
      const foot = smooth(2.4, 0.4, z) * smooth(0.4, 0.62, fine + 0.1);
      s.r = mix(s.r, 0.2, foot * 0.7); s.g = mix(s.g, 0.1, foot * 0.7); s.b = mix(s.b, 0.05, foot * 0.7);
      s.rough = 0.95; s.relief = 3;
      return;
    }
    if (braid(x, y, z) < 0.1) {
      const u = along(x, y);
      const v = across(x, y);
      const crest = smooth(-0.4, 0.9, Math.max(Math.sin((u + v) * 1.75), Math.sin((u - v) * 1.75)));
      const verdigris = smooth(0.4, 0.62, cloud + 0.5 * smooth(90, 36, u) - 0.12);
      s.r = mix(0.035, mix(0.34, 0.13, verdigris), crest); s.g = mix(0.024, mix(0.2, 0.25, verdigris), crest); s.b = mix(0.018, mix(0.125, 0.2, verdigris), crest);
      s.metal = 0.7 * crest * (1 - verdigris); s.rough = mix(0.42, 0.8, verdigris);
      return;
    }
    if (metalParts(x, y, z) < 0.06) {
      const bolt = length2(x, y) < 11.8 && z > 3.7;
      const rust = smooth(0.36, 0.58, fbm3(x * 0.2, y * 0.2, z * 0.2, 4, 1113));
      if (bolt) { s.r = mix(0.3, 0.1, rust); s.g = mix(0.285, 0.048, rust); s.b = mix(0.26, 0.024, rust); s.metal = 0.75 * (1 - rust); s.rough = mix(0.42, 0.85, rust); }
      else { s.r = mix(0.4, 0.16, rust); s.g = mix(0.38, 0.27, rust); s.b = mix(0.35, 0.23, rust); s.metal = 0.75 * (1 - rust); s.rough = mix(0.42, 0.85, rust); }
      return;
    }
    if (z > 0.4 && x < 100) {
      s.r = mix(0.015, 0.035, fine); s.g = mix(0.015, 0.033, fine); s.b = mix(0.016, 0.032, fine); s.rough = 0.55;
      const lying = smooth(0.4, 0.66, cloud) * 0.5;
      s.r = mix(s.r, 0.14, lying); s.g = mix(s.g, 0.11, lying); s.b = mix(s.b, 0.08, lying);
      return;
    }
    oldPaint(x, y, z, [0.052, 0.105, 0.125], 0.4, s);
    // Paint lifted and iron rusted round the joint; a pale run below it.
    const eaten = smooth(42, 22, length2(x, y) + (fbm2(x * 0.08, y * 0.08, 4, 1114) - 0.5) * 34);
    s.r = mix(s.r, mix(0.05, 0.15, fine), eaten); s.g = mix(s.g, mix(0.028, 0.066, fine), eaten); s.b = mix(s.b, mix(0.018, 0.03, fine), eaten); s.rough = mix(s.rough, 0.9, eaten);
    const run = smooth(10, 2, Math.abs(x + 3 + (noise2(y * 0.06, 4, 1115) - 0.5) * 14)) * smooth(-4, -14, y) * smooth(-96, -30, y) * smooth(0.3, 0.6, fine + 0.2);
    s.r = mix(s.r, 0.3, run * 0.4); s.g = mix(s.g, 0.33, run * 0.4); s.b = mix(s.b, 0.28, run * 0.4);
  }
  function bump(x: number, y: number, z: number): number {
    if (z < 0.3) return paintBump(x, y, z, 0.4) + 0.2 * smooth(42, 22, length2(x, y)) * fbm3(x * 0.5, y * 0.5, z * 0.5, 3, 1116);
    return 0.09 * fbm3(x * 1.1, y * 1.1, z * 1.1, 4, 1117);
  }

  const at = (u: number, v: number, z: number): Vector => [u * c - v * sn, u * sn + v * c, z];
  const outline = Array.from({ length: 26 }, (_, i): Vector => {
    const k = (i / 26) * 2 * Math.PI;
    return at(17 + 32 * Math.cos(k), 18 * Math.sin(k), 3);
  });
  return {
    name: 'battery-strap',
    what: 'Earth strap between engine and frame: the lug at the frame end.',
    view: { width: 1200, height: 900, focal: 1.45, eye: [34, -70, 208], target: [-14, 4, 4], up: [0, 1, 0.1], rollDegrees: -2.2 },
    seed: 2309,
    apertureMm: 1.4, focusMm: 226, nearMm: 120, farMm: 800,
    exposure: 0.95, noise: 0.06, occlusionMm: 12, normalMm: 0.04, step: 0.75,
    lights: [
      { at: [-380, 420, 400], radius: 120, colour: [0.6, 0.65, 0.72] },
      { at: [320, -40, 420], radius: 160, colour: [0.22, 0.2, 0.17] },
    ],
    surroundings: shed,
    truth: {
      features: { 'bolt, middle of its head': [0, 0, 12.8], 'end of the crimp': at(42, 0, 8.8), 'braid at 90 mm': at(90, 0, bow(90) + 2) },
      areas: { corroded: outline },
      planes: { frame: { origin: [0, 0, 0], u: [1, 0, 0], v: [0, -1, 0], what: 'painted frame, z = 0' } },
    },
    orientation: 1, takenAt: '2026:03:16 10:12:09', offset: '+01:00',
    distance, surface, bump,
  };
}
