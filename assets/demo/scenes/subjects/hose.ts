import { oldPaint, paintBump } from '../engine/bench.ts';
import type { Vector } from '../engine/camera.ts';
import { fbm2, fbm3, mix, noise2, smooth } from '../engine/noise.ts';
import { type Scene, type Surface, shed } from '../engine/scene.ts';
import { box, carve, extrude, length2, length3 } from '../engine/solids.ts';
import { lettering, StrokeMap } from '../engine/strokes.ts';

/**
 * Two hydraulic hoses before a frame rail (its face is the plane z = 0), x to the right, y up. The lower hose is rubbed through to its wire braid
 * by the edge of a bracket. `wet` is the same place five months later: oil at the chafe, a drop that hangs.
 */
const cover = 11;
const wire = 9.3;
/** Middle line of the rubbed hose: y over x, and its stand-off from the rail. */
const lineY = (x: number): number => -6 - 0.00085 * (x - 10) * (x - 10);
const slopeY = (x: number): number => -0.0017 * (x - 10);
const lineZ = 24;
/** The rubbed spot, along the hose. */
const rubbed = { x: 4, half: 17 };

export function scene(wet: boolean): Scene {
  const print = new StrokeMap(-120, -4, 130, 5, 12, 1.2, lettering('2 WIRE  DN 12  21 MPA   4Q11', -104, -1.7, 3.4, 0.26, 1.5));
  const drop: Vector = [rubbed.x - 24, lineY(rubbed.x - 24) - cover - 0.9, lineZ + 1];

  function hoses(x: number, y: number, z: number): { d: number; around: number; r: number } {
    const k = 1 / Math.sqrt(1 + slopeY(x) * slopeY(x));
    const dy = (y - lineY(x)) * k;
    const dz = z - lineZ;
    return { d: 0, around: Math.atan2(dy, dz), r: length2(dy, dz) };
  }
  /** How far the cover has been rubbed away: a flat cut on the viewer's side, just below the middle line. */
  function cut(x: number, y: number, z: number): number {
    const k = 1 / Math.sqrt(1 + slopeY(x) * slopeY(x));
    const dy = (y - lineY(x)) * k;
    const dz = z - lineZ;
    const face = dz * 0.94 - dy * 0.34;
    const end = Math.max(Math.abs(x - rubbed.x) - rubbed.half, 0);
    return face - 9.15 - 0.022 * end * end - 0.35 * (noise2(x * 0.5, y * 0.5, 811) - 0.5);
  }
  const upper = (x: number, y: number, z: number): number =>
    (length2(y - 24 - 0.0004 * (x + 30) * (x + 30), z - 20) - 10) * 0.95;
  const bracket = (x: number, y: number, z: number): number => {
    let d = box(x - 4, y + 45.5, z - 19, 17, 26, 3.2, 0.8);
    d = carve(d, extrude(length2(x - 4, y + 50) - 6.5, Math.abs(z - 19) - 9, 0.3), 0.5);
    d = Math.min(d, box(x - 4, y + 74, z - 8, 17, 3.4, 12, 0.8));
    return d;
  };
  const clip = (x: number, y: number, z: number): number => {
    const h = length2(y - lineY(x), z - lineZ);
    const band = extrude(Math.abs(h - cover - 1.2) - 1, Math.abs(x + 104) - 8, 0.4);
    return Math.min(band, extrude(length2(x + 104, y - 8) - 5, Math.abs(z - 15) - 16, 0.7));
  };

  function distance(x: number, y: number, z: number): number {
    if (z > 52) return z - 48;
    let d = Math.min(z, upper(x, y, z), bracket(x, y, z), clip(x, y, z));
    const k = 1 / Math.sqrt(1 + slopeY(x) * slopeY(x));
    const r = length2((y - lineY(x)) * k, z - lineZ);
    let hose = Math.max(r - cover, cut(x, y, z));
    // The braid under the cover: crossing wires stand out a little.
    const around = Math.atan2((y - lineY(x)) * k, z - lineZ) * wire;
    const relief = r < wire + 1.5 ? 0.17 * (Math.max(Math.sin((x + around) * 2.1), Math.sin((x - around) * 2.1))) : 0;
    hose = Math.min(hose, (r - wire - relief + 0.17) * 0.8);
    d = Math.min(d, hose);
    if (wet) d = Math.min(d, (length3(x - drop[0], (y - drop[1]) * (y > drop[1] ? 0.55 : 1), z - drop[2]) - 2.3) * 0.7);
    return d;
  }

  const wetness = (x: number, y: number, z: number): number => {
    if (!wet) return 0;
    const edge = (fbm3(x * 0.09, y * 0.09, z * 0.09, 3, 812) - 0.5) * 26;
    const spot = smooth(40, 22, length2(x - rubbed.x + 8, (y + 12) * 0.9) + edge);
    const below = smooth(24, 12, Math.abs(x - rubbed.x + 22 + (noise2(y * 0.05, 1, 813) - 0.5) * 14) + edge * 0.4) * smooth(-6, -16, y);
    return Math.max(spot, below);
  };

  function surface(x: number, y: number, z: number, _nx: number, _ny: number, _nz: number, s: Surface): void {
    const w = wetness(x, y, z);
    const fine = fbm3(x * 0.6, y * 0.6, z * 0.6, 4, 821);
    const dust = smooth(0.38, 0.66, fbm3(x * 0.03, y * 0.05, z * 0.05, 4, 822));
    const { r, around } = hoses(x, y, z);
    if (wet && length3(x - drop[0], (y - drop[1]) * 0.8, z - drop[2]) < 3.1 && r > wire + 0.4) {
      s.r = 0.17; s.g = 0.085; s.b = 0.02; s.rough = 0.3; s.coat = 1; s.coatRough = 0.06; s.relief = 0;
      return;
    }
    const isClip = clip(x, y, z) < 0.06;
    if (isClip || bracket(x, y, z) < 0.06) {
      if (isClip) {
        const rust = smooth(0.42, 0.62, fbm3(x * 0.12, y * 0.12, z * 0.12, 4, 823));
        s.r = mix(0.34, 0.1, rust); s.g = mix(0.33, 0.05, rust); s.b = mix(0.31, 0.026, rust); s.metal = 0.8 * (1 - rust); s.rough = mix(0.4, 0.85, rust);
      } else {
        oldPaint(x, y, z, [0.055, 0.06, 0.062], 0.2, s);
        // The edge that does the rubbing is polished bright.
        const polished = smooth(-27, -21, y) * smooth(15, 8, Math.abs(x - 4)) * smooth(16, 20, z);
        s.r = mix(s.r, 0.5, polished); s.g = mix(s.g, 0.5, polished); s.b = mix(s.b, 0.49, polished); s.metal = mix(s.metal, 0.9, polished); s.rough = mix(s.rough, 0.3, polished);
      }
    } else if (r < wire + 0.35 && Math.abs(x - rubbed.x) < rubbed.half + 16 && cut(x, y, z) < 1.3) {
      // Bright wires with rust between them.
      const crossA = Math.sin((x + around * wire) * 2.1);
      const crossB = Math.sin((x - around * wire) * 2.1);
      const crest = smooth(0.1, 0.9, Math.max(crossA, crossB));
      const rust = smooth(0.4, 0.62, fbm2(x * 0.22, y * 0.3, 4, 824)) * 0.8;
      s.r = mix(0.03, mix(0.6, 0.2, rust), crest); s.g = mix(0.022, mix(0.59, 0.1, rust), crest); s.b = mix(0.016, mix(0.57, 0.05, rust), crest);
      s.metal = crest * (1 - rust * 0.8); s.rough = mix(0.6, 0.3, crest) + rust * 0.2;
    } else if (z < 0.2) {
      oldPaint(x, y, z, [0.16, 0.1, 0.055], 0.24, s);
      s.r = mix(s.r, 0.15, dust * 0.4); s.g = mix(s.g, 0.115, dust * 0.4); s.b = mix(s.b, 0.075, dust * 0.4);
    } else {
      // Rubber: grey-black, dust on its upper side, faded print, scuffed edge round the rubbed place.
      const isLower = r < cover + 0.6;
      const v = mix(0.018, 0.036, fine);
      const up = smooth(-0.2, 1.1, around) * smooth(3, 1.6, around);
      const lying = dust * 0.55 + 0.35 * up;
      s.r = mix(v, 0.15, lying * 0.6); s.g = mix(v, 0.12, lying * 0.6); s.b = mix(v * 1.03, 0.085, lying * 0.6);
      s.rough = 0.62;
      if (isLower) {
        const onCut = smooth(0.4, 0.05, Math.abs(cut(x, y, z)));
        const torn = onCut * mix(0.5, 1, noise2(x * 0.9, y * 2.4, 825));
        s.r = mix(s.r, 0.055, torn); s.g = mix(s.g, 0.053, torn); s.b = mix(s.b, 0.052, torn); s.rough = mix(s.rough, 0.85, torn);
        const ink = smooth(0.05, -0.05, print.at(x, (around - 0.62) * cover)) * smooth(0.3, 0.5, fbm2(x * 0.3, around * 4, 3, 826)) * (1 - onCut);
        s.r = mix(s.r, 0.4, ink * 0.75); s.g = mix(s.g, 0.38, ink * 0.75); s.b = mix(s.b, 0.32, ink * 0.75);
      }
    }
    if (w > 0) {
      s.r *= 1 - 0.66 * w; s.g *= 1 - 0.7 * w; s.b *= 1 - 0.76 * w;
      const grime = smooth(0.1, 0.5, w) * smooth(1, 0.6, w);
      s.r = mix(s.r, 0.014, grime * 0.6); s.g = mix(s.g, 0.012, grime * 0.6); s.b = mix(s.b, 0.01, grime * 0.6);
      s.coat = w; s.coatRough = 0.08 + 0.14 * fine;
    }
    s.relief = 1;
  }

  function bump(x: number, y: number, z: number): number {
    if (z < 0.2 || bracket(x, y, z) < 0.1) return paintBump(x, y, z, 0.24);
    const { r, around } = hoses(x, y, z);
    if (r < wire + 0.4) return 0;
    // Wrapped-cloth pattern in the rubber.
    return 0.022 * Math.sin(x * 4.4 + around * 3) + 0.05 * fbm3(x * 0.7, y * 0.7, z * 0.7, 3, 827) + (r < cover + 0.6 ? 0.1 * smooth(0.5, 0, Math.abs(cut(x, y, z))) * noise2(x * 1.6, y * 4, 828) : 0);
  }

  /** A point on the flat of the rubbed place, up and down the hose's own girth. */
  const onCut = (x: number, across: number): Vector => [x, lineY(x) + 0.94 * across - 0.34 * 9.15, lineZ + 0.34 * across + 0.94 * 9.15];
  const outline: Vector[] = [];
  for (let i = 0; i < 28; i++) {
    const k = (i / 28) * 2 * Math.PI;
    const x = rubbed.x + (rubbed.half + 9) * Math.cos(k);
    outline.push(onCut(x, 6.2 * Math.sin(k)));
  }
  const start = onCut(rubbed.x - rubbed.half, 0);
  const end = onCut(rubbed.x + rubbed.half, 0);
  return {
    name: wet ? 'hose-wet' : 'hose-rubbed',
    what: wet ? 'The same hose five months later: oil at the chafe, a drop hangs.' : 'Boom hose, left, rubbed through its cover to the wire by the edge of a bracket.',
    view: wet
      ? { width: 1340, height: 1005, focal: 1.5, eye: [-34, -46, 232], target: [3, -17, 12], up: [0, 1, 0], rollDegrees: 2.4 }
      : { width: 1480, height: 1110, focal: 1.45, eye: [30, -26, 236], target: [0, -14, 12], up: [0, 1, 0], rollDegrees: -1.6 },
    seed: wet ? 2011 : 2003,
    apertureMm: 1.5, focusMm: wet ? 208 : 206, nearMm: 120, farMm: 800,
    exposure: wet ? 1.1 : 1.05, noise: 0.06, occlusionMm: 14, normalMm: 0.04, step: 0.85,
    lights: wet
      ? [{ at: [360, 430, 380], radius: 120, colour: [0.56, 0.58, 0.62] }, { at: [-340, 60, 420], radius: 170, colour: [0.22, 0.2, 0.17] }]
      : [{ at: [-360, 430, 400], radius: 130, colour: [0.58, 0.63, 0.7] }, { at: [340, 20, 420], radius: 160, colour: [0.2, 0.185, 0.16] }],
    surroundings: shed,
    truth: {
      features: {
        'rubbed place, left end of the wire': start, 'rubbed place, right end of the wire': end, 'rubbed place, middle': onCut(rubbed.x, 0),
        'bracket, hole': [4, -50, 22.2], 'bracket, upper left corner': [-13, -19.5, 22.2], 'bracket, upper right corner': [21, -19.5, 22.2],
        ...(wet ? { 'drop, lowest point': [drop[0], drop[1] - 2.3, drop[2]] as Vector } : {}),
      },
      areas: { 'rubbed place': outline },
      cracks: { 'length rubbed to the wire': [start, end] },
      planes: { rail: { origin: [0, 0, 0], u: [1, 0, 0], v: [0, -1, 0], what: 'face of the frame rail, z = 0' }, bracket: { origin: [4, -19.5, 22.2], u: [1, 0, 0], v: [0, -1, 0], what: 'front of the bracket, z = 22.2' } },
    },
    orientation: 1, takenAt: wet ? '2026:03:16 11:02:55' : '2025:10:06 10:14:27', offset: '+01:00',
    distance, surface, bump,
  };
}
