import { causeGraph, reachable } from './cause-graph.ts';
import type { Cause } from './rankable.ts';

/** Groups of findings that lead to each other round and round; single findings are left out. */
export function loopsAmong(ids: readonly string[], causes: readonly Cause[]): string[][] {
  const graph = causeGraph(ids, causes);
  const seen = new Set<string>();
  const loops: string[][] = [];
  for (const id of ids) {
    if (seen.has(id) || graph.consequencesOf(id).length === 0 || graph.causesOf(id).length === 0) continue;
    const downstream = reachable(id, graph.consequencesOf);
    if (!downstream.has(id)) continue;
    const upstream = reachable(id, graph.causesOf);
    const loop = [...downstream].filter((other) => upstream.has(other));
    for (const member of loop) seen.add(member);
    loops.push(loop);
  }
  return loops;
}

/**
 * The links that order the findings, without those that close a loop: each loop begins at `startOf` of its members, which
 * then comes before all of them; what leads to it from inside the loop is dropped. Loops that remain inside are broken alike.
 */
export function breakLoops(
  ids: readonly string[],
  causes: readonly Cause[],
  startOf: (loop: readonly string[]) => string,
): Cause[] {
  return loopsAmong(ids, causes).reduce<Cause[]>(
    (kept, loop) => {
      const start = startOf(loop);
      const members = new Set(loop);
      const opened = kept.filter(({ fromId, toId }) => !(toId === start && members.has(fromId)));
      const rest = loop.filter((id) => id !== start);
      const inside = opened.filter(({ fromId, toId }) => rest.includes(fromId) && rest.includes(toId));
      const insideKept = new Set(breakLoops(rest, inside, startOf));
      // The whole loop hangs on its start, also where a loop inside it is opened at a member nothing else leads to.
      const hung = rest.map((id) => ({ fromId: start, toId: id }));
      return [...opened.filter((cause) => !inside.includes(cause)), ...insideKept, ...hung];
    },
    [...causes],
  );
}

/**
 * The links that close a loop: those into its beginning from inside it, loop by loop, until none is left.
 */
export function linksThatClose<T extends Cause>(
  ids: readonly string[],
  causes: readonly T[],
  startOf: (loop: readonly string[]) => string,
): T[] {
  return loopsAmong(ids, causes).flatMap((loop) => {
    const start = startOf(loop);
    const members = new Set(loop);
    const rest = loop.filter((id) => id !== start);
    const inside = causes.filter(
      ({ fromId, toId }) => fromId !== start && toId !== start && members.has(fromId) && members.has(toId),
    );
    const closing = causes.filter(({ fromId, toId }) => toId === start && members.has(fromId));
    return [...closing, ...linksThatClose(rest, inside, startOf)];
  });
}
