import { agreedAlone, chosenOf } from '../choices/choices-of.ts';
import { type ChoiceContext, leftAfter } from '../choices/leaves.ts';
import type { Choice, Decision, DispositionIs } from '../choices/records.ts';
import type { VisitWork } from '../contract/work.ts';
import type { HandOver, Outcome, WorkItem } from './records.ts';

export interface WorkInput extends Pick<ChoiceContext, 'input' | 'standing'> {
  readonly items: readonly WorkItem[];
  readonly handOver: HandOver | null;
  readonly choices: readonly Choice[];
  readonly decisions: readonly Decision[];
}

const dispositionOf: Readonly<Record<Outcome, DispositionIs>> = { done: 'fixed', partly: 'partly', 'not-done': 'left' };

/** Only what a choice sets out to do is asked for: what it leaves, or leaves open until it is opened, is no work yet. */
const isPlanned = (is: DispositionIs): boolean => is === 'fixed' || is === 'partly' || is === 'made-safe';

/**
 * The work against what was agreed, the choice that was taken and single findings, with what is left ranked again. What was only planned counts as left: a machine
 * goes out as it was worked on, not as it was meant to be.
 */
export function workOf(input: WorkInput): VisitWork {
  const { items, handOver, choices, decisions, standing } = input;
  const taken = choices.find(({ id }) => id === chosenOf(decisions));
  const spokenOf = new Set(items.map(({ findingId }) => findingId));
  const ranked = new Set(standing.lines.map(({ findingId }) => findingId));
  const done = items.flatMap(({ findingId, outcome, because }) => {
    if (findingId === null) return [];
    const meant = taken?.dispositions.find((each) => each.findingId === findingId);
    const is = outcome === 'done' && meant?.is === 'made-safe' ? meant.is : dispositionOf[outcome];
    return [{ findingId, is, after: meant !== undefined && meant.is === is ? meant.after : null, why: because }];
  });
  const meant = (taken?.dispositions ?? []).flatMap(({ findingId, is }) => (isPlanned(is) ? [{ findingId, is }] : []));
  const inChoice = new Set(meant.map(({ findingId }) => findingId));
  const alone = agreedAlone(decisions)
    .filter((findingId) => !inChoice.has(findingId))
    .map((findingId) => ({ findingId, is: 'fixed' as const }));
  const { left, doNotOperateLeft, willReturn } = leftAfter(done, input);
  return {
    items,
    handOver,
    planned: [...meant, ...alone].filter(({ findingId }) => ranked.has(findingId) && !spokenOf.has(findingId)),
    unproven: items.filter(({ outcome, proofs }) => outcome !== 'not-done' && proofs.length === 0).map(({ id }) => id),
    left,
    doNotOperateLeft,
    willReturn,
  };
}

/** Whether any work is on record: a report is silent of it else. */
export const saysWork = ({ items, handOver }: Pick<VisitWork, 'items' | 'handOver'>): boolean =>
  items.length > 0 || handOver !== null;
