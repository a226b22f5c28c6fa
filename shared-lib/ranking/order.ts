import { riskLevels, safetyStanding } from '../judgement/risk-matrix.ts';
import { breakLoops } from './break-loops.ts';
import { type CauseGraph, causeGraph, reachable } from './cause-graph.ts';
import type { Cause, ComparePlaces, Rankable } from './rankable.ts';
import { urgencyOrUnsaid } from './tier.ts';

/** One finding of a tier, waiting for its place. */
export interface Waiting {
  readonly finding: Rankable;
  readonly headOfTier: boolean;
}

export interface Ordered extends Waiting {
  /** The most urgent finding it leads to inside its tier, when that is more urgent than itself. */
  readonly urgencyFrom: string | null;
  /** What puts it before the line that follows it in its tier; null for the last one, or where only the tree decides. */
  readonly before: Precedence | null;
}

export interface Precedence {
  readonly id: string;
  readonly because: 'leads to it' | 'graver' | 'sooner' | 'surer' | 'dearer';
}

const stateOrder = { confirmed: 0, suspected: 1, 'not-examined': 2 } as const;

const safetyKey = (finding: Rankable): string => {
  const { level, severity, probability } = safetyStanding(finding.safety);
  return `${riskLevels.indexOf(level)}${severity}${probability}`;
};

const comparing = (a: number | string, b: number | string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Where a loop of causes begins: where the mechanic says, else at the earliest date, else at the lowest number. */
export function loopStart<T extends Pick<Rankable, 'number' | 'foundOn' | 'loopStart'>>(loop: readonly T[]): T {
  const [first, ...rest] = loop;
  if (first === undefined) throw new RangeError('a loop has members');
  const key = (finding: T) => `${finding.loopStart ? 0 : 1}${finding.foundOn ?? '9999-12-31'}`;
  return rest.reduce(
    (best, next) => ((comparing(key(next), key(best)) || next.number - best.number) < 0 ? next : best),
    first,
  );
}

/**
 * Orders the findings of one tier: head of tier, level, severity, probability, urgency, state, damage class, tree order,
 * number. Among findings of equal safety a cause stands before its direct consequences and borrows their urgency.
 */
export function orderTier(waiting: readonly Waiting[], causes: readonly Cause[], compare: ComparePlaces): Ordered[] {
  const byId = new Map(waiting.map((item) => [item.finding.id, item]));
  const safetyOf = new Map(waiting.map(({ finding }) => [finding.id, safetyKey(finding)]));
  const alike = causes.filter(
    ({ fromId, toId }) => safetyOf.has(fromId) && safetyOf.get(fromId) === safetyOf.get(toId),
  );
  const ids = [...byId.keys()];
  const graph = causeGraph(ids, alike);
  const borrowed = new Map(waiting.map((item) => [item.finding.id, borrowedUrgency(item.finding, byId, graph)]));
  const urgencyOf = (item: Waiting) => borrowed.get(item.finding.id)?.urgency ?? 5;
  const placeOf = placeOrder(waiting, compare);
  const byKey = (a: Waiting, b: Waiting): number =>
    comparing(a.headOfTier ? 0 : 1, b.headOfTier ? 0 : 1) ||
    comparing(safetyOf.get(a.finding.id) ?? '', safetyOf.get(b.finding.id) ?? '') ||
    comparing(urgencyOf(a), urgencyOf(b)) ||
    comparing(stateOrder[a.finding.state], stateOrder[b.finding.state]) ||
    comparing(a.finding.damageClass ?? 4, b.finding.damageClass ?? 4) ||
    comparing(placeOf(a.finding.place), placeOf(b.finding.place)) ||
    comparing(a.finding.number, b.finding.number) ||
    comparing(a.finding.id, b.finding.id);

  const startOf = (loop: readonly string[]) => loopStart(loop.flatMap((id) => byId.get(id)?.finding ?? [])).id;
  const straight = causeGraph(ids, breakLoops(ids, alike, startOf));
  const ordered = causesFirst(waiting, straight, byKey);
  return ordered.map((item, index) => ({
    ...item,
    urgencyFrom: borrowed.get(item.finding.id)?.from ?? null,
    before: precedence(item, ordered[index + 1], graph, urgencyOf),
  }));
}

/** Repeatedly takes the smallest of those that nothing still waiting leads to. */
function causesFirst(
  waiting: readonly Waiting[],
  straight: CauseGraph,
  byKey: (a: Waiting, b: Waiting) => number,
): Waiting[] {
  const sorted = [...waiting].sort(byKey);
  const held = new Map(sorted.map(({ finding }) => [finding.id, straight.causesOf(finding.id).length]));
  const ordered: Waiting[] = [];
  while (sorted.length > 0) {
    const free = sorted.findIndex(({ finding }) => held.get(finding.id) === 0);
    const [next] = sorted.splice(free, 1);
    if (free < 0 || next === undefined) throw new Error('every set of causes without loops has a beginning');
    ordered.push(next);
    for (const id of straight.consequencesOf(next.finding.id)) held.set(id, (held.get(id) ?? 0) - 1);
  }
  return ordered;
}

/** The most urgent of a finding and of all it leads to inside its tier and safety. */
function borrowedUrgency(
  finding: Rankable,
  byId: ReadonlyMap<string, Waiting>,
  graph: CauseGraph,
): { readonly urgency: number; readonly from: string | null } {
  const own = { urgency: urgencyOrUnsaid(finding.urgency) as number, from: null };
  return [...reachable(finding.id, graph.consequencesOf)]
    .map((id) => ({ urgency: urgencyOrUnsaid(byId.get(id)?.finding.urgency ?? null) as number, from: id }))
    .reduce<{ urgency: number; from: string | null }>((best, next) => {
      const same = best.from !== null && next.urgency === best.urgency && next.from < best.from;
      return next.urgency < best.urgency || same ? next : best;
    }, own);
}

/** Each place's position among those of this tier, worked out once; a finding without a place comes last. */
function placeOrder(waiting: readonly Waiting[], compare: ComparePlaces): (place: string | null) => number {
  const places = [...new Set(waiting.flatMap(({ finding }) => finding.place ?? []))].sort(compare);
  const positions = new Map<string, number>();
  for (const [index, place] of places.entries()) {
    const before = places[index - 1];
    const same = before !== undefined && compare(before, place) === 0;
    positions.set(place, same ? (positions.get(before) ?? index) : index);
  }
  return (place) => (place === null ? places.length : (positions.get(place) ?? places.length));
}

/** The first thing that tells two neighbours apart. */
function precedence(
  item: Waiting,
  next: Waiting | undefined,
  graph: CauseGraph,
  urgencyOf: (item: Waiting) => number,
): Precedence | null {
  if (next === undefined) return null;
  const { id } = next.finding;
  if (graph.consequencesOf(item.finding.id).includes(id)) return { id, because: 'leads to it' };
  if (item.headOfTier !== next.headOfTier) return null;
  const keys = [
    ['graver', comparing(safetyKey(item.finding), safetyKey(next.finding))],
    ['sooner', comparing(urgencyOf(item), urgencyOf(next))],
    ['surer', comparing(stateOrder[item.finding.state], stateOrder[next.finding.state])],
    ['dearer', comparing(item.finding.damageClass ?? 4, next.finding.damageClass ?? 4)],
  ] as const;
  const [because, way] = keys.find(([, difference]) => difference !== 0) ?? [];
  return because !== undefined && way !== undefined && way < 0 ? { id, because } : null;
}
