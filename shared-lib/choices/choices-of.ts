import type { DecisionView, VisitChoices } from '../contract/choices.ts';
import { carriedOver, type ToldVisit } from './carried-over.ts';
import { type ChoiceContext, leavesOf } from './leaves.ts';
import { inOrderOfWhatStays } from './order.ts';
import type { Choice, Decision, Suspicion } from './records.ts';
import { toldOf } from './told.ts';

export interface ChoicesInput extends ChoiceContext {
  readonly date: string;
  readonly suspicions: readonly Suspicion[];
  readonly choices: readonly Choice[];
  /** With what the finding was when it was told. */
  readonly decisions: readonly { readonly decision: Decision; readonly told: string }[];
  readonly earlier: readonly ToldVisit[];
}

const takes = ({ decision }: Decision): boolean => decision === 'accepted' || decision === 'accepted-with-changes';

/** The findings that the owner has agreed to by themselves: consent is given line by line as well, and the newest word counts. */
export function agreedAlone(decisions: readonly Decision[]): string[] {
  const newest = new Map(
    decisions.flatMap((each) => (each.findingId === null ? [] : [[each.findingId, each] as const])),
  );
  return [...newest].filter(([, decision]) => takes(decision)).map(([findingId]) => findingId);
}

/** The choice that was taken last and not given up since. */
export function chosenOf(decisions: readonly Decision[]): string | null {
  const last = decisions.filter((decision) => decision.choiceId !== null && takes(decision)).at(-1);
  if (last === undefined) return null;
  const newest = decisions.filter(({ choiceId }) => choiceId === last.choiceId).at(-1);
  return newest !== undefined && takes(newest) ? last.choiceId : null;
}

/** All of a visit's choosing and deciding, with everything that is computed from it. */
export function choicesOf(input: ChoicesInput): VisitChoices {
  const { standing, money, steps, suspicions } = input;
  const decisions = input.decisions.map(({ decision }) => decision);
  const chosen = chosenOf(decisions);
  const findings = new Map(input.input.findings.map((finding) => [finding.id, finding]));
  const tierOf = new Map(standing.lines.map(({ findingId, tier }) => [findingId, tier]));
  const views = input.decisions.map(({ decision, told }): DecisionView => {
    const finding = decision.findingId === null ? undefined : findings.get(decision.findingId);
    const covers = finding === undefined || toldOf(finding, tierOf.get(finding.id) ?? null) === told;
    return { ...decision, covers };
  });
  const decided = new Set(decisions.map(({ findingId }) => findingId));
  return {
    money,
    suspicions,
    steps,
    choices: inOrderOfWhatStays(input.choices.map((choice) => leavesOf(choice, choice.id === chosen, input))),
    decisions: views,
    undecided: standing.lines.map(({ findingId }) => findingId).filter((id) => !decided.has(id)),
    carriedOver: carriedOver({ date: input.date, findings: input.input.findings, standing, decisions }, input.earlier),
  };
}

/** Whether anything has been chosen, decided or suspected at all: a report is silent of it else. */
export function saysAnything({ suspicions, steps, choices, decisions, carriedOver: carried }: VisitChoices): boolean {
  return [suspicions, steps, choices, decisions, carried].some((each) => each.length > 0);
}
