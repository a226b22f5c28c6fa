import type { FittedPart } from '../model/machine.ts';
import { isBelow } from './is-below.ts';

/** A stay of the machine, as far as a change of part is placed by it. */
export interface Stay {
  readonly id: string;
  /** True hours; null where nobody read them. */
  readonly hours: number | null;
}

/** `may be another`: it was changed in one of the two stays themselves, or at hours that do not say between which. */
export type SamePart = 'the same' | 'another' | 'may be another';

/** A part was fitted or came out. */
interface Change {
  readonly stayId: string | null;
  readonly hours: number | null;
}

/** A part at, above or below a place changes what is measured there. */
function changesAt(place: string, parts: readonly FittedPart[]): readonly Change[] {
  return parts
    .filter(({ path }) => isBelow(place, path) || isBelow(path, place))
    .flatMap((part) => [
      { stayId: part.fittedVisitId, hours: part.fittedHours },
      { stayId: part.removedVisitId, hours: part.removedHours },
    ])
    .filter(({ stayId, hours }) => stayId !== null || hours !== null);
}

function between({ stayId, hours }: Change, before: number, after: number, stays: readonly Stay[]): SamePart {
  const at = stays.findIndex(({ id }) => id === stayId);
  if (at >= 0) {
    if (at === before || at === after) return 'may be another';
    return at > before && at < after ? 'another' : 'the same';
  }
  const [from, to] = [stays[before]?.hours ?? null, stays[after]?.hours ?? null];
  if (hours === null || before === after) return 'the same';
  if ((from !== null && hours < from) || (to !== null && hours > to)) return 'the same';
  return from !== null && to !== null && hours > from && hours < to ? 'another' : 'may be another';
}

/**
 * Whether what stands at a place is one part at two stays. Nothing may be compared across a change: a new part is not the
 * old one grown younger.
 *
 * @param stays  all of the machine, in the order they happened; `before` and `after` are ids among them
 * @param parts  the machine's fitted parts
 */
export function samePartBetween(
  place: string,
  before: string,
  after: string,
  stays: readonly Stay[],
  parts: readonly FittedPart[],
): SamePart {
  const [one, other] = [before, after].map((id) => stays.findIndex((stay) => stay.id === id));
  if (one === undefined || other === undefined) return 'the same';
  const [first, last] = [Math.min(one, other), Math.max(one, other)];
  const told = changesAt(place, parts).map((change) => between(change, first, last, stays));
  return told.find((each) => each === 'another') ?? told.find((each) => each === 'may be another') ?? 'the same';
}
