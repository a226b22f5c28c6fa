/** Finds what a ray meets and how bright it is: soft area lights, contact shadows, blurred surroundings, one mirror bounce. */
import { backdrop } from './bench.ts';
import { cross, unit, type Vector } from './camera.ts';
import type { Scene, Surface } from './scene.ts';

interface Panel {
  n: Vector; u: Vector; v: Vector; wide: number; high: number; colour: Vector;
}

export class Tracer {
  readonly #scene: Scene;
  readonly #panels: Panel[];
  /** Spherical-harmonic light of the surroundings (order 2), three colours. */
  readonly #ambient: Float64Array;
  readonly #surface: Surface = { r: 0, g: 0, b: 0, rough: 0.5, metal: 0, coat: 0, coatRough: 0.1, relief: 1 };
  readonly #env = new Float64Array(3);
  readonly out = new Float64Array(3);

  constructor(scene: Scene) {
    this.#scene = scene;
    this.#panels = scene.surroundings.panels.map((p) => {
      const n = unit(p.towards);
      const u = unit(cross(Math.abs(n[2]) > 0.9 ? [0, 1, 0] : [0, 0, 1], n));
      return { n, u, v: cross(n, u), wide: p.wide, high: p.high, colour: p.colour };
    });
    this.#ambient = this.#integrate();
  }

  #integrate(): Float64Array {
    const sums = new Float64Array(27);
    const samples = 6000;
    for (let i = 0; i < samples; i++) {
      const z = 1 - (2 * (i + 0.5)) / samples;
      const a = i * 2.399963229728653;
      const s = Math.sqrt(1 - z * z);
      const x = s * Math.cos(a);
      const y = s * Math.sin(a);
      this.#look(x, y, z, 0.1);
      const basis = [0.282095, 0.488603 * y, 0.488603 * z, 0.488603 * x, 1.092548 * x * y, 1.092548 * y * z, 0.315392 * (3 * z * z - 1), 1.092548 * x * z, 0.546274 * (x * x - y * y)];
      for (let k = 0; k < 9; k++) {
        for (let c = 0; c < 3; c++) sums[k * 3 + c] = (sums[k * 3 + c] ?? 0) + ((this.#env[c] ?? 0) * (basis[k] ?? 0) * 4 * Math.PI) / samples;
      }
    }
    const lobe = [Math.PI, 2.094395, 2.094395, 2.094395, 0.785398, 0.785398, 0.785398, 0.785398, 0.785398];
    for (let k = 0; k < 9; k++) for (let c = 0; c < 3; c++) sums[k * 3 + c] = ((sums[k * 3 + c] ?? 0) * (lobe[k] ?? 0)) / Math.PI;
    return sums;
  }

  /** Brightness of the surroundings in a direction, blurred by roughness. */
  #look(x: number, y: number, z: number, rough: number): void {
    const s = this.#scene.surroundings;
    const up = z > 0 ? z : 0;
    const low = z < 0 ? -z : 0;
    const soft = 1 - rough * 0.5;
    const a = Math.pow(up, soft);
    const b = Math.pow(low, soft);
    const env = this.#env;
    env[0] = s.level[0] + (s.above[0] - s.level[0]) * a + (s.below[0] - s.level[0]) * b;
    env[1] = s.level[1] + (s.above[1] - s.level[1]) * a + (s.below[1] - s.level[1]) * b;
    env[2] = s.level[2] + (s.above[2] - s.level[2]) * a + (s.below[2] - s.level[2]) * b;
    const blur = 0.02 + rough * rough * 1.5;
    for (const p of this.#panels) {
      const d = x * p.n[0] + y * p.n[1] + z * p.n[2];
      if (d <= 0.02) continue;
      const px = Math.abs((x * p.u[0] + y * p.u[1] + z * p.u[2]) / d);
      const py = Math.abs((x * p.v[0] + y * p.v[1] + z * p.v[2]) / d);
      const mx = (px - p.wide) / blur;
      const my = (py - p.high) / blur;
      if (mx > 3 || my > 3) continue;
      const fx = 1 / (1 + Math.exp(mx * 2.2));
      const fy = 1 / (1 + Math.exp(my * 2.2));
      const spread = (p.wide / (p.wide + blur * 0.9)) * (p.high / (p.high + blur * 0.9));
      const w = fx * fy * spread * Math.min(1, d * 3);
      env[0] += p.colour[0] * w;
      env[1] += p.colour[1] * w;
      env[2] += p.colour[2] * w;
    }
  }

  /** Distance along the ray to the first solid, or -1. */
  march(ox: number, oy: number, oz: number, dx: number, dy: number, dz: number, from: number, to: number, steps: number): number {
    const scene = this.#scene;
    let t = from;
    for (let i = 0; i < steps; i++) {
      const d = scene.distance(ox + dx * t, oy + dy * t, oz + dz * t);
      if (d < 0.00012 * t + 0.002) return t;
      t += d * scene.step;
      if (t > to) return -1;
    }
    return t < to ? t : -1;
  }

  #shadow(x: number, y: number, z: number, lx: number, ly: number, lz: number, far: number, k: number): number {
    const scene = this.#scene;
    let t = scene.normalMm * 4;
    let lit = 1;
    const reach = Math.min(far, scene.occlusionMm * 14);
    for (let i = 0; i < 40; i++) {
      const d = scene.distance(x + lx * t, y + ly * t, z + lz * t);
      const s = 0.5 + (0.5 * d * k) / t;
      if (s < lit) lit = s;
      if (lit <= 0) return 0;
      t += Math.max(d * scene.step, scene.normalMm * 2 + t * 0.02);
      if (t > reach) break;
    }
    return lit >= 1 ? 1 : lit * lit * (3 - 2 * lit);
  }

  /** Colour of a ray, linear, into `out`. `bounce` is false for the mirrored ray itself. */
  trace(ox: number, oy: number, oz: number, dx: number, dy: number, dz: number, bounce: boolean, near: number): void {
    const scene = this.#scene;
    const out = this.out;
    const t = this.march(ox, oy, oz, dx, dy, dz, near, scene.farMm, bounce ? 220 : 60);
    if (t < 0 && bounce) {
      backdrop(dx, dy, dz, out);
      return;
    }
    if (t < 0) {
      this.#look(dx, dy, dz, 0.25);
      out[0] = this.#env[0] ?? 0;
      out[1] = this.#env[1] ?? 0;
      out[2] = this.#env[2] ?? 0;
      return;
    }
    const x = ox + dx * t;
    const y = oy + dy * t;
    const z = oz + dz * t;
    const e = scene.normalMm;
    // Four taps on a tetrahedron give the gradient.
    const d1 = scene.distance(x + e, y - e, z - e);
    const d2 = scene.distance(x - e, y - e, z + e);
    const d3 = scene.distance(x - e, y + e, z - e);
    const d4 = scene.distance(x + e, y + e, z + e);
    let nx = d1 - d2 - d3 + d4;
    let ny = -d1 - d2 + d3 + d4;
    let nz = -d1 + d2 - d3 + d4;
    let l = 1 / (Math.sqrt(nx * nx + ny * ny + nz * nz) || 1);
    nx *= l; ny *= l; nz *= l;
    const gx = nx;
    const gy = ny;
    const gz = nz;
    const s = this.#surface;
    s.coat = 0; s.coatRough = 0.12; s.relief = 1; s.metal = 0; s.rough = 0.6;
    scene.surface(x, y, z, nx, ny, nz, s);
    if (s.relief > 0 && bounce) {
      // Slope of the fine relief along two directions in the surface.
      const f = Math.max(e * 0.9, t * 0.00024);
      const side = Math.abs(nz) > 0.7 ? 0 : 1;
      let ux = side === 0 ? nz : -ny;
      let uy = side === 0 ? 0 : nx;
      let uz = side === 0 ? -nx : 0;
      l = 1 / Math.sqrt(ux * ux + uy * uy + uz * uz);
      ux *= l; uy *= l; uz *= l;
      const wx = ny * uz - nz * uy;
      const wy = nz * ux - nx * uz;
      const wz = nx * uy - ny * ux;
      const here = scene.bump(x, y, z);
      const p = ((scene.bump(x + ux * f, y + uy * f, z + uz * f) - here) * s.relief) / f;
      const q = ((scene.bump(x + wx * f, y + wy * f, z + wz * f) - here) * s.relief) / f;
      nx -= ux * p + wx * q; ny -= uy * p + wy * q; nz -= uz * p + wz * q;
      l = 1 / Math.sqrt(nx * nx + ny * ny + nz * nz);
      nx *= l; ny *= l; nz *= l;
    }
    let ndv = -(nx * dx + ny * dy + nz * dz);
    if (ndv < 0.04) ndv = 0.04;

    const albedoR = s.r, albedoG = s.g, albedoB = s.b;
    const rough = s.rough < 0.06 ? 0.06 : s.rough;
    const metal = s.metal, coat = s.coat, coatRough = s.coatRough;

    // Contact shadow along the geometric normal.
    let closed = 0;
    let weight = 1;
    const reach = scene.occlusionMm;
    for (let i = 1; i <= 5; i++) {
      const h = (reach * i * i) / 25 + e * 2;
      const d = scene.distance(x + gx * h, y + gy * h, z + gz * h);
      closed += ((h - d) / h) * weight * 0.36;
      weight *= 0.78;
    }
    let ao = 1 - closed;
    ao = ao < 0.03 ? 0.03 : ao > 1 ? 1 : ao;

    const rx = dx + 2 * ndv * nx;
    const ry = dy + 2 * ndv * ny;
    const rz = dz + 2 * ndv * nz;

    // Diffuse light of the surroundings.
    const A = this.#ambient;
    const kd = 1 - metal;
    const q0 = 0.282095, q1 = 0.488603, q2 = 1.092548;
    for (let c = 0; c < 3; c++) {
      let v = (A[c] ?? 0) * q0 + (A[3 + c] ?? 0) * q1 * ny + (A[6 + c] ?? 0) * q1 * nz + (A[9 + c] ?? 0) * q1 * nx;
      v += (A[12 + c] ?? 0) * q2 * nx * ny + (A[15 + c] ?? 0) * q2 * ny * nz + (A[18 + c] ?? 0) * 0.315392 * (3 * nz * nz - 1);
      v += (A[21 + c] ?? 0) * q2 * nx * nz + (A[24 + c] ?? 0) * 0.546274 * (nx * nx - ny * ny);
      const albedo = c === 0 ? albedoR : c === 1 ? albedoG : albedoB;
      // Light that bounces inside a hollow keeps it from going dead black.
      const open = ao / (1 - albedo * 0.8 * (1 - ao));
      out[c] = (v > 0 ? v : 0) * albedo * kd * open;
    }
    // Glossy light of the surroundings (split-sum fit by Karis, from memory).
    const f0R = 0.04 + (albedoR - 0.04) * metal;
    const f0G = 0.04 + (albedoG - 0.04) * metal;
    const f0B = 0.04 + (albedoB - 0.04) * metal;
    const c0 = 1 - rough;
    const c1 = 0.0425 - 0.0275 * rough;
    const c2 = 1.04 - 0.572 * rough;
    const c3 = 0.022 * rough - 0.04;
    const a004 = Math.min(c0 * c0, Math.pow(2, -9.28 * ndv)) * c0 + c1;
    const ab = -1.04 * a004 + c2;
    const ac = 1.04 * a004 + c3;
    const shine = Math.min(1, Math.max(0, Math.pow(ndv + ao, 1.2 - rough * 0.6) - 1 + ao));
    this.#look(rx, ry, rz, rough);
    let mr = this.#env[0] ?? 0;
    let mg = this.#env[1] ?? 0;
    let mb = this.#env[2] ?? 0;
    const mirror = bounce && ((metal > 0.5 && rough < 0.34) || coat > 0.5);
    let kept0 = 0, kept1 = 0, kept2 = 0;
    if (mirror) {
      kept0 = out[0] ?? 0; kept1 = out[1] ?? 0; kept2 = out[2] ?? 0;
      this.trace(x + gx * e * 6, y + gy * e * 6, z + gz * e * 6, rx, ry, rz, false, e * 6);
      const sharp = 1 - Math.min(1, rough / 0.4);
      mr += ((out[0] ?? 0) - mr) * sharp;
      mg += ((out[1] ?? 0) - mg) * sharp;
      mb += ((out[2] ?? 0) - mb) * sharp;
      if (metal <= 0.5) {
        this.#look(rx, ry, rz, rough);
      }
      const coatR = out[0] ?? 0, coatG = out[1] ?? 0, coatB = out[2] ?? 0;
      out[0] = kept0; out[1] = kept1; out[2] = kept2;
      kept0 = coatR; kept1 = coatG; kept2 = coatB;
    }
    out[0] = (out[0] ?? 0) + mr * (f0R * ab + ac) * shine;
    out[1] = (out[1] ?? 0) + mg * (f0G * ab + ac) * shine;
    out[2] = (out[2] ?? 0) + mb * (f0B * ab + ac) * shine;

    let coatShineR = 0, coatShineG = 0, coatShineB = 0;
    let coatF = 0;
    if (coat > 0) {
      coatF = 0.04 + 0.96 * Math.pow(1 - ndv, 5);
      if (!mirror) {
        this.#look(rx, ry, rz, coatRough);
        kept0 = this.#env[0] ?? 0; kept1 = this.#env[1] ?? 0; kept2 = this.#env[2] ?? 0;
      }
      coatShineR = kept0 * coatF * shine;
      coatShineG = kept1 * coatF * shine;
      coatShineB = kept2 * coatF * shine;
    }

    for (const light of scene.lights) {
      let lx = light.at[0] - x;
      let ly = light.at[1] - y;
      let lz = light.at[2] - z;
      const square = lx * lx + ly * ly + lz * lz;
      const far = Math.sqrt(square);
      lx /= far; ly /= far; lz /= far;
      const ndl = nx * lx + ny * ly + nz * lz;
      const facing = gx * lx + gy * ly + gz * lz;
      if (ndl <= 0 || facing <= -0.05) continue;
      const lit = bounce ? this.#shadow(x + gx * e * 3, y + gy * e * 3, z + gz * e * 3, lx, ly, lz, far, far / (light.radius * 2)) : ao;
      if (lit <= 0) continue;
      const power = (lit * 1e6) / square;
      let hx = lx - dx, hy = ly - dy, hz = lz - dz;
      const hl = 1 / Math.sqrt(hx * hx + hy * hy + hz * hz);
      hx *= hl; hy *= hl; hz *= hl;
      const ndh = Math.max(0, nx * hx + ny * hy + nz * hz);
      const vdh = Math.max(0, -(dx * hx + dy * hy + dz * hz));
      const fresnel = Math.pow(1 - vdh, 5);
      const size = light.radius / far;
      const gloss = lobe(ndh, ndl, ndv, rough, size);
      const diffuse = ndl * kd;
      out[0] = (out[0] ?? 0) + power * light.colour[0] * (albedoR * diffuse + (f0R + (1 - f0R) * fresnel) * gloss);
      out[1] = (out[1] ?? 0) + power * light.colour[1] * (albedoG * diffuse + (f0G + (1 - f0G) * fresnel) * gloss);
      out[2] = (out[2] ?? 0) + power * light.colour[2] * (albedoB * diffuse + (f0B + (1 - f0B) * fresnel) * gloss);
      if (coat > 0) {
        const g = lobe(ndh, ndl, ndv, coatRough, size) * (0.04 + 0.96 * fresnel) * power;
        coatShineR += g * light.colour[0];
        coatShineG += g * light.colour[1];
        coatShineB += g * light.colour[2];
      }
    }
    if (coat > 0) {
      const under = 1 - coat * coatF;
      out[0] = (out[0] ?? 0) * under + coat * coatShineR;
      out[1] = (out[1] ?? 0) * under + coat * coatShineG;
      out[2] = (out[2] ?? 0) * under + coat * coatShineB;
    }
  }
}

/** GGX highlight, widened and dimmed by the light's own size. */
function lobe(ndh: number, ndl: number, ndv: number, rough: number, size: number): number {
  const a = rough * rough;
  const wide = Math.min(1, a + size * 0.5);
  const a2 = wide * wide;
  const d = ndh * ndh * (a2 - 1) + 1;
  const k = (rough + 1) * (rough + 1) * 0.125;
  const g = (1 / (ndl * (1 - k) + k)) * (1 / (ndv * (1 - k) + k));
  return ((a2 / (Math.PI * d * d)) * g * ndl * 0.25 * (a * a + 1e-4)) / (a2 + 1e-4) * Math.PI;
}
