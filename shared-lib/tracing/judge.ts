import type { EvidenceMap } from './evidence-map.ts';
import { type Detour, findDetours } from './other-way.ts';
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
  readonly detours: readonly Detour[];
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
  const detours = findDetours(cost, evidence.width, evidence.height, path);
  const features: TraceFeatures = {
    weakShare: share(isWeak),
    longestWeak: longest(isWeak),
    straightShare: share(isStraight),
    longestStraight: longest(isStraight),
    meanStrength: strengths.reduce((sum, value) => sum + value, 0) / Math.max(1, strengths.length),
    detours,
  };
  const doubts = doubtsOf(features);
  return { doubts, confidence: mean.map((value) => Math.min(1, value / settings.fullStrength)), features };
}

/**
 * Limits set on photographs, whole and in parts, plain, noisy, faint and soft: nine wrong ways in ten are doubted, and
 * fewer than one right way in five is doubted too.
 */
function doubtsOf(features: TraceFeatures): TraceDoubt[] {
  const doubts: TraceDoubt[] = [];
  if (features.longestWeak > 45 || features.weakShare > 0.5) doubts.push('gap');
  if (features.longestStraight > 80) doubts.push('along-straight-line');
  if (shift(features.detours, 1.4) > 2.5) doubts.push('another-way');
  return doubts;
}

/** How far the line would move in the mean, px, if every detour up to that ratio of costs were the right way. */
function shift(detours: readonly Detour[], mostRatio: number): number {
  let sum = 0;
  for (const { costRatio, awayPx, share: part } of detours) if (costRatio < mostRatio) sum += awayPx * part;
  return sum;
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
