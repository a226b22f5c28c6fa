import { directionAt, isCrest, type Ridges } from './ridge.ts';

export interface StraightnessSettings {
  /** Length of the straight rod laid along every ridge pixel, px. */
  readonly rodPx: number;
  /** Ridge strength from which a pixel counts as part of a line. */
  readonly strongFrom: number;
}

const stepPx = 3;
const anglesEachSide = 5;
const angleStep = 0.02;
const touch = 10;
const enoughTouch = 6;

/**
 * How far every ridge pixel is part of a line that is straight to about a pixel over a rod's length: 0 to 1. Cracks wander;
 * joints of formwork, machining steps, scribed lines and edges do not. A rod may end at the pixel, so the end of a joint
 * is as straight as its middle.
 */
export function findStraightness(
  ridges: Ridges,
  width: number,
  height: number,
  { rodPx, strongFrom }: StraightnessSettings,
): Float32Array {
  const { strength } = ridges;
  const straight = new Float32Array(strength.length);
  // A line one pixel wider each way: a rod one pixel off still lies on it.
  const wide = new Uint8Array(strength.length);
  const crests: number[] = [];
  for (let y = 1; y < height - 1; y += 1) {
    for (let x = 1; x < width - 1; x += 1) {
      const at = y * width + x;
      if ((strength[at] as number) < strongFrom || !isCrest(ridges, width, at)) continue;
      // Two of five are asked for themselves, never three steps apart along any axis or diagonal; the rest lie on their flanks.
      const turn = (x + 2 * y) % 5;
      if (turn === 0 || turn === 2) crests.push(at);
      wide[at] = wide[at - 1] = wide[at + 1] = wide[at - width] = wide[at + width] = 1;
    }
  }
  const steps = Math.round(rodPx / stepPx);
  const half = steps >> 1;
  for (const at of crests) {
    const x = at % width;
    const y = (at - x) / width;
    const along = directionAt(ridges, at);
    let best = 0;
    for (let turn = -anglesEachSide; turn <= anglesEachSide; turn += 1) {
      const dx = Math.cos(along + turn * angleStep) * stepPx;
      const dy = Math.sin(along + turn * angleStep) * stepPx;
      // Most pixels are grain: a few steps each way say so.
      const touchAhead = hits(wide, width, height, x, y, dx, dy, 1, touch);
      const touchBehind = hits(wide, width, height, x, y, -dx, -dy, 1, touch);
      if (touchAhead < enoughTouch && touchBehind < enoughTouch) continue;
      const nearAhead = touchAhead + hits(wide, width, height, x, y, dx, dy, touch + 1, half);
      const nearBehind = touchBehind + hits(wide, width, height, x, y, -dx, -dy, touch + 1, half);
      best = Math.max(best, (nearAhead + nearBehind) / (2 * half));
      if (nearAhead > best * steps - half)
        best = Math.max(best, (nearAhead + hits(wide, width, height, x, y, dx, dy, half + 1, steps)) / steps);
      if (nearBehind > best * steps - half)
        best = Math.max(best, (nearBehind + hits(wide, width, height, x, y, -dx, -dy, half + 1, steps)) / steps);
    }
    spread(straight, ridges, width, height, at, best);
  }
  return straight;
}

const flankPx = 4;

/** The flanks of a crest belong to the same line, where they run the same way (within about 30 degrees). */
function spread(
  straight: Float32Array,
  { halfDifference, mixed }: Ridges,
  width: number,
  height: number,
  at: number,
  value: number,
): void {
  const x = at % width;
  const y = (at - x) / width;
  const half = halfDifference[at] as number;
  const turned = mixed[at] as number;
  const size = half * half + turned * turned;
  for (let py = Math.max(0, y - flankPx); py <= Math.min(height - 1, y + flankPx); py += 1) {
    for (let px = Math.max(0, x - flankPx); px <= Math.min(width - 1, x + flankPx); px += 1) {
      const to = py * width + px;
      if ((straight[to] as number) >= value) continue;
      const h = halfDifference[to] as number;
      const m = mixed[to] as number;
      const dot = half * h + turned * m;
      if (to === at || (dot > 0 && dot * dot > 0.25 * size * (h * h + m * m))) straight[to] = value;
    }
  }
}

/** Pixels of the line under a rod, counted from its step `from` to its step `to`. */
function hits(
  wide: Uint8Array,
  width: number,
  height: number,
  x: number,
  y: number,
  dx: number,
  dy: number,
  from: number,
  to: number,
): number {
  let count = 0;
  for (let i = from; i <= to; i += 1) {
    const px = Math.round(x + i * dx);
    const py = Math.round(y + i * dy);
    if (px < 0 || py < 0 || px >= width || py >= height) break;
    count += wide[py * width + px] as number;
  }
  return count;
}
