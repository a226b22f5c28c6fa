import { oldPaint, paintBump } from '../engine/bench.ts';
import type { Vector } from '../engine/camera.ts';
import { HeightMap } from '../engine/height-map.ts';
import { fbm2, hash3, mix, noise2, smooth } from '../engine/noise.ts';
import { type Scene, type Surface, shed } from '../engine/scene.ts';
import { box, capsule, length2, rectangle } from '../engine/solids.ts';

/** Radiator core seen from the air side: front of the fins at z = 0, tubes upright (along y), x to the right. Chaff lies over the lower left. */
const tubePitch = 11;
const finPitch = 2.5;

export function scene(): Scene {
  const clogging = (x: number, y: number): number => {
    const edge = (fbm2(x * 0.028, y * 0.028, 5, 601) - 0.5) * 78;
    return smooth(10, -16, length2((x + 34) * 0.8, (y + 34) * 1.05) - 72 + edge);
  };
  const covered = new HeightMap(-170, -130, 170, 120, 2, clogging);
  const cover = (x: number, y: number): number => covered.at(x, y);
  /** Height of the felted dust and husk lying on the fins. */
  const felted = new HeightMap(-170, -130, 170, 120, 2.6, (x, y) => {
    const c = cover(x, y);
    return -3.2 + c * (3.4 + 2.6 * fbm2(x * 0.07, y * 0.07, 4, 602)) + 0.9 * fbm2(x * 0.45, y * 0.45, 3, 603) * c;
  });
  const felt = (x: number, y: number): number => felted.at(x, y);
  const straw: { a: Vector; b: Vector; r: number }[] = [];
  for (let i = 0; i < 900 && straw.length < 330; i++) {
    const x = (hash3(i, 1, 0, 604) - 0.5) * 300;
    const y = (hash3(i, 2, 0, 604) - 0.5) * 230;
    const stray = hash3(i, 7, 0, 604) < 0.07;
    if (hash3(i, 3, 0, 604) > cover(x, y) && !stray) continue;
    const turn = hash3(i, 4, 0, 604) * Math.PI;
    const half = 2 + 9 * hash3(i, 5, 0, 604) ** 2;
    const tilt = (hash3(i, 6, 0, 604) - 0.5) * 1.6;
    const z = Math.max(felt(x, y) + 0.3, stray ? 0.5 : -3);
    straw.push({
      a: [x - half * Math.cos(turn), y - half * Math.sin(turn), z - tilt], b: [x + half * Math.cos(turn), y + half * Math.sin(turn), z + tilt],
      r: 0.28 + 0.45 * hash3(i, 8, 0, 604),
    });
  }
  // Straws by grid cell, so that a point asks only those near it.
  const cellMm = 8;
  const nearBy = new Map<number, number[]>();
  straw.forEach((s, index) => {
    const x0 = Math.floor((Math.min(s.a[0], s.b[0]) - 3) / cellMm);
    const x1 = Math.floor((Math.max(s.a[0], s.b[0]) + 3) / cellMm);
    const y0 = Math.floor((Math.min(s.a[1], s.b[1]) - 3) / cellMm);
    const y1 = Math.floor((Math.max(s.a[1], s.b[1]) + 3) / cellMm);
    for (let j = y0; j <= y1; j++) for (let i = x0; i <= x1; i++) {
      const key = i * 1000 + j;
      const list = nearBy.get(key);
      if (list) list.push(index); else nearBy.set(key, [index]);
    }
  });
  function straws(x: number, y: number, z: number): number {
    if (z > 9) return z - 8;
    let d = 3;
    const list = nearBy.get(Math.floor(x / cellMm) * 1000 + Math.floor(y / cellMm));
    if (list) for (const i of list) {
      const s = straw[i];
      if (s) d = Math.min(d, capsule(x, y, z, s.a[0], s.a[1], s.a[2], s.b[0], s.b[1], s.b[2], s.r));
    }
    return d;
  }
  const bending = new HeightMap(-170, -130, 170, 120, 1.6, (x, y) => {
    const knock = smooth(0.6, 0.78, fbm2(x * 0.04 + 8, y * 0.05, 4, 605));
    return (noise2(x * 0.09, y * 0.2, 606) - 0.5) * 0.5 + knock * (noise2(x * 0.25, y * 0.35, 607) - 0.5) * 4.5;
  });
  function fins(x: number, y: number, z: number): number {
    const column = Math.floor(x / tubePitch + 0.5);
    const tube = box(x - column * tubePitch, 0, z + 24, 1.1, 1e4, 22.6, 1);
    const open = Math.floor(x / tubePitch);
    const across = x / tubePitch - open - 0.5;
    const wave = y + bending.at(x, y) * smooth(-7, 0, z) + across * finPitch * (open % 2 === 0 ? 1 : -1);
    const k = wave / finPitch;
    const sheet = (Math.abs(k - Math.round(k)) * finPitch - 0.11) * 0.75;
    const fin = Math.max(sheet, z + 0.4 + 0.6 * (noise2(open * 3.1, Math.round(k) * 1.7, 608) - 0.5), -z - 44);
    return Math.min(tube, fin);
  }
  const frame = (x: number, y: number, z: number): number => {
    const top = box(x, y - 112, z + 10, 400, 24, 22, 3);
    return Math.min(top, Math.max(rectangle(x, y + 140, 400, 40, 2), Math.abs(z) - 10));
  };

  function distance(x: number, y: number, z: number): number {
    if (z > 16) return z - 13;
    let d = frame(x, y, z);
    const back = z + 46;
    d = Math.min(d, back);
    d = Math.min(d, fins(x, y, z));
    const c = cover(x, y);
    if (c > 0.02) d = Math.min(d, (z - felt(x, y)) * 0.55);
    return Math.min(d, straws(x, y, z));
  }

  function surface(x: number, y: number, z: number, _nx: number, _ny: number, _nz: number, s: Surface): void {
    if (frame(x, y, z) < 0.06) {
      oldPaint(x, y, z, [0.03, 0.032, 0.034], 0.32, s);
      return;
    }
    const fine = fbm2(x * 0.8, y * 0.8, 4, 611);
    if (straws(x, y, z) < 0.08) {
      const tone = hash3(Math.round(x * 0.12), Math.round(y * 0.12), 3, 612);
      s.r = mix(0.3, 0.56, tone) * mix(0.8, 1.1, fine); s.g = mix(0.22, 0.44, tone) * mix(0.8, 1.1, fine); s.b = mix(0.1, 0.22, tone) * mix(0.8, 1.1, fine);
      s.rough = 0.6; s.relief = 0.2;
      return;
    }
    if (cover(x, y) > 0.02 && (z - felt(x, y)) < 0.12) {
      const husk = fbm2(x * 0.5 + 3, y * 0.5, 4, 613);
      const damp = smooth(0.45, 0.65, fbm2(x * 0.03, y * 0.03 + 6, 4, 614));
      s.r = mix(0.2, 0.36, husk) * (1 - 0.45 * damp); s.g = mix(0.155, 0.28, husk) * (1 - 0.46 * damp); s.b = mix(0.095, 0.165, husk) * (1 - 0.48 * damp);
      s.rough = 0.92; s.relief = 3;
      return;
    }
    const deep = Math.exp(Math.min(0, z) / 16);
    const column = Math.floor(x / tubePitch + 0.5);
    const tube = Math.abs(x - column * tubePitch) < 1.25;
    const dust = smooth(0.4, 0.62, fbm2(x * 0.03, y * 0.03, 4, 615)) * 0.7 + 0.2;
    const v = tube ? mix(0.2, 0.32, fine) : mix(0.17, 0.3, fine);
    s.r = mix(v, 0.2, dust) * deep; s.g = mix(v * 0.97, 0.165, dust) * deep; s.b = mix(v * 0.92, 0.12, dust) * deep;
    const green = tube ? smooth(0.66, 0.74, fbm2(x * 0.05, y * 0.04 + 14, 5, 616)) : 0;
    s.r = mix(s.r, 0.2, green); s.g = mix(s.g, 0.34, green); s.b = mix(s.b, 0.28, green);
    s.metal = 0.6 * (1 - dust) * (1 - green); s.rough = mix(0.4, 0.8, dust);
    s.relief = 0.4;
  }

  const bump = (x: number, y: number, z: number): number =>
    frame(x, y, z) < 0.06 ? paintBump(x, y, z, 0.32) : 0.16 * fbm2(x * 1.1, y * 1.1, 4, 617) + 0.1 * noise2(x * 3, y * 3, 618);

  const outline: Vector[] = [];
  for (let i = 0; i < 36; i++) {
    const k = (i / 36) * 2 * Math.PI;
    let reach = 20;
    for (let step = 20; step < 170; step += 0.5) if (cover(-34 + (step / 0.8) * Math.cos(k), -34 + (step / 1.05) * Math.sin(k)) > 0.4) reach = step;
    const y = -34 + (reach / 1.05) * Math.sin(k);
    outline.push([-34 + (reach / 0.8) * Math.cos(k), Math.max(y, -99), 0]);
  }
  return {
    name: 'radiator-fins',
    what: 'Radiator core seen from the air side, shroud off; top tank above.',
    view: { width: 1340, height: 1005, focal: 1.2, eye: [44, -34, 262], target: [4, 6, -4], up: [0, 1, 0], rollDegrees: -1.8 },
    seed: 1601,
    apertureMm: 1.3, focusMm: 266, nearMm: 120, farMm: 900,
    exposure: 0.82, noise: 0.055, occlusionMm: 7, normalMm: 0.05, step: 0.85,
    lights: [
      { at: [-420, 460, 420], radius: 150, colour: [0.6, 0.66, 0.74] },
      { at: [420, -60, 520], radius: 170, colour: [0.24, 0.22, 0.19] },
    ],
    surroundings: { ...shed, above: [0.24, 0.25, 0.27] },
    truth: {
      features: { 'tube at x = 0, middle': [0, 0, -0.4], 'tube at x = 66, middle': [66, 0, -0.4], 'lower edge of the top tank': [0, 88, 9], 'tube at x = 66, high': [66, 77, -0.4] },
      areas: { clogged: outline },
      planes: { 'front of the fins': { origin: [0, 0, 0], u: [1, 0, 0], v: [0, -1, 0], what: 'front of the core, z = 0; tubes every 11 mm, fins every 2.5 mm' } },
      remarks: ['The clogged outline is where four tenths of the felt stands, taken on the front of the fins.'],
    },
    orientation: 1, takenAt: '2026:05:11 09:20:37', offset: '+01:00',
    distance, surface, bump,
  };
}
