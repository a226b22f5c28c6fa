import type { Layout } from '../model/layout.ts';

/** More places than a machine's record ever names. */
const mostPlaces = 5_000;

/**
 * Computes once for each place of a layout: lists are sorted and rules are asked place by place, over and over.
 * A layout object is never changed, only replaced.
 */
export function oncePerPlace<T extends object>(
  compute: (place: string, layout: Layout) => T,
): (place: string, layout: Layout) => T {
  const byLayout = new WeakMap<Layout, Map<string, T>>();
  return (place, layout) => {
    const known = byLayout.get(layout) ?? new Map<string, T>();
    byLayout.set(layout, known);
    const there = known.get(place);
    if (there !== undefined) return there;
    const fresh = compute(place, layout);
    if (known.size >= mostPlaces) known.clear();
    known.set(place, fresh);
    return fresh;
  };
}
