/** A steel rule with engraved millimetres, lying flat: our own, with no maker on it. */
import type { Vector } from './camera.ts';
import { clamp01, fbm2, noise2, smooth } from './noise.ts';
import type { Surface } from './scene.ts';
import { box } from './solids.ts';
import { lettering, letteringWidth, type Stroke, StrokeMap } from './strokes.ts';

export interface RulePose {
  /** The corner at zero millimetres on the graduated edge, upper face. */
  readonly x: number;
  readonly y: number;
  /** Height of the rule's upper face. */
  readonly z: number;
  readonly degrees: number;
  readonly lengthMm: number;
  readonly widthMm: number;
}

export class SteelRule {
  readonly pose: RulePose;
  readonly #c: number;
  readonly #s: number;
  readonly #marks: StrokeMap;
  static readonly thicknessMm = 0.9;
  /** Distance from the end of the rule to its zero line. */
  static readonly endMm = 5;

  constructor(pose: RulePose) {
    this.pose = pose;
    this.#c = Math.cos((pose.degrees * Math.PI) / 180);
    this.#s = Math.sin((pose.degrees * Math.PI) / 180);
    const strokes: Stroke[] = [];
    for (let mm = 0; mm <= pose.lengthMm; mm++) {
      const deep = mm % 10 === 0 ? 8.2 : mm % 5 === 0 ? 6 : 4.2;
      strokes.push({ points: [[mm, 0.15], [mm, deep]], half: 0.11 });
      if (mm % 10 === 0 && mm > 0) {
        const text = String(mm);
        strokes.push(...lettering(text, Math.min(mm - letteringWidth(text, 3) / 2 + 0.3, pose.lengthMm + 4.2 - letteringWidth(text, 3)), 9.4, 3, 0.19));
      }
    }
    this.#marks = new StrokeMap(-1, 0, pose.lengthMm + 8, 14, 14, 1.2, strokes);
  }

  /** Along, across and height in the rule's own frame; zero line at 0, graduated edge at 0, upper face at 0. */
  local(x: number, y: number): [number, number] {
    const dx = x - this.pose.x;
    const dy = y - this.pose.y;
    return [dx * this.#c + dy * this.#s, -dx * this.#s + dy * this.#c];
  }

  world(along: number, across: number): Vector {
    return [
      this.pose.x + along * this.#c - across * this.#s,
      this.pose.y + along * this.#s + across * this.#c,
      this.pose.z,
    ];
  }

  distance(x: number, y: number, z: number): number {
    const dx = x - this.pose.x;
    const dy = y - this.pose.y;
    const along = dx * this.#c + dy * this.#s;
    const across = -dx * this.#s + dy * this.#c;
    const { lengthMm, widthMm } = this.pose;
    const t = SteelRule.thicknessMm;
    return box(along - lengthMm / 2, across - widthMm / 2, z - this.pose.z + t / 2, lengthMm / 2 + SteelRule.endMm, widthMm / 2, t / 2, 0.15);
  }

  surface(x: number, y: number, z: number, nz: number, out: Surface): void {
    const [along, across] = this.local(x, y);
    const grain = noise2(along * 0.35, across * 9, 501) * 0.5 + noise2(along * 1.4, across * 22, 502) * 0.5;
    const worn = fbm2(along * 0.06, across * 0.1, 4, 503);
    const level = 0.5 + 0.1 * (grain - 0.5) + 0.14 * (worn - 0.5);
    out.r = level * 0.98;
    out.g = level * 0.98;
    out.b = level;
    out.metal = 0.82;
    out.rough = 0.36 + 0.12 * worn;
    out.relief = 0.3;
    const spots = smooth(0.7, 0.82, fbm2(along * 0.23, across * 0.23, 4, 507));
    out.r -= spots * 0.16;
    out.g -= spots * 0.2;
    out.b -= spots * 0.24;
    if (nz > 0.7 && z > this.pose.z - 0.3) {
      const ink = clamp01(0.5 - this.#marks.at(along, across) / 0.06);
      out.r = out.r * (1 - ink) + 0.012 * ink;
      out.g = out.g * (1 - ink) + 0.012 * ink;
      out.b = out.b * (1 - ink) + 0.013 * ink;
      out.metal *= 1 - ink;
      out.rough = out.rough * (1 - ink) + 0.75 * ink;
    }
  }

  bump(x: number, y: number): number {
    const [along, across] = this.local(x, y);
    return 0.006 * noise2(along * 0.5, across * 14, 505);
  }

  /** Centre of every tenth graduation, half way down its line, for the truth. */
  features(prefix = 'rule'): Record<string, Vector> {
    const found: Record<string, Vector> = {};
    for (let mm = 0; mm <= this.pose.lengthMm; mm += 10) found[`${prefix} ${mm} mm`] = this.world(mm, 2.5);
    return found;
  }
}
