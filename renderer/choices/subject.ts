import type { ChoiceView, VisitChoices } from '../../shared-lib/contract/choices.ts';
import type { VisitRecord } from '../../shared-lib/contract/visits.ts';
import type { Finding } from '../../shared-lib/model/finding.ts';

/** What a statement is about. */
export type Subject =
  | { readonly kind: 'finding'; readonly finding: Finding }
  | { readonly kind: 'choice'; readonly choice: ChoiceView };

/** Null where neither is named, or it is no longer here. */
export function subjectOf(
  record: VisitRecord,
  { choices }: VisitChoices,
  { findingId, choiceId }: { readonly findingId: string | undefined; readonly choiceId: string | undefined },
): Subject | null {
  const finding = record.findings.find(({ id }) => id === findingId);
  if (finding !== undefined) return { kind: 'finding', finding };
  const choice = choices.find(({ id }) => id === choiceId);
  return choice === undefined ? null : { kind: 'choice', choice };
}
