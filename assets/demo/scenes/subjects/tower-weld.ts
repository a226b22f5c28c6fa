import { oldPaint, paintBump } from '../engine/bench.ts';
import type { Vector } from '../engine/camera.ts';
import { fbm2, fbm3, mix, noise2, smooth } from '../engine/noise.ts';
import { SteelRule } from '../engine/rule.ts';
import { type Scene, type Surface, shed } from '../engine/scene.ts';
import { blend, box, extrude, length2, rectangle, torus } from '../engine/solids.ts';
import { crackLine, type Point, StrokeMap } from '../engine/strokes.ts';

/**
 * Right loader tower: side plate z = 0 facing the viewer, a gusset welded on (its end at x = -6), the pivot pin's boss at the upper right.
 * The crack starts at the weld toe at the gusset's end and runs out into the plate. `later` is the spring visit: the same line, further on.
 */
const gusset = { end: -6, half: 8, high: 19 };
const boss: Point = [66, 38];

/** The whole line as it will be in spring; in autumn only its first part is open. */
const whole: Point[] = [
  // Round the toe of the bead at the gusset's corner, then away into the plate.
  ...Array.from({ length: 7 }, (_, i): Point => {
    const a = ((82 - i * 8.5) * Math.PI) / 180;
    const r = 7.1 + 0.22 * Math.sin(i * 2.4);
    return [gusset.end + r * Math.cos(a), gusset.half + r * Math.sin(a)];
  }),
  ...crackLine([0.52, 11.0], [29.5, 8.6], 0.085, 5, 932).slice(1),
];
function firstPart(line: readonly Point[], lengthMm: number): Point[] {
  const part: Point[] = [];
  let left = lengthMm;
  for (let i = 0; i < line.length - 1; i++) {
    const a = line[i] ?? [0, 0];
    const b = line[i + 1] ?? a;
    part.push(a);
    const l = length2(b[0] - a[0], b[1] - a[1]);
    if (l >= left) {
      part.push([a[0] + ((b[0] - a[0]) * left) / l, a[1] + ((b[1] - a[1]) * left) / l]);
      return part;
    }
    left -= l;
  }
  part.push(line[line.length - 1] ?? [0, 0]);
  return part;
}

