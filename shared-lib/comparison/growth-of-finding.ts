import type { Measurement } from '../calibration/measure.ts';
import type { Mark, ShapeName } from '../model/mark.ts';
import { type Growth, growthBetween } from './growth.ts';

/** What is missing before two sizes can be compared. */
export type GrowthGap =
  | 'no-mark-then'
  | 'no-mark-now'
  | 'no-scale-then'
  | 'no-scale-now'
  /** Today's mark is the old one, carried over and not set anew. */
  | 'only-carried'
  /** A length beside an area. */
  | 'not-alike'
  /** A part was fitted there since. */
  | 'other-part';

/** One photo's side of it. */
export interface GrowthSide {
  readonly marks: readonly Mark[];
  /** In the plane that the mark names; null where it names none, or has no size there. */
  readonly sizeOf: (mark: Mark) => Measurement | null;
  /** True hours of the machine at that visit. */
  readonly hours: number | null;
}

export interface FindingGrowth {
  /** Today's finding, and the one it goes on with. */
  readonly findingId: string;
  readonly earlierFindingId: string;
  readonly markId: string | null;
  readonly earlierMarkId: string | null;
  readonly sizeThen: Measurement | null;
  readonly sizeNow: Measurement | null;
  readonly hoursThen: number | null;
  readonly hoursNow: number | null;
  readonly growth: Growth | null;
  readonly missing: readonly GrowthGap[];
}

export type Compared = Pick<
  FindingGrowth,
  'markId' | 'earlierMarkId' | 'sizeThen' | 'sizeNow' | 'hoursThen' | 'hoursNow' | 'growth' | 'missing'
>;

const hasSize = (shape: ShapeName): boolean => shape !== 'point' && shape !== 'arrow';
const isArea = (shape: ShapeName): boolean => shape === 'area';

const isOnlyCarried = ({ origin }: Mark): boolean => origin.by === 'carried' && origin.isSetAnew !== true;

/**
 * A mark of then and a mark of now of one kind: first one that was taken over and set anew, then the first alike. One that
 * was only carried over counts where there is no other.
 */
function pairOfMarks(then: readonly Mark[], now: readonly Mark[]): { before?: Mark; after?: Mark; isAlike: boolean } {
  const befores = then.filter(({ shape }) => hasSize(shape));
  const all = now.filter(({ shape }) => hasSize(shape));
  const ofToday = all.filter((mark) => !isOnlyCarried(mark));
  const afters = ofToday.length > 0 ? ofToday : all;
  for (const after of afters) {
    const { origin } = after;
    const before = befores.find(({ id }) => origin.by === 'carried' && origin.fromMarkId === id);
    if (before && isArea(before.shape) === isArea(after.shape)) return { before, after, isAlike: true };
  }
  for (const before of befores) {
    const after = afters.find(({ shape }) => isArea(shape) === isArea(before.shape));
    if (after) return { before, after, isAlike: true };
  }
  const [before, after] = [befores[0], afters[0]];
  return { ...(before ? { before } : {}), ...(after ? { after } : {}), isAlike: !before || !after };
}

/** What became of a finding between two photos of it. Where the sizes can't be compared it says what is missing. */
export function growthOfFinding(
  then: GrowthSide,
  now: GrowthSide,
  { isOtherPart }: { isOtherPart: boolean },
): Compared {
  const { before, after, isAlike } = pairOfMarks(then.marks, now.marks);
  const sizeThen = before ? then.sizeOf(before) : null;
  const sizeNow = after ? now.sizeOf(after) : null;
  const missing: GrowthGap[] = isOtherPart
    ? ['other-part']
    : [
        ...(before ? [] : (['no-mark-then'] as const)),
        ...(after ? [] : (['no-mark-now'] as const)),
        ...(after && isOnlyCarried(after) ? (['only-carried'] as const) : []),
        ...(isAlike ? [] : (['not-alike'] as const)),
        ...(before && !sizeThen ? (['no-scale-then'] as const) : []),
        ...(after && !sizeNow ? (['no-scale-now'] as const) : []),
      ];
  const side = { markId: after?.id ?? null, earlierMarkId: before?.id ?? null, sizeThen, sizeNow };
  const hours = { hoursThen: then.hours, hoursNow: now.hours };
  if (missing.length > 0 || !sizeThen || !sizeNow) return { ...side, ...hours, growth: null, missing };
  const growth = growthBetween(
    { value: sizeThen.value, u: sizeThen.u ?? Number.NaN, hours: then.hours },
    { value: sizeNow.value, u: sizeNow.u ?? Number.NaN, hours: now.hours },
  );
  return { ...side, ...hours, growth, missing };
}
