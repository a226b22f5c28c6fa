import type { Cause } from './rankable.ts';

/** Who leads to whom, both ways, among the findings given. A link to itself or to something else says nothing. */
export interface CauseGraph {
  readonly consequencesOf: (id: string) => readonly string[];
  readonly causesOf: (id: string) => readonly string[];
  readonly ids: readonly string[];
}

export function causeGraph(ids: readonly string[], causes: readonly Cause[]): CauseGraph {
  const known = new Set(ids);
  const forward = new Map<string, Set<string>>(ids.map((id) => [id, new Set()]));
  const backward = new Map<string, Set<string>>(ids.map((id) => [id, new Set()]));
  for (const { fromId, toId } of causes) {
    if (fromId === toId || !known.has(fromId) || !known.has(toId)) continue;
    forward.get(fromId)?.add(toId);
    backward.get(toId)?.add(fromId);
  }
  const listed = (sets: ReadonlyMap<string, ReadonlySet<string>>) =>
    new Map([...sets].map(([id, set]) => [id, [...set]]));
  const consequences = listed(forward);
  const direct = listed(backward);
  return {
    ids,
    consequencesOf: (id) => consequences.get(id) ?? [],
    causesOf: (id) => direct.get(id) ?? [],
  };
}

/** Everything reached from `start` by one step or more; holds `start` itself only when it lies on a loop. */
export function reachable(start: string, next: (id: string) => readonly string[]): Set<string> {
  return reachableFrom(next(start), next);
}

/** The findings given and everything reached from them. */
export function reachableFrom(starts: readonly string[], next: (id: string) => readonly string[]): Set<string> {
  const seen = new Set<string>();
  const open = [...starts];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    if (seen.has(id)) continue;
    seen.add(id);
    open.push(...next(id));
  }
  return seen;
}

/**
 * The topmost causes upstream of a finding, through any number of links, among those that `counts`.
 * Where the topmost ones form a loop, the loop is broken at `startOf` of its members.
 */
export function topmostCauses(
  id: string,
  graph: CauseGraph,
  counts: (id: string) => boolean,
  startOf: (loop: readonly string[]) => string,
): string[] {
  const upstream = [...reachable(id, graph.causesOf)].filter((cause) => cause !== id && counts(cause));
  const amongst = new Set(upstream);
  const above = new Map(
    upstream.map((cause) => [
      cause,
      [...reachable(cause, graph.causesOf)].filter((other) => amongst.has(other) && other !== cause),
    ]),
  );
  const isAbove = (upper: string, lower: string) => above.get(lower)?.includes(upper) ?? false;
  return upstream.filter((cause) => {
    const loop = (above.get(cause) ?? []).filter((other) => isAbove(cause, other));
    const higher = (above.get(cause) ?? []).some((other) => !isAbove(cause, other));
    return !higher && (loop.length === 0 || startOf([cause, ...loop]) === cause);
  });
}