export function scene(later: boolean): Scene {
  const line = later ? whole : firstPart(whole, 23);
  const rule = new SteelRule(later ? { x: -38, y: -44, z: 0.9, degrees: 5, lengthMm: 100, widthMm: 19 } : { x: -46, y: -40, z: 0.9, degrees: -3, lengthMm: 100, widthMm: 19 });
  const lines = new StrokeMap(-20, -10, 60, 50, 22, 5, [{ points: line, half: 0.16, halfEnd: 0.05 }]);

  function weld(x: number, y: number, z: number): number {
    // A fillet bead round the gusset: ripples along it.
    const flat = rectangle(x + 206, y, 200, gusset.half, 1);
    if (flat > 10 || z > 12) return Math.max(flat, z) - 7.6;
    const along = x > gusset.end - 2 ? Math.atan2(y, x - gusset.end + 10) * 12 : x;
    const ripple = 0.17 * Math.sin(along * 2.3 + 2.6 * noise2(along * 0.4, 0, 933)) + 1.1 * (noise2(along * 0.24, 3, 934) - 0.5);
    return length2(Math.max(flat - 0.2, 0) , z) - 6.3 - ripple;
  }
  function distance(x: number, y: number, z: number): number {
    const ruler = rule.distance(x, y, z);
    if (z > 44) return Math.min(z - 42, ruler);
    let d: number = z;
    const web = extrude(rectangle(x + 206, y, 200, gusset.half, 1), Math.abs(z - gusset.high / 2) - gusset.high / 2, 1);
    d = blend(d, Math.min(web, weld(x, y, z)), 0.9);
    const r = length2(x - boss[0], y - boss[1]);
    let tube = extrude(Math.abs(r - 24) - 7, Math.abs(z - 8) - 14, 1.2);
    tube = Math.min(tube, torus(x - boss[0], y - boss[1], z - 1, 31.5, 4.6 + 0.15 * Math.sin(Math.atan2(y - boss[1], x - boss[0]) * 60 + 3 * noise2(x * 0.2, y * 0.2, 936)) + 0.6 * (noise2(x * 0.16, y * 0.16, 937) - 0.5)));
    d = blend(d, tube, 1.2);
    d = Math.min(d, extrude(r - 16.6, Math.abs(z - 6) - 14, 1.6));
    d = Math.min(d, box(x - boss[0], y - boss[1], z - 22, 13, 5, 2.2, 0.8));
    return Math.min(d, ruler);
  }

  /** Where the developer was sprayed, 0 to 1. */
  const sprayed = (x: number, y: number): number => {
    const r = length2((x - gusset.end - 15) * 0.84, (y - 13) * 1.12) + (fbm2(x * 0.05 + (later ? 7 : 0), y * 0.05, 4, 935) - 0.5) * 22;
    return smooth(48, 27, r);
  };

  function surface(x: number, y: number, z: number, _nx: number, _ny: number, nz: number, s: Surface): void {
    if (rule.distance(x, y, z) < 0.05) return rule.surface(x, y, z, nz, s);
    const fine = fbm3(x * 0.6, y * 0.6, z * 0.6, 4, 941);
    const r = length2(x - boss[0], y - boss[1]);
    oldPaint(x, y, z, [0.052, 0.105, 0.125], later ? 0.36 : 0.3, s);
    if (r < 17.2 && z > 6) {
      const grease = smooth(0.4, 0.6, fbm2(x * 0.12, y * 0.12, 4, 942));
      s.r = mix(0.36, 0.03, grease); s.g = mix(0.35, 0.026, grease); s.b = mix(0.335, 0.02, grease); s.metal = mix(0.85, 0, grease); s.rough = mix(0.34, 0.5, grease); s.coat = grease * 0.6;
    } else if (r < 30) {
      const grease = smooth(33, 18, r + (fine - 0.5) * 14);
      s.r = mix(s.r, 0.026, grease * 0.85); s.g = mix(s.g, 0.022, grease * 0.85); s.b = mix(s.b, 0.016, grease * 0.85); s.coat = grease * 0.5; s.rough = mix(s.rough, 0.45, grease);
    }
    // Ground bright round the weld before the test.
    const ground = smooth(46, 36, length2((x - gusset.end - 14) * 0.84, (y - 12) * 1.1) + (fine - 0.5) * 5) * (r > 36 ? 1 : 0);
    const swirl = noise2((x + y * 0.4) * 2.4, (y - x * 0.4) * 0.25, 943);
    s.r = mix(s.r, 0.36 + 0.12 * swirl, ground); s.g = mix(s.g, 0.355 + 0.12 * swirl, ground); s.b = mix(s.b, 0.345 + 0.12 * swirl, ground);
    s.metal = mix(s.metal, 0.85, ground); s.rough = mix(s.rough, 0.34, ground);
    // Pink left by wiping, then the white developer, thinner at its rim.
    const pink = smooth(54, 34, length2((x - gusset.end - 16) * 0.8, y - 12) + (fbm2(x * 0.07, y * 0.07, 4, 944) - 0.5) * 26) * (r > 32 ? 0.5 : 0.2);
    s.r = mix(s.r, 0.5, pink * 0.5); s.g = mix(s.g, 0.12, pink * 0.5); s.b = mix(s.b, 0.14, pink * 0.5); s.metal *= 1 - pink * 0.5;
    const white = sprayed(x, y) * mix(0.82, 1.05, fine) ;
    const w = Math.min(1, white);
    const shade = mix(0.6, 0.82, fbm2(x * 0.22, y * 0.22, 4, 945));
    s.r = mix(s.r, shade, w); s.g = mix(s.g, shade * 0.985, w); s.b = mix(s.b, shade * 0.96, w); s.metal *= 1 - w; s.rough = mix(s.rough, 0.92, w); s.coat *= 1 - w;
    if (z < 0.8 && w > 0.05) {
      // Red bleeding out of the crack: sharp in the middle, feathered at its sides, more of it near the start.
      const d = lines.at(x, y);
      const feather = fbm2(x * 0.9, y * 0.9, 4, 946);
      const bleed = smooth(1.15 + 1.1 * (feather - 0.4), 0.12, d);
      const core = smooth(0.24, -0.05, d);
      s.r = mix(s.r, 0.56, bleed * 0.82); s.g = mix(s.g, 0.075, bleed * 0.82); s.b = mix(s.b, 0.085, bleed * 0.82);
      s.r = mix(s.r, 0.3, core); s.g = mix(s.g, 0.012, core); s.b = mix(s.b, 0.022, core);
      // Faint pink freckles: pores of the weld toe, not a crack.
      const freckle = smooth(0.8, 0.86, noise2(x * 0.8, y * 0.8, 947)) * smooth(0.75, 0.5, Math.abs(rectangle(x + 206, y, 200, gusset.half, 1) - 6.6) * 0.2);
      s.r = mix(s.r, 0.62, freckle * 0.3); s.g = mix(s.g, 0.2, freckle * 0.3); s.b = mix(s.b, 0.2, freckle * 0.3);
    }
    s.relief = 1 - 0.5 * w;
  }

  function bump(x: number, y: number, z: number): number {
    if (rule.distance(x, y, z) < 0.06) return rule.bump(x, y);
    const ground = smooth(46, 36, length2((x - gusset.end - 14) * 0.84, (y - 12) * 1.1));
    return paintBump(x, y, z, later ? 0.36 : 0.3) * (1 - ground) + ground * (0.012 * noise2((x + y * 0.4) * 2.4, (y - x * 0.4) * 0.25, 943) + sprayed(x, y) * 0.05 * fbm2(x * 0.7, y * 0.7, 3, 948));
  }

  const onPlate = (p: Point): Vector => [p[0], p[1], 0];
  return {
    name: later ? 'tower-weld-spring' : 'tower-weld-autumn',
    what: later ? 'Right loader tower, spring: penetrant, developer on; the line has gone on into the plate.' : 'Right loader tower, autumn: penetrant, developer on; crack from the weld toe at the end of the gusset.',
    view: later
      ? { width: 1480, height: 1110, focal: 1.5, eye: [44, -62, 214], target: [12, 4, 4], up: [0, 1, 0.05], rollDegrees: 2.6 }
      : { width: 1480, height: 1110, focal: 1.5, eye: [-30, -40, 232], target: [10, 4, 4], up: [0, 1, 0], rollDegrees: -2 },
    seed: later ? 2111 : 2105,
    apertureMm: 1.2, focusMm: later ? 226 : 238, nearMm: 120, farMm: 800,
    exposure: later ? 0.46 : 0.5, noise: 0.055, occlusionMm: 12, normalMm: 0.04, step: 0.88,
    lights: later
      ? [{ at: [-340, 420, 420], radius: 120, colour: [0.6, 0.62, 0.64] }, { at: [360, 40, 420], radius: 170, colour: [0.2, 0.19, 0.17] }]
      : [{ at: [-400, 330, 380], radius: 140, colour: [0.6, 0.64, 0.7] }, { at: [300, 160, 460], radius: 170, colour: [0.18, 0.168, 0.15] }],
    surroundings: shed,
    truth: {
      features: { ...rule.features(), 'weld toe, start of the crack': onPlate(whole[0] ?? [0, 0]), 'end of the crack': onPlate(line[line.length - 1] ?? [0, 0]), 'pin, middle of its end': [boss[0], boss[1], 24.2] },
      cracks: { 'weld toe into the plate': line.map(onPlate) },
      planes: { plate: { origin: [0, 0, 0], u: [1, 0, 0], v: [0, -1, 0], what: 'side plate of the tower, z = 0; the crack lies in it' }, rule: { origin: rule.world(0, 0), u: [1, 0, 0], v: [0, 1, 0], what: 'upper face of the rule, 0.9 mm in front of the plate' } },
      remarks: ['Autumn and spring share one world: the spring line begins with the autumn line, point for point.'],
    },
    orientation: 1, takenAt: later ? '2026:03:16 13:41:20' : '2025:10:06 14:52:06', offset: '+01:00',
    distance, surface, bump,
  };
}
