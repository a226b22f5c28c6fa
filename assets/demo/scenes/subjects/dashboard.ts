import { fbm2, fbm3, mix, noise2, smooth } from '../engine/noise.ts';
import type { Vector } from '../engine/camera.ts';
import { type Scene, type Surface, shed } from '../engine/scene.ts';
import { box, capsule, carve, cylinder, extrude, hexagon, length2, rectangle, torus } from '../engine/solids.ts';
import { lettering, letteringWidth, type Stroke, StrokeMap } from '../engine/strokes.ts';

/** Instrument panel, z = 0, x right, y up. Temperature and oil-pressure needles lie on their stops; the hour meter reads 04391. */
interface Gauge { readonly x: number; readonly y: number; readonly title: string; readonly scale: readonly string[]; readonly needle: number; }
const gauges: readonly Gauge[] = [
  { x: -86, y: 20, title: 'WATER °C', scale: ['40', '80', '120'], needle: 222 },
  { x: 0, y: 24, title: 'OIL KPA', scale: ['0', '300', '600'], needle: 221 },
  { x: 86, y: 20, title: 'VOLT', scale: ['10', '13', '16'], needle: 121 },
];
const face = 28;
const meter = { x: 0, y: -44, a: 30, b: 11 };

export function scene(): Scene {
  const dials = gauges.map((g) => {
    const strokes: Stroke[] = [];
    for (let i = 0; i <= 20; i++) {
      const a = ((225 - i * 13.5) * Math.PI) / 180;
      const inner = i % 10 === 0 ? 19 : i % 5 === 0 ? 20.6 : 22;
      strokes.push({ points: [[inner * Math.cos(a), inner * Math.sin(a)], [24.6 * Math.cos(a), 24.6 * Math.sin(a)]], half: i % 5 === 0 ? 0.5 : 0.24 });
    }
    g.scale.forEach((text, i) => {
      const a = ((225 - i * 135) * Math.PI) / 180;
      strokes.push(...lettering(text, 14.2 * Math.cos(a) - letteringWidth(text, 4) / 2 + 0.4, 13.4 * Math.sin(a) - 2 + (i === 1 ? -0.6 : 0), 4, 0.32));
    });
    strokes.push(...lettering(g.title, -letteringWidth(g.title, 3.2) / 2 + 0.4, -21, 3.2, 0.27));
    return new StrokeMap(-27, -27, 27, 27, 14, 1, strokes);
  });
  const drums = new StrokeMap(-30, -9, 30, 9, 16, 1, [
    ...['0', '4', '3', '9', '1', '6'].flatMap((digit, i) => lettering(digit, -25.2 + i * 9 - 1.6 + (i === 5 ? 0 : 0), -4.4 + (i === 5 ? 1.6 : i === 4 ? 0.3 : 0), 8.6, 0.62, 1)),
  ]);
  const labels = new StrokeMap(-130, -84, 130, 84, 10, 1, [
    ...lettering('HOURS', -letteringWidth('HOURS', 4) / 2, -64, 4, 0.32),
    ...lettering('0', 60, -34, 3.4, 0.28), ...lettering('I', 85, -25, 3.4, 0.28), ...lettering('II', 103, -29, 3.4, 0.28),
    ...lettering('CHARGE', -116, -62, 3.2, 0.26), ...lettering('OIL', -78, -62, 3.2, 0.26),
  ]);

  function needle(g: Gauge, x: number, y: number, z: number): number {
    const a = (g.needle * Math.PI) / 180;
    return capsule(x - g.x, y - g.y, z + 2.2, -4 * Math.cos(a), -4 * Math.sin(a), 0, 22.5 * Math.cos(a), 22.5 * Math.sin(a), 0, 0.75);
  }
  function distance(x: number, y: number, z: number): number {
    if (z > 26) return z - 22;
    let d = box(x, y, z + 30, 158, 84, 30, 7);
    d = Math.min(d, z + 58);
    if (d > 12) return d - 4;
    for (const g of gauges) {
      const r = length2(x - g.x, y - g.y);
      if (r > face + 12) continue;
      d = Math.max(d, -extrude(r - face, Math.abs(z) - 4.4, 0.2));
      d = Math.min(d, torus(x - g.x, y - g.y, z - 0.6, face + 1.6, 2.1), needle(g, x, y, z), cylinder(x - g.x, y - g.y, z + 1.6, 3.4, 1.2, 0.6));
    }
    const window = rectangle(x - meter.x, y - meter.y, meter.a, meter.b, 1.5);
    d = Math.max(d, -extrude(window, Math.abs(z) - 3, 0.2));
    d = Math.min(d, extrude(Math.abs(window - 1) - 1.4, Math.abs(z - 0.6) - 1.3, 0.5));
    if (window < 2) {
      const bar = Math.max(-2, Math.min(2, Math.round((x - meter.x - 0.4) / 9)));
      d = Math.min(d, box(x - meter.x - 0.4 - bar * 9, y - meter.y, z + 2.6, 0.35, 11, 1.1, 0.1));
    }
    // Key switch and two lamps.
    d = Math.min(d, cylinder(x - 86, y + 44, z - 2, 13, 3, 1), cylinder(x - 86, y + 44, z - 6, 8, 3, 0.8));
    d = Math.min(d, Math.max(hexagon(x - 86, y + 44, 12), Math.abs(z - 2) - 3.4));
    d = carve(d, box(x - 86, y + 44, z - 10, 0.9, 5, 3, 0.2), 0.3);
    const lamp = Math.abs(x + 88) - 16;
    d = Math.min(d, torus(lamp, y + 44, z - 0.6, 7.4, 1.8), extrude(length2(length2(lamp, y + 44), z + 3) - 8, -z - 2, 0.3));
    const sx = Math.abs(x) - 146;
    const sy = Math.abs(y) - 72;
    d = Math.min(d, Math.max(length2(length2(sx, sy), z + 4) - 6.4, -z));
    return Math.max(d, -box(sx, sy, z - 2.4, 4, 0.5, 0.9, 0.1));
  }

  function surface(x: number, y: number, z: number, _nx: number, _ny: number, nz: number, s: Surface): void {
    const fine = fbm3(x * 0.7, y * 0.7, z * 0.7, 4, 1011);
    const dust = smooth(0.34, 0.68, fbm2(x * 0.03, y * 0.03, 5, 1012) + 0.12 * (fine - 0.5));
    const chrome = (): void => {
      s.r = 0.56; s.g = 0.56; s.b = 0.57; s.metal = 1; s.rough = 0.16 + 0.25 * dust;
      const pit = smooth(0.6, 0.68, fbm3(x * 0.8, y * 0.8, z * 0.8, 3, 1013));
      s.r = mix(s.r, 0.14, pit); s.g = mix(s.g, 0.08, pit); s.b = mix(s.b, 0.045, pit); s.metal *= 1 - pit; s.rough = mix(s.rough, 0.8, pit); s.relief = 0.1;
    };
    for (let i = 0; i < gauges.length; i++) {
      const g = gauges[i];
      const map = dials[i];
      if (!g || !map) continue;
      const r = length2(x - g.x, y - g.y);
      if (r > face + 3.9) continue;
      if (r > face - 0.6 && z > -1.7) return chrome();
      s.relief = 0;
      if (needle(g, x, y, z) < 0.06) { s.r = 0.62; s.g = 0.2; s.b = 0.05; s.rough = 0.5; s.coat = 0.8; s.coatRough = 0.12; return; }
      if (r < 3.6 && z > -3.2) { s.r = 0.014; s.g = 0.014; s.b = 0.015; s.rough = 0.4; s.coat = 0.8; return; }
      const ink = smooth(0.09, -0.06, map.at(x - g.x, y - g.y));
      const aged = fbm2(x * 0.06, y * 0.06, 4, 1014);
      s.r = mix(0.016, mix(0.5, 0.62, aged), ink); s.g = mix(0.016, mix(0.47, 0.57, aged), ink); s.b = mix(0.017, mix(0.36, 0.42, aged), ink);
      s.rough = 0.7; s.coat = 0.9; s.coatRough = 0.1;
      // Dust and wipe marks on the glass; damp has got in behind one of them.
      const film = smooth(0.4, 0.75, fbm2(x * 0.05 + y * 0.02, y * 0.05, 5, 1015)) * 0.1 + (i === 0 ? 0.1 * smooth(4, -22, y - g.y) * fine * 1.6 : 0) + 0.05 * smooth(20, 28, r);
      s.r += film * 0.6; s.g += film * 0.56; s.b += film * 0.48;
      return;
    }
    const window = rectangle(x - meter.x, y - meter.y, meter.a, meter.b, 1.5);
    if (window < 0.2 && z < -0.6) {
      s.relief = 0;
      const last = x > meter.x + 18.4;
      const ink = smooth(0.09, -0.07, drums.at(x - meter.x, y - meter.y));
      const curve = 1 - 0.5 * Math.abs((y - meter.y) / meter.b) ** 2;
      const base = last ? [0.5, 0.48, 0.42] : [0.014, 0.014, 0.015];
      const figure = last ? [0.02, 0.02, 0.02] : [0.6, 0.57, 0.48];
      const bridge = [-2, -1, 0, 1, 2].some((i) => Math.abs(x - meter.x - 0.4 - i * 9) < 0.5);
      s.r = bridge ? 0.006 : mix(base[0] ?? 0, figure[0] ?? 0, ink) * curve; s.g = bridge ? 0.006 : mix(base[1] ?? 0, figure[1] ?? 0, ink) * curve; s.b = bridge ? 0.006 : mix(base[2] ?? 0, figure[2] ?? 0, ink) * curve;
      s.rough = 0.55; s.coat = 0.7; s.coatRough = 0.14;
      s.r += 0.012 * dust; s.g += 0.011 * dust; s.b += 0.009 * dust;
      return;
    }
    if (window < 3 && z > -0.7 && window > -0.6) return chrome();
    if (length2(x - 86, y + 44) < 14.2 && z > 0.2) return chrome();
    for (const lx of [-104, -72]) {
      const r = length2(x - lx, y + 44);
      if (r < 6.2 && z > 0.1) {
        s.relief = 0; s.rough = 0.3; s.coat = 1; s.coatRough = 0.08;
        if (lx < -90) { s.r = 0.11; s.g = 0.012; s.b = 0.01; } else { s.r = 0.13; s.g = 0.05; s.b = 0.008; }
        s.r += 0.06 * dust; s.g += 0.05 * dust; s.b += 0.04 * dust;
        return;
      }
      if (r < 9.4 && z > 0.1) return chrome();
    }
    // Crinkle-black sheet, worn grey round the switch, dust in the corners, printed labels.
    const worn = smooth(30, 14, length2(x - 86, y + 44) + (fine - 0.5) * 16) * 0.7;
    let v = mix(0.016, 0.03, fine);
    v = mix(v, 0.2, worn * smooth(0.5, 0.7, fine));
    s.r = mix(v, 0.15, dust * 0.24); s.g = mix(v, 0.125, dust * 0.24); s.b = mix(v * 1.03, 0.095, dust * 0.24);
    s.rough = mix(0.42, 0.8, dust);
    const ink = nz > 0.6 ? smooth(0.07, -0.07, labels.at(x, y)) * smooth(0.28, 0.46, fbm2(x * 0.35, y * 0.35, 3, 1016)) : 0;
    s.r = mix(s.r, 0.5, ink * 0.85); s.g = mix(s.g, 0.47, ink * 0.85); s.b = mix(s.b, 0.4, ink * 0.85);
    s.relief = 1;
  }
  const bump = (x: number, y: number, z: number): number => 0.1 * noise2(x * 1.5, y * 1.5, 1017) + 0.07 * noise2(x * 3.4, y * 3.4, 1018) + 0.01 * z;

  const features: Record<string, Vector> = {};
  for (const g of gauges) {
    const a = (g.needle * Math.PI) / 180;
    features[`gauge ${g.title}`] = [g.x, g.y, 0];
    features[`needle tip ${g.title}`] = [g.x + 22.5 * Math.cos(a), g.y + 22.5 * Math.sin(a), -2.2];
  }
  features['hour meter, middle'] = [meter.x, meter.y, -3];
  features['hour meter, left end'] = [meter.x - meter.a, meter.y, 0];
  features['hour meter, right end'] = [meter.x + meter.a, meter.y, 0];
  features['key switch'] = [86, -44, 9];
  return {
    name: 'dashboard',
    what: 'Instrument panel, engine running: two needles on their stops; hour meter 04391.',
    view: { width: 1200, height: 900, focal: 1.22, eye: [-40, -34, 310], target: [0, -6, 0], up: [0, 1, 0], rollDegrees: 1.4 },
    seed: 2203,
    apertureMm: 1.6, focusMm: 310, nearMm: 160, farMm: 900,
    exposure: 1.35, noise: 0.06, occlusionMm: 9, normalMm: 0.04, step: 0.9,
    lights: [
      { at: [-380, 480, 360], radius: 150, colour: [0.6, 0.66, 0.74] },
      { at: [420, 60, 520], radius: 170, colour: [0.2, 0.185, 0.16] },
    ],
    surroundings: { ...shed, panels: [{ towards: [0.5, 0.75, 0.6], wide: 0.42, high: 0.3, colour: [2.6, 2.9, 3.3] }, { towards: [-0.8, 0.5, 0.35], wide: 0.4, high: 0.4, colour: [2.2, 2.4, 2.7] }, { towards: [0.1, -0.2, 1], wide: 0.16, high: 0.3, colour: [0.02, 0.02, 0.02] }] },
    truth: {
      features,
      planes: { panel: { origin: [0, 0, 0], u: [1, 0, 0], v: [0, -1, 0], what: 'face of the panel, z = 0' } },
    },
    orientation: 1, takenAt: '2026:03:16 09:37:31', offset: '+01:00',
    distance, surface, bump,
  };
}
