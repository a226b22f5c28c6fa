export interface Movable {
  readonly findingId: string;
  readonly tier: number;
  readonly moved: { readonly beforeFindingId: string | null } | null;
}

/**
 * The order as shown: the computed one with the lines that were moved by hand put where the mechanic wants them, before
 * another finding or last of their own tier. A move before something that is not listed any more, or before each other in a
 * ring, leaves the line at its computed place.
 */
export function moveLines<Line extends Movable>(computed: readonly Line[]): Line[] {
  const shown = computed.filter(({ moved }) => moved === null);
  let waiting = computed.filter(({ moved }) => moved !== null);
  while (waiting.length > 0) {
    const ready = waiting.find((line) => targetOf(line, shown) !== null);
    const next = ready ?? waiting[0];
    if (next === undefined) break;
    shown.splice(targetOf(next, shown) ?? computedIndex(next, shown, computed), 0, next);
    waiting = waiting.filter((line) => line !== next);
  }
  return shown;
}

/** Where a moved line goes among the lines placed so far; null while its target is not there. */
function targetOf(line: Movable, shown: readonly Movable[]): number | null {
  const before = line.moved?.beforeFindingId ?? null;
  if (before === null) {
    const after = shown.findLastIndex(({ tier }) => tier <= line.tier);
    return after + 1;
  }
  const index = shown.findIndex(({ findingId }) => findingId === before);
  return index < 0 ? null : index;
}

/** After the nearest line that the computed order puts before it. */
function computedIndex<Line extends Movable>(line: Line, shown: readonly Line[], computed: readonly Line[]): number {
  const before = computed.slice(0, computed.indexOf(line));
  return shown.findLastIndex((other) => before.includes(other)) + 1;
}
