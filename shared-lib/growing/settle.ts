import { boxMean } from '../tracing/blur.ts';
import type { Features } from './features.ts';
import { parting } from './parting.ts';

/** How far a border may move in one turn, px. */
const bandPx = 8;
/** Pixels this near to the border belong to neither side when both sides are looked at. */
const edgePx = 3;
/** Surroundings that both sides are judged by: light changes across a photo. */
const surroundingsPx = 18;

/** A region whose border lies where its two sides, looked at near by, part. */
export interface Settled {
  readonly inside: Uint8Array;
  /** Above 0 inside, below 0 outside, 0 on the border; in the parting's own unit. Of use near the border only. */
  readonly field: Float32Array;
  /** Per pixel: how far the two sides lie apart near by, against their scatter there. */
  readonly contrast: Float32Array;
}

/**
 * Moves a region's border to where its inside and outside part best. Both are judged near by, so a shadow across the
 * patch does no harm.
 *
 * @param seed  a pixel that stays inside
 * @param turns  how often it may move
 * @param evenPx  half the width of bays that are filled and tongues that are cut
 * Source: Chan and Vese, Active contours without edges (2001), in the local form of Lankton and Tannenbaum, Localizing
 * region-based active contours (2008).
 */
export function settle(
  features: Features,
  start: Uint8Array,
  seed: number,
  turns: number,
  evenPx: number,
): Settled | null {
  const { width, height } = features;
  let inside = start;
  let found: Settled | null = null;
  for (let turn = 0; turn < turns; turn += 1) {
    const share = boxMean(Float32Array.from(inside), width, height, edgePx);
    const values = parting(features, share, boxMean(Float32Array.from(inside), width, height, surroundingsPx));
    if (!values) return found;
    const { field, contrast } = nearBy(values, share, width, height);
    const band = boxMean(Float32Array.from(inside), width, height, bandPx);
    const moved = new Uint8Array(inside.length);
    let changes = 0;
    for (let i = 0; i < moved.length; i += 1) {
      const b = band[i] as number;
      moved[i] = b > 0.999 || (b > 0.001 && (field[i] as number) > 0) ? 1 : 0;
    }
    const majority = boxMean(Float32Array.from(moved), width, height, evenPx);
    for (let i = 0; i < moved.length; i += 1) moved[i] = (majority[i] as number) > 0.5 ? 1 : 0;
    const whole = filledPart(moved, width, height, seed);
    for (let i = 0; i < whole.length; i += 1) if (whole[i] !== inside[i]) changes += 1;
    inside = whole;
    found = { inside, field, contrast };
    if (changes < 4) break;
  }
  return found;
}

/** The value against the middle between both sides' means near by. */
function nearBy(
  values: Float32Array,
  share: Float32Array,
  width: number,
  height: number,
): { field: Float32Array; contrast: Float32Array } {
  const size = values.length;
  const ins = new Float32Array(size);
  const outs = new Float32Array(size);
  const squares = new Float32Array(size);
  const insOnly = new Float32Array(size);
  const outsOnly = new Float32Array(size);
  for (let i = 0; i < size; i += 1) {
    const own = share[i] as number;
    const value = values[i] as number;
    if (own > 0.999) {
      ins[i] = 1;
      insOnly[i] = value;
    } else if (own < 0.001) {
      outs[i] = 1;
      outsOnly[i] = value;
    } else continue;
    squares[i] = value * value;
  }
  const mean = (data: Float32Array): Float32Array => boxMean(data, width, height, surroundingsPx);
  const [inCount, inSum, outCount, outSum] = [mean(ins), mean(insOnly), mean(outs), mean(outsOnly)];
  const bothSquares = mean(squares);
  const field = new Float32Array(values.length);
  const contrast = new Float32Array(values.length);
  for (let i = 0; i < size; i += 1) {
    const inShare = inCount[i] as number;
    const outShare = outCount[i] as number;
    // Where one side is not to be seen near by, the parting's own middle (0) has to serve.
    if (inShare < 0.02 || outShare < 0.02) {
      field[i] = values[i] as number;
      continue;
    }
    const inMean = (inSum[i] as number) / inShare;
    const outMean = (outSum[i] as number) / outShare;
    const within = (bothSquares[i] as number) - inShare * inMean ** 2 - outShare * outMean ** 2;
    contrast[i] = (inMean - outMean) / (Math.sqrt(Math.max(0, within) / (inShare + outShare)) + 0.05);
    field[i] = (values[i] as number) - (inMean > outMean ? (inMean + outMean) / 2 : 0);
  }
  return { field, contrast };
}

/** The part that holds the seed, with its holes filled. */
export function filledPart(mask: Uint8Array, width: number, height: number, seed: number): Uint8Array {
  const part = new Uint8Array(mask.length);
  spread(part, width, height, [seed], (at) => at === seed || mask[at] === 1);
  const beyond = new Uint8Array(mask.length);
  const edge: number[] = [];
  for (let x = 0; x < width; x += 1) edge.push(x, (height - 1) * width + x);
  for (let y = 0; y < height; y += 1) edge.push(y * width, y * width + width - 1);
  spread(
    beyond,
    width,
    height,
    edge.filter((at) => part[at] === 0),
    (at) => part[at] === 0,
  );
  for (let i = 0; i < part.length; i += 1) part[i] = beyond[i] ? 0 : 1;
  return part;
}

function spread(
  found: Uint8Array,
  width: number,
  height: number,
  from: readonly number[],
  belongs: (at: number) => boolean,
): void {
  const open: number[] = [];
  const visit = (at: number): void => {
    if (found[at] || !belongs(at)) return;
    found[at] = 1;
    open.push(at);
  };
  for (const at of from) visit(at);
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    const x = at % width;
    if (x > 0) visit(at - 1);
    if (x < width - 1) visit(at + 1);
    if (at >= width) visit(at - width);
    if (at < width * (height - 1)) visit(at + width);
  }
}
