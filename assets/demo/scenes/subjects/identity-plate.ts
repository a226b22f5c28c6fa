import { oldPaint, paintBump } from '../engine/bench.ts';
import type { Vector } from '../engine/camera.ts';
import { fbm2, fbm3, mix, noise2, smooth } from '../engine/noise.ts';
import { type Scene, type Surface, shed } from '../engine/scene.ts';
import { extrude, length2, length3, rectangle } from '../engine/solids.ts';
import { lettering, letteringWidth, type Stroke, StrokeMap } from '../engine/strokes.ts';

/** The machine's plate, riveted to a painted panel (z = 0); the plate's face is z = 0.9, 120 by 76 mm. No maker, a serial of our own. */
const plate = { a: 60, b: 38 };
const fields: readonly (readonly [string, string, number, number])[] = [
  ['SERIAL', 'TL 4471 W', -51, 3],
  ['YEAR', '1988', 21, 3],
  ['ENGINE', '4D 20917', -51, -15],
  ['RATED KW', '44', 21, -15],
  ['MASS KG', '3850', -51, -33],
  ['VOLT', '12', 21, -33],
];

export function scene(): Scene {
  const etched: Stroke[] = [...lettering('LOADER TRACTOR', -letteringWidth('LOADER TRACTOR', 7) / 2 + 0.6, 23.5, 7, 0.55)];
  const stamped: Stroke[] = [];
  fields.forEach(([label, value, x, y], row) => {
    etched.push(...lettering(label, x, y + 8.6, 2.5, 0.2));
    etched.push({ points: [[x - 1, y - 1.4], [x + (x < 0 ? 62 : 31), y - 1.4]], half: 0.12 });
    let pen = x + 1;
    [...value].forEach((letter, i) => {
      // Stamped one letter at a time: none stands quite level.
      const wander = noise2(i * 3.7, row * 5.1, 1301) - 0.5;
      stamped.push(...lettering(letter, pen, y + wander * 0.9, 6, 0.36));
      pen += letteringWidth(letter, 6) + 0.4 + 0.5 * wander;
    });
  });
  etched.push({ points: [[-56.5, -34.5], [56.5, -34.5], [56.5, 34.5], [-56.5, 34.5], [-56.5, -34.5]], half: 0.22 });
  const print = new StrokeMap(-60, -38, 60, 38, 16, 1, etched);
  const stamps = new StrokeMap(-60, -38, 60, 38, 16, 1, stamped);
  const rivets: readonly (readonly [number, number])[] = [[-55.5, 33.5], [55.5, 33.5], [-55.5, -33.5], [55.5, -33.5]];
  const dent = (x: number, y: number): number => 0.55 * smooth(13, 0, length2(x - 33, (y + 27) * 1.5)) + 0.3 * smooth(9, 0, length2(x + 22, y - 31));

  function distance(x: number, y: number, z: number): number {
    if (z > 12) return z - 9;
    let d: number = z;
    const flat = rectangle(x, y, plate.a, plate.b, 4);
    d = Math.min(d, extrude(flat, Math.abs(z - 0.35 + dent(x, y)) - 0.55, 0.2));
    for (const [rx, ry] of rivets) d = Math.min(d, Math.max(length3(x - rx, y - ry, z + 1.2) - 3.6, -z));
    return d;
  }
  const strip = (y: number): number => smooth(18.6, 19, y) * smooth(34, 33.6, y);

  function surface(x: number, y: number, z: number, _nx: number, _ny: number, nz: number, s: Surface): void {
    const fine = fbm3(x * 0.8, y * 0.8, z * 0.8, 4, 1311);
    for (const [rx, ry] of rivets) {
      if (length2(x - rx, y - ry) < 3.5 && z > 1.1) {
        const v = mix(0.3, 0.46, fine);
        s.r = v; s.g = v * 0.99; s.b = v * 0.97; s.metal = 0.8; s.rough = 0.4;
        return;
      }
    }
    if (rectangle(x, y, plate.a, plate.b, 4) < 0.05 && z > 0.15) {
      const brushed = noise2(x * 0.12, y * 7, 1312) * 0.6 + noise2(x * 0.5, y * 19, 1313) * 0.4;
      let v = 0.42 + 0.1 * (brushed - 0.5);
      const dull = smooth(0.36, 0.66, fbm2(x * 0.04, y * 0.04, 5, 1314));
      v = mix(v, v * 0.68, dull * 0.6);
      s.r = v; s.g = v * 0.995; s.b = v * 0.98; s.metal = 0.85; s.rough = 0.34 + 0.16 * dull;
      // Black fields, letters left bright in the title strip, printed black elsewhere.
      const p = smooth(0.07, -0.05, print.at(x, y));
      const band = strip(y) * (Math.abs(x) < 56.4 ? 1 : 0);
      const black = band * (1 - p) + (1 - band) * p;
      const rubbed = smooth(0.66, 0.76, fbm2(x * 0.12 + 6, y * 0.12, 5, 1315)) * 0.85;
      const ink = black * (1 - rubbed);
      s.r = mix(s.r, 0.018, ink); s.g = mix(s.g, 0.018, ink); s.b = mix(s.b, 0.02, ink); s.metal *= 1 - ink; s.rough = mix(s.rough, 0.42, ink);
      const d = stamps.at(x, y);
      const dark = smooth(0.1, -0.2, d) * 0.72;
      s.r = mix(s.r, 0.05, dark); s.g = mix(s.g, 0.045, dark); s.b = mix(s.b, 0.04, dark); s.metal *= 1 - dark * 0.5;
      // Scratches, paint speckle from a later respray, grime at the edge.
      const scratch = smooth(0.87, 0.94, noise2(x * 0.05 + y * 0.11, y * 1.4 - x * 1.1, 1316)) * smooth(0.4, 0.6, dull);
      s.r = mix(s.r, 0.66, scratch * 0.55); s.g = mix(s.g, 0.66, scratch * 0.55); s.b = mix(s.b, 0.65, scratch * 0.55);
      const speck = smooth(0.72, 0.76, fbm2(x * 0.42, y * 0.42, 3, 1317) + 0.2 * smooth(44, 60, Math.abs(x)));
      s.r = mix(s.r, 0.052, speck); s.g = mix(s.g, 0.105, speck); s.b = mix(s.b, 0.125, speck); s.metal *= 1 - speck; s.rough = mix(s.rough, 0.5, speck);
      const edge = smooth(-7, 0, rectangle(x, y, plate.a, plate.b, 4) + (fine - 0.5) * 6);
      s.r = mix(s.r, 0.07, edge * 0.75); s.g = mix(s.g, 0.055, edge * 0.75); s.b = mix(s.b, 0.038, edge * 0.75); s.metal *= 1 - edge * 0.8; s.rough = mix(s.rough, 0.75, edge);
      const dusty = 0.18 * smooth(0.4, 0.7, fbm2(x * 0.06, y * 0.06 + 3, 4, 1318));
      s.r = mix(s.r, 0.22, dusty); s.g = mix(s.g, 0.185, dusty); s.b = mix(s.b, 0.14, dusty);
      s.relief = nz > 0.5 ? 1 : 0.2;
      return;
    }
    oldPaint(x, y, z, [0.052, 0.105, 0.125], 0.3, s);
    const grime = smooth(12, 0, rectangle(x, y, plate.a, plate.b, 4) + (fine - 0.5) * 9) * 0.7;
    s.r = mix(s.r, 0.05, grime); s.g = mix(s.g, 0.04, grime); s.b = mix(s.b, 0.03, grime);
  }
  function bump(x: number, y: number, z: number): number {
    if (z > 0.15 && rectangle(x, y, plate.a, plate.b, 4) < 0.1) {
      return -0.22 * smooth(0.25, -0.25, stamps.at(x, y)) + 0.06 * smooth(0.5, 0.1, stamps.at(x, y)) * smooth(-0.1, 0.2, stamps.at(x, y)) + 0.004 * noise2(x * 0.5, y * 15, 1319) + 0.12 * fbm2(x * 0.06, y * 0.06, 3, 1320);
    }
    return paintBump(x, y, z, 0.3);
  }

  const features: Record<string, Vector> = {};
  rivets.forEach(([x, y], i) => { features[`rivet ${['upper left', 'upper right', 'lower left', 'lower right'][i] ?? ''}`] = [x, y, 2.4]; });
  for (const [label, , x, y] of fields) features[`field ${label}`] = [x, y, 0.9];
  return {
    name: 'identity-plate',
    what: 'Identity plate of the loader tractor, on the right of the dash support.',
    view: { width: 1200, height: 900, focal: 1.5, eye: [-44, -30, 190], target: [1, 0, 0], up: [0, 1, 0], rollDegrees: 3.2 },
    seed: 2503,
    apertureMm: 1.1, focusMm: 196, nearMm: 110, farMm: 600,
    exposure: 0.74, noise: 0.055, occlusionMm: 5, normalMm: 0.03, step: 0.92,
    lights: [
      { at: [-330, 380, 320], radius: 130, colour: [0.5, 0.55, 0.62] },
      { at: [320, 60, 420], radius: 160, colour: [0.2, 0.185, 0.16] },
    ],
    surroundings: shed,
    truth: {
      features,
      planes: { plate: { origin: [0, 0, 0.9], u: [1, 0, 0], v: [0, -1, 0], what: 'face of the plate, 120 by 76 mm, z = 0.9 (dented in two places)' } },
    },
    orientation: 1, takenAt: '2025:10:06 09:05:12', offset: '+01:00',
    distance, surface, bump,
  };
}
