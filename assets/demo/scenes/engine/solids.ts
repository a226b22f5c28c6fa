/** Signed distances of simple solids, mm. Negative inside. Centred on the origin unless said. */

export const length2 = (x: number, y: number): number => Math.sqrt(x * x + y * y);
export const length3 = (x: number, y: number, z: number): number => Math.sqrt(x * x + y * y + z * z);

/** A box of half sizes a, b, c with edges rounded to r. */
export function box(x: number, y: number, z: number, a: number, b: number, c: number, r: number): number {
  const qx = Math.abs(x) - a + r;
  const qy = Math.abs(y) - b + r;
  const qz = Math.abs(z) - c + r;
  const ox = qx > 0 ? qx : 0;
  const oy = qy > 0 ? qy : 0;
  const oz = qz > 0 ? qz : 0;
  return Math.sqrt(ox * ox + oy * oy + oz * oz) + Math.min(Math.max(qx, qy, qz), 0) - r;
}

export function rectangle(x: number, y: number, a: number, b: number, r: number): number {
  const qx = Math.abs(x) - a + r;
  const qy = Math.abs(y) - b + r;
  const ox = qx > 0 ? qx : 0;
  const oy = qy > 0 ? qy : 0;
  return Math.sqrt(ox * ox + oy * oy) + Math.min(Math.max(qx, qy), 0) - r;
}

/** Turns a distance in the plane and a distance along the axis into one, with the edge rounded to r. */
export function extrude(flat: number, along: number, r: number): number {
  const a = flat + r;
  const b = along + r;
  const oa = a > 0 ? a : 0;
  const ob = b > 0 ? b : 0;
  return Math.min(Math.max(a, b), 0) + Math.sqrt(oa * oa + ob * ob) - r;
}

/** A disc or bar about the third axis: radius, half height, edge rounding. */
export const cylinder = (x: number, y: number, z: number, radius: number, half: number, r: number): number =>
  extrude(length2(x, y) - radius, Math.abs(z) - half, r);

export const torus = (x: number, y: number, z: number, ring: number, tube: number): number =>
  length2(length2(x, y) - ring, z) - tube;

/** A hexagon's distance in the plane; `a` is half the width across flats. */
export function hexagon(x: number, y: number, a: number): number {
  const px = Math.abs(x);
  const py = Math.abs(y);
  return Math.max(px * 0.8660254 + py * 0.5, py) - a;
}

export function segment(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const vx = bx - ax;
  const vy = by - ay;
  const t = Math.max(0, Math.min(1, ((px - ax) * vx + (py - ay) * vy) / (vx * vx + vy * vy || 1)));
  return length2(px - ax - vx * t, py - ay - vy * t);
}

export function capsule(
  px: number, py: number, pz: number,
  ax: number, ay: number, az: number,
  bx: number, by: number, bz: number,
  r: number,
): number {
  const vx = bx - ax;
  const vy = by - ay;
  const vz = bz - az;
  const t = Math.max(0, Math.min(1, ((px - ax) * vx + (py - ay) * vy + (pz - az) * vz) / (vx * vx + vy * vy + vz * vz)));
  return length3(px - ax - vx * t, py - ay - vy * t, pz - az - vz * t) - r;
}

/** The union of two solids with a fillet of about k. */
export function blend(a: number, b: number, k: number): number {
  const h = Math.max(k - Math.abs(a - b), 0) / k;
  return Math.min(a, b) - h * h * k * 0.25;
}
/** What is left of a after b is cut out, the edge rounded by about k. */
export const carve = (a: number, b: number, k: number): number => -blend(-a, b, k);
