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

/**
 * Words over the marks without overlap. The newest visit is always named; an older one only where there is room.
 *
 * @param marks  in the order of their hours
 * @param least  the narrowest room, in pixels, in which words can still be read
 */
export function labelRooms(
  marks: readonly { readonly id: string; readonly x: number }[],
  widthPx: number,
  least: number,
): readonly LabelRoom[] {
  const gap = 24;
  const newest = marks.at(-1);
  if (newest === undefined) return [];
  const rooms: LabelRoom[] = [];
  let free = widthPx;
  for (const mark of marks.toReversed()) {
    const before = mark.x;
    const after = free - mark.x;
    const isNewest = mark === newest;
    const alignEnd = isNewest && before > after && marks.length > 0 && after < least * 1.6;
    if (alignEnd) {
      const others = marks.filter((other) => other !== mark && other.x < mark.x);
      const previous = others.at(-1);
      // Half of the way back belongs to the visit before, if its words can stand there.
      const reach = previous === undefined ? before : Math.max(least, Math.min(before, (before - previous.x) * 0.5));
      const width = Math.min(reach, before);
      rooms.push({ id: mark.id, left: mark.x - width, width, alignEnd: true });
      free = mark.x - width - gap;
      continue;
    }
    if (isNewest || after >= least) {
      rooms.push({ id: mark.id, left: mark.x, width: Math.max(after, 0), alignEnd: false });
      free = mark.x - gap;
    }
  }
  return rooms.toReversed();
}
