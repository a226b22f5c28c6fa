import type { Vector, View } from './camera.ts';

/** What a surface is at a point. Colours are linear light, 0 to 1. */
export interface Surface {
  r: number;
  g: number;
  b: number;
  rough: number;
  metal: number;
  /** A clear film (oil, lacquer, water) on top, 0 to 1. */
  coat: number;
  coatRough: number;
  /** Strength of the relief given by `bump`. */
  relief: number;
}

export interface Light {
  readonly at: Vector;
  readonly radius: number;
  /** Linear colour; brightness at one metre. */
  readonly colour: Vector;
}

/** A bright rectangle of the surroundings (window, tube, door), seen from the scene in direction `towards`. */
export interface Panel {
  readonly towards: Vector;
  readonly wide: number;
  readonly high: number;
  readonly colour: Vector;
}

export interface Surroundings {
  readonly above: Vector;
  readonly level: Vector;
  readonly below: Vector;
  readonly panels: readonly Panel[];
}

export interface Truth {
  /** Named points, mm in the world. */
  readonly features: Record<string, Vector>;
  /** Named lines along the surface, mm in the world, end to end. */
  readonly cracks?: Record<string, readonly Vector[]>;
  /** Named outlines on the surface. */
  readonly areas?: Record<string, readonly Vector[]>;
  readonly planes: Record<string, { readonly origin: Vector; readonly u: Vector; readonly v: Vector; readonly what: string }>;
  readonly remarks?: readonly string[];
}

export interface Scene {
  readonly name: string;
  readonly what: string;
  readonly view: View;
  readonly seed: number;
  /** Lens opening (radius, mm) and the distance in focus, mm. */
  readonly apertureMm: number;
  readonly focusMm: number;
  readonly nearMm: number;
  readonly farMm: number;
  readonly exposure: number;
  readonly noise: number;
  /** Reach of the soft contact shadows, mm. */
  readonly occlusionMm: number;
  readonly normalMm: number;
  /** Below 1 where the distances are not exact (bent or rough solids). */
  readonly step: number;
  readonly lights: readonly Light[];
  readonly surroundings: Surroundings;
  readonly truth: Truth;
  /** 1, or 6: the file is stored lying on its side and says so. */
  readonly orientation: 1 | 6;
  readonly takenAt: string;
  readonly offset: string;
  /** Signed distance to the nearest solid, mm. */
  distance(x: number, y: number, z: number): number;
  surface(x: number, y: number, z: number, nx: number, ny: number, nz: number, out: Surface): void;
  /** Height of the fine relief at a point, mm. */
  bump(x: number, y: number, z: number): number;
}

/** A shed in daylight: a big door or window to one side, tubes above, a dim floor. */
export const shed: Surroundings = {
  above: [0.2, 0.21, 0.23],
  level: [0.16, 0.155, 0.15],
  below: [0.075, 0.068, 0.06],
  panels: [
    { towards: [-0.75, 0.35, 0.55], wide: 0.55, high: 0.42, colour: [3.6, 4.0, 4.6] },
    { towards: [0.25, -0.2, 1], wide: 0.75, high: 0.09, colour: [4.6, 4.2, 3.6] },
    { towards: [0.3, 0.55, 0.8], wide: 0.75, high: 0.07, colour: [3.2, 2.9, 2.5] },
    { towards: [0.9, 0.1, 0.3], wide: 0.3, high: 0.5, colour: [0.9, 0.85, 0.8] },
  ],
};
