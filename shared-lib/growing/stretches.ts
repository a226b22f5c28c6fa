/** A grown border errs by stretches, not point by point; taken as this many of them. Common practice, no source. */
export const stretchCount = 8;

/** Shorter lapses are noise, points. */
export const shortestLapse = 8;

/** Lapses along a ring that are shorter than noise are filled, and so are gaps between them. */
export function steadied(flags: readonly boolean[]): boolean[] {
  const count = flags.length;
  return flags.map((_, index) => {
    let said = 0;
    for (let k = -shortestLapse; k <= shortestLapse; k += 1) if (flags[(index + k + count) % count]) said += 1;
    return said > shortestLapse;
  });
}

/** Stretches of a ring that are flagged, by index; one that runs over the end has from > to. */
export function runs(flags: readonly boolean[]): [number, number][] {
  const found: [number, number][] = [];
  let from = -1;
  for (const [index, flag] of flags.entries()) {
    if (flag && from < 0) from = index;
    if (!flag && from >= 0) {
      found.push([from, index - 1]);
      from = -1;
    }
  }
  if (from >= 0) found.push([from, flags.length - 1]);
  const first = found[0];
  const last = found.at(-1);
  if (found.length > 1 && first?.[0] === 0 && last?.[1] === flags.length - 1) {
    return [[last[0], first[1]], ...found.slice(1, -1)];
  }
  return found;
}
