import { directionAt, isCrest, type Ridges } from './ridge.ts';

export interface StraightnessSettings {
  /** Length of the straight rod laid along every ridge pixel, px. */
  readonly rodPx: number;
  /** Ridge strength from which a pixel counts as part of a line. */
  readonly strongFrom: number;
}

const stepPx = 3;
const turnsEachSide = 5;
/** Rods lie in this many directions over half a turn, about a fiftieth of a radian apart. */
const directionCount = 157;
/** Most pixels are grain: a few steps each way say so. */
const touch = 10;
const enoughTouch = 6;
/** Below this nobody asks. */
const leastSaid = 0.5;

/**
 * How far every ridge pixel is part of a line that is straight to about a pixel over a rod's length: 0 to 1, 0 where it is
 * under a half. Cracks wander; joints of formwork, machining steps, scribed lines and edges do not. A rod may end at the
 * pixel, so the end of a joint is as straight as its middle.
 */
export function findStraightness(
  ridges: Ridges,
  width: number,
  height: number,
  { rodPx, strongFrom }: StraightnessSettings,
): Float32Array {
  const { strength } = ridges;
  const straight = new Float32Array(strength.length);
  const steps = Math.round(rodPx / stepPx);
  const half = steps >> 1;
  // Room for a whole rod round the picture, so that no step has to ask whether it leaves it.
  const frame = steps * stepPx + 1;
  const stride = width + 2 * frame;
  // A line one pixel wider each way: a rod one pixel off still lies on it.
  const wide = new Uint8Array(stride * (height + 2 * frame));
  const crests: number[] = [];
  for (let y = 1; y < height - 1; y += 1) {
    for (let x = 1; x < width - 1; x += 1) {
      const at = y * width + x;
      if ((strength[at] as number) < strongFrom || !isCrest(ridges, width, at)) continue;
      // Two of five are asked for themselves, never three steps apart along any axis or diagonal; the rest lie on their flanks.
      const turn = (x + 2 * y) % 5;
      if (turn === 0 || turn === 2) crests.push(at);
      const to = (y + frame) * stride + x + frame;
      wide[to] = wide[to - 1] = wide[to + 1] = wide[to - stride] = wide[to + stride] = 1;
    }
  }
  const rods = layRods(steps, stride);
  for (const at of crests) {
    const x = at % width;
    const y = (at - x) / width;
    const middle = (y + frame) * stride + x + frame;
    const nearest = Math.round((directionAt(ridges, at) * directionCount) / Math.PI);
    let best = leastSaid;
    for (let turn = -turnsEachSide; turn <= turnsEachSide; turn += 1) {
      const rod = ((nearest + turn + 2 * directionCount) % directionCount) * steps;
      let ahead = 0;
      let behind = 0;
      let i = rod;
      for (; i < rod + touch; i += 1) {
        ahead += wide[middle + (rods[i] as number)] as number;
        behind += wide[middle - (rods[i] as number)] as number;
      }
      if (ahead < enoughTouch && behind < enoughTouch) continue;
      for (; i < rod + half; i += 1) {
        ahead += wide[middle + (rods[i] as number)] as number;
        behind += wide[middle - (rods[i] as number)] as number;
      }
      best = Math.max(best, (ahead + behind) / (2 * half));
      if (Math.max(ahead, behind) <= best * steps - half) continue;
      for (; i < rod + steps; i += 1) {
        ahead += wide[middle + (rods[i] as number)] as number;
        behind += wide[middle - (rods[i] as number)] as number;
      }
      best = Math.max(best, ahead / steps, behind / steps);
    }
    if (best > leastSaid) spread(straight, ridges, width, height, at, best);
  }
  return straight;
}

/** For every direction, where the steps of a rod lie from its middle, in a picture of that stride. */
function layRods(steps: number, stride: number): Int32Array {
  const rods = new Int32Array(directionCount * steps);
  for (let direction = 0; direction < directionCount; direction += 1) {
    const dx = Math.cos((direction * Math.PI) / directionCount) * stepPx;
    const dy = Math.sin((direction * Math.PI) / directionCount) * stepPx;
    for (let i = 1; i <= steps; i += 1) {
      rods[direction * steps + i - 1] = Math.round(i * dy) * stride + Math.round(i * dx);
    }
  }
  return rods;
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
