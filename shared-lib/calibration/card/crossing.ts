import type { XY } from '../../geometry/spaces.ts';
import { type GreyImage, sampleGrey } from '../../tracing/grey.ts';

/** One square's sides at a crossing, in pixels: along u and along v. */
export interface Sides {
  readonly u: XY;
  readonly v: XY;
}

/** Reach of the window in squares: dots begin at 0.53. */
const reach = 0.42;
const largestReachPx = 40;
const rounds = 12;

/**
 * The point that the edges' gradients round it agree on: each gradient stands square on the line from that point to its
 * pixel. Weighted in squares, so that a leaning card is looked at as if from straight above.
 *
 * @returns null where it runs away from `start` or the window leaves the picture
 * Source: Foerstner and Guelch, A fast operator for detection and precise location of distinct points (1987), repeated
 * with the window moved along.
 */
export function refineCrossing(image: GreyImage, start: XY, { u, v }: Sides): XY | null {
  const longest = Math.max(Math.hypot(u.x, u.y), Math.hypot(v.x, v.y));
  const window = Math.min(reach, largestReachPx / longest);
  const determinant = u.x * v.y - u.y * v.x;
  if (Math.abs(determinant) < 4) return null;
  const halfWidth = Math.ceil(window * Math.hypot(u.x, v.x));
  const halfHeight = Math.ceil(window * Math.hypot(u.y, v.y));
  let at = start;
  for (let round = 0; round < rounds; round += 1) {
    const x0 = Math.round(at.x);
    const y0 = Math.round(at.y);
    if (x0 - halfWidth < 1 || y0 - halfHeight < 1) return null;
    if (x0 + halfWidth > image.width - 2 || y0 + halfHeight > image.height - 2) return null;
    let [xx, xy, yy, bx, by] = [0, 0, 0, 0, 0];
    for (let y = y0 - halfHeight; y <= y0 + halfHeight; y += 1) {
      const dy = y - at.y;
      for (let x = x0 - halfWidth; x <= x0 + halfWidth; x += 1) {
        const dx = x - at.x;
        const du = (dx * v.y - dy * v.x) / determinant / window;
        const dv = (dy * u.x - dx * u.y) / determinant / window;
        const square = du * du + dv * dv;
        if (square >= 1) continue;
        const weight = (1 - square) * (1 - square);
        const [gx, gy] = gradient(image, x, y);
        const along = gx * dx + gy * dy;
        xx += weight * gx * gx;
        xy += weight * gx * gy;
        yy += weight * gy * gy;
        bx += weight * gx * along;
        by += weight * gy * along;
      }
    }
    const scale = xx * yy - xy * xy;
    if (!(scale > 1e-6 * (xx + yy) ** 2)) return null;
    const step = { x: (yy * bx - xy * by) / scale, y: (xx * by - xy * bx) / scale };
    at = { x: at.x + step.x, y: at.y + step.y };
    const [du, dv] = inSquares(at, start, { u, v });
    if (Math.hypot(du, dv) > 0.3) return null;
    if (Math.hypot(step.x, step.y) < 1e-3) break;
  }
  return at;
}

function inSquares(at: XY, from: XY, { u, v }: Sides): [number, number] {
  const determinant = u.x * v.y - u.y * v.x;
  const [dx, dy] = [at.x - from.x, at.y - from.y];
  return [(dx * v.y - dy * v.x) / determinant, (dy * u.x - dx * u.y) / determinant];
}

/** Differences over three by three pixels, smoothed across. */
function gradient({ data, width }: GreyImage, x: number, y: number): [number, number] {
  const at = y * width + x;
  const a = data[at - width - 1] as number;
  const b = data[at - width] as number;
  const c = data[at - width + 1] as number;
  const d = data[at - 1] as number;
  const f = data[at + 1] as number;
  const g = data[at + width - 1] as number;
  const h = data[at + width] as number;
  const i = data[at + width + 1] as number;
  return [(c + 2 * f + i - a - 2 * d - g) / 8, (g + 2 * h + i - a - 2 * b - c) / 8];
}

/** Whether the four squares that meet here are dark and light in turn; `dark` says that the one towards +u +v is dark. */
export function looksCrossed(image: GreyImage, at: XY, { u, v }: Sides, dark: boolean): boolean {
  const wedge = (du: number, dv: number): number => {
    let sum = 0;
    for (const s of [0.16, 0.22, 0.28]) {
      sum += sampleGrey(image, { x: at.x + s * (du * u.x + dv * v.x), y: at.y + s * (du * u.y + dv * v.y) });
    }
    return sum / 3;
  };
  const like = [wedge(1, 1), wedge(-1, -1)];
  const other = [wedge(1, -1), wedge(-1, 1)];
  const [darks, lights] = dark ? [like, other] : [other, like];
  const gap = Math.min(...lights) - Math.max(...darks);
  const whole = Math.max(...lights) - Math.min(...darks);
  return gap > 4 && gap > 0.12 * whole;
}
