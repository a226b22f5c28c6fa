import { cheapestPath } from './cheapest-path.ts';
import type { EvidenceMap } from './evidence-map.ts';
import type { TraceSettings } from './settings.ts';

/** Why a person has to look at a trace. */
export type TraceDoubt = 'gap' | 'along-straight-line' | 'another-way';

export interface Judgement {
  readonly doubts: readonly TraceDoubt[];
  /** Per pixel of the path. */
  readonly confidence: readonly number[];
  readonly features: TraceFeatures;
}

export interface TraceFeatures {
  readonly weakShare: number;
  readonly longestWeak: number;
  readonly straightShare: number;
  readonly longestStraight: number;
  readonly meanStrength: number;
  /** What the best way that leaves this one costs, against it; and the share of this one that it leaves. */
  readonly otherWay: number;
  readonly otherShare: number;
}

export function judge(
  evidence: EvidenceMap,
  cost: Uint8Array,
  path: readonly number[],
  settings: TraceSettings,
): Judgement {
  const window = 7;
  const strengths = path.map((index) => Math.min(settings.fullStrength, evidence.strength[index] as number));
  const mean = path.map((_, i) => {
    let sum = 0;
    let count = 0;
    for (let k = Math.max(0, i - window); k <= Math.min(path.length - 1, i + window); k += 1) {
      sum += strengths[k] as number;
      count += 1;
    }
    return sum / count;
  });
  const isWeak = mean.map((value) => value < 0.9);
  const isStraight = path.map((index) => (evidence.straightness[index] as number) > 0.7);
  const other = otherWay(evidence, cost, path);
  const features: TraceFeatures = {
    weakShare: share(isWeak),
    longestWeak: longest(isWeak),
    straightShare: share(isStraight),
    longestStraight: longest(isStraight),
    meanStrength: strengths.reduce((sum, value) => sum + value, 0) / Math.max(1, strengths.length),
    ...other,
  };
  const doubts = doubtsOf(features);
  return { doubts, confidence: mean.map((value) => Math.min(1, value / settings.fullStrength)), features };
}

/** Limits set on photographs, so that a wrong way seldom passes for a sure one; about one right way in six is doubted too. */
function doubtsOf(features: TraceFeatures): TraceDoubt[] {
  const doubts: TraceDoubt[] = [];
  if (features.longestWeak > 45 || features.weakShare > 0.3) doubts.push('gap');
  if (features.longestStraight > 60) doubts.push('along-straight-line');
  const isOtherNear = features.otherWay < 1.4 && features.otherShare > 0.3;
  // A short fork whose arms cost the same, as round a chipped edge.
  const isForkEven = features.otherWay < 1.1 && features.otherShare > 0.1;
  if (isOtherNear || isForkEven) doubts.push('another-way');
  return doubts;
}

function share(flags: readonly boolean[]): number {
  return flags.filter(Boolean).length / Math.max(1, flags.length);
}

function longest(flags: readonly boolean[]): number {
  let run = 0;
  let most = 0;
  for (const flag of flags) {
    run = flag ? run + 1 : 0;
    most = Math.max(most, run);
  }
  return most;
}

const apartPx = 5;

/** The best way between the same ends that keeps off this one, by making this one dear and looking again. */
function otherWay(
  { width, height }: EvidenceMap,
  cost: Uint8Array,
  path: readonly number[],
): { otherWay: number; otherShare: number } {
  const start = path[0];
  const end = path.at(-1);
  if (start === undefined || end === undefined || path.length < 40)
    return { otherWay: Number.POSITIVE_INFINITY, otherShare: 0 };
  const dear = Uint8Array.from(cost);
  const near = new Uint8Array(cost.length);
  for (const index of path) {
    const x = index % width;
    const y = (index - x) / width;
    for (let py = Math.max(0, y - apartPx); py <= Math.min(height - 1, y + apartPx); py += 1) {
      const row = py * width;
      for (let px = Math.max(0, x - apartPx); px <= Math.min(width - 1, x + apartPx); px += 1) {
        if (near[row + px]) continue;
        near[row + px] = 1;
        dear[row + px] = Math.min(255, (cost[row + px] as number) * 2 + 2);
      }
    }
  }
  const other = cheapestPath(dear, width, height, start, end);
  if (!other) return { otherWay: Number.POSITIVE_INFINITY, otherShare: 0 };
  let off = 0;
  let otherCost = 0;
  for (const index of other) {
    otherCost += cost[index] as number;
    if (!near[index]) off += 1;
  }
  let ownCost = 0;
  for (const index of path) ownCost += cost[index] as number;
  return { otherWay: otherCost / ownCost, otherShare: off / other.length };
}
