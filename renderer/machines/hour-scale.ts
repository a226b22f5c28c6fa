/** One visit as the rule shows it. */
export interface HourMark {
  readonly id: string;
  readonly hours: number;
}

export interface HourScale {
  readonly from: number;
  readonly to: number;
  /** Hours between two numbered lines. */
  readonly majorStep: number;
  readonly minorStep: number;
  readonly majors: readonly number[];
  readonly minors: readonly number[];
}

/** 1, 2 or 5 times a power of ten, at least as large as asked for. */
function roundStepAtLeast(hours: number): number {
  const power = 10 ** Math.floor(Math.log10(hours));
  const step = [1, 2, 5, 10].find((factor) => factor * power >= hours * (1 - 1e-9)) ?? 10;
  return step * power;
}

function multiplesWithin(step: number, from: number, to: number): number[] {
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => (first + index) * step);
}

const fewestSpanHours = 200;
const mostNumbers = 5;

/**
 * The stretch of the hour meter that holds every visit, with room at both ends, and its graduation.
 *
 * @param hours  true hours of the visits, at least one, in any order
 * @returns  three to six numbered lines at round hours; ten (or, for steps of five, five) divisions between them
 */
export function hourScale(hours: readonly number[]): HourScale {
  const least = Math.min(...hours);
  const most = Math.max(...hours);
  const span = Math.max(most - least, fewestSpanHours);
  const room = span * 0.28;
  const middle = (least + most) / 2;
  const from = Math.max(0, middle - span / 2 - room);
  const to = Math.max(middle + span / 2 + room, from + span);
  const majorStep = roundStepAtLeast((to - from) / mostNumbers);
  const minorStep = majorStep / 10;
  return {
    from,
    to,
    majorStep,
    minorStep,
    majors: multiplesWithin(majorStep, from, to),
    minors: multiplesWithin(minorStep, from, to),
  };
}

/** Where these hours stand along the rule, 0 at its left end and 1 at its right end. */
export function shareAlong({ from, to }: Pick<HourScale, 'from' | 'to'>, hours: number): number {
  return (hours - from) / (to - from);
}

export interface LabelRoom {
  readonly id: string;
  /** Left edge and width of the words over the mark, in pixels. */
  readonly left: number;
  readonly width: number;
  readonly alignEnd: boolean;
}

export interface LabelWish {
  readonly id: string;
  /** Where the mark stands along the rule. */
  readonly x: number;
  /** The width its words would take on one line. */
  readonly wantedPx: number;
}

const gapPx = 24;

/**
 * Words over the marks without overlap. The newest visit is always named; an older one only where there is room.
 *
 * @param wishes  in the order of their hours
 * @param leastPx  the narrowest room in which words can still be read
 */
export function labelRooms(wishes: readonly LabelWish[], widthPx: number, leastPx: number): readonly LabelRoom[] {
  const newest = wishes.at(-1);
  if (newest === undefined) return [];
  const rooms: LabelRoom[] = [roomOfNewest(newest, wishes.at(-2), widthPx, leastPx)];
  let free = rooms[0]?.left ?? 0;
  for (const wish of wishes.slice(0, -1).toReversed()) {
    const room = free - gapPx - wish.x;
    if (room < Math.min(leastPx, wish.wantedPx)) continue;
    rooms.push({ id: wish.id, left: wish.x, width: Math.min(wish.wantedPx, room), alignEnd: false });
    free = wish.x;
  }
  return rooms.toReversed();
}

/** Towards the free side of its mark; backwards it leaves the visit before enough to be read. */
function roomOfNewest(newest: LabelWish, before: LabelWish | undefined, widthPx: number, leastPx: number): LabelRoom {
  const after = widthPx - newest.x;
  if (after >= newest.wantedPx || after >= newest.x) {
    return { id: newest.id, left: newest.x, width: Math.min(newest.wantedPx, after), alignEnd: false };
  }
  const shared = before === undefined ? newest.x : newest.x - before.x - leastPx - gapPx;
  const width = Math.min(newest.wantedPx, newest.x, Math.max(leastPx, shared));
  return { id: newest.id, left: newest.x - width, width, alignEnd: true };
}

/** Moves a number of the rule beside a visit's mark that would be scribed through it. */
export function besideMark(x: number, halfPx: number, marks: readonly number[]): number {
  const through = marks.find((mark) => Math.abs(mark - x) < halfPx + 5);
  if (through === undefined) return x;
  return through > x ? through - halfPx - 7 : through + halfPx + 7;
}
