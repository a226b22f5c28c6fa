import { riskLevels, safetyStanding } from '../judgement/risk-matrix.ts';
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
export function loopStart(loop: readonly Rankable[]): Rankable {
  const [first, ...rest] = loop;
  if (first === undefined) throw new RangeError('a loop has members');
  const key = (finding: Rankable) => `${finding.loopStart ? 0 : 1}${finding.foundOn ?? '9999-12-31'}`;
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
  const alike = causes.filter(({ fromId, toId }) => {
    const from = byId.get(fromId);
    const to = byId.get(toId);
    return from !== undefined && to !== undefined && safetyKey(from.finding) === safetyKey(to.finding);
  });
  const graph = causeGraph([...byId.keys()], alike);

  const borrowed = new Map(
    waiting.map(({ finding }) => {
      let best: { urgency: number; from: string | null } = { urgency: urgencyOrUnsaid(finding.urgency), from: null };
      for (const id of reachable(finding.id, graph.consequencesOf)) {
        const other = byId.get(id)?.finding;
        if (other === undefined) continue;
        const urgency = urgencyOrUnsaid(other.urgency);
        const closer = best.from !== null && urgency === best.urgency && id < best.from;
        if (urgency < best.urgency || closer) best = { urgency, from: id };
      }
      return [finding.id, best] as const;
    }),
  );

  const byKey = (a: Waiting, b: Waiting): number =>
    comparing(a.headOfTier ? 0 : 1, b.headOfTier ? 0 : 1) ||
    comparing(safetyKey(a.finding), safetyKey(b.finding)) ||
    comparing(borrowed.get(a.finding.id)?.urgency ?? 5, borrowed.get(b.finding.id)?.urgency ?? 5) ||
    comparing(stateOrder[a.finding.state], stateOrder[b.finding.state]) ||
    comparing(a.finding.damageClass ?? 4, b.finding.damageClass ?? 4) ||
    comparePlaces(a.finding.place, b.finding.place, compare) ||
    comparing(a.finding.number, b.finding.number) ||
    comparing(a.finding.id, b.finding.id);

  const left = new Map(byId);
  const ordered: Waiting[] = [];
  while (left.size > 0) {
    const next = candidates(left, graph).sort(byKey)[0];
    if (next === undefined) throw new Error('every set of causes has a beginning');
    left.delete(next.finding.id);
    ordered.push(next);
  }
  const urgencyOf = (item: Waiting) => borrowed.get(item.finding.id)?.urgency ?? 5;
  return ordered.map((item, index) => ({
    ...item,
    urgencyFrom: borrowed.get(item.finding.id)?.from ?? null,
    before: precedence(item, ordered[index + 1], graph, urgencyOf),
  }));
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

function comparePlaces(a: string | null, b: string | null, compare: ComparePlaces): number {
  if (a === null || b === null) return comparing(a === null ? 1 : 0, b === null ? 1 : 0);
  return compare(a, b);
}

/** Findings that nothing still waiting leads to; of a loop that nothing else leads to, the one where it is broken. */
function candidates(left: ReadonlyMap<string, Waiting>, graph: CauseGraph): Waiting[] {
  const waitingCauses = (id: string) => graph.causesOf(id).filter((cause) => left.has(cause));
  return [...left.values()].filter(({ finding }) => {
    const upstream = reachable(finding.id, waitingCauses);
    if (upstream.size === 0) return true;
    if (!upstream.has(finding.id)) return false;
    const loop = [...upstream];
    const nothingAbove = loop.every((id) => reachable(id, waitingCauses).has(finding.id));
    const members = loop.flatMap((id) => left.get(id)?.finding ?? []);
    return nothingAbove && loopStart(members).id === finding.id;
  });
}
