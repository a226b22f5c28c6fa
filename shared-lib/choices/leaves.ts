import { stepsToCome } from '../cautions/after-work.ts';
import { cautionsFor } from '../cautions/cautions-for.ts';
import type { ChoiceView } from '../contract/choices.ts';
import type { Standing } from '../contract/standing.ts';
import type { VisitWork } from '../contract/work.ts';
import { compareLocations } from '../parts/compare-locations.ts';
import { type Disposition, residual } from '../ranking/residual.ts';
import type { StandingInput } from '../ranking/standing.ts';
import { standingFindings, toRankable } from '../ranking/to-rankable.ts';
import { mendedBy } from '../work/after-work.ts';
import { costOf } from './money.ts';
import type { Choice, Money, Step } from './records.ts';

/** A visit as a choice sees it. */
export interface ChoiceContext {
  readonly input: StandingInput;
  readonly standing: Standing;
  readonly steps: readonly Step[];
  readonly money: Money;
  /** The work that is on record; what it has mended calls no caution of the choice that was taken. */
  readonly work?: VisitWork | null;
}

/** A finding that the choice does not name is left: each ranked one is covered exactly once. */
function everyDisposition(choice: Choice, standing: Standing): Choice['dispositions'] {
  const named = new Map(choice.dispositions.map((disposition) => [disposition.findingId, disposition]));
  return standing.lines.map(({ findingId }) => named.get(findingId) ?? { findingId, is: 'left', after: null, why: '' });
}

function forRanking(dispositions: Choice['dispositions']): Record<string, Disposition> {
  return Object.fromEntries(
    dispositions.map(({ findingId, is, after }) => [findingId, after === null ? { is } : { is, after }]),
  );
}

/** What stays, ranked again, where these findings are disposed of so and every other is left. */
export function leftAfter(
  dispositions: Choice['dispositions'],
  { input, standing }: Pick<ChoiceContext, 'input' | 'standing'>,
): Pick<ChoiceView, 'left' | 'highestLevelLeft' | 'doNotOperateLeft' | 'willReturn'> {
  const { layout, proofs, links } = input;
  const { use } = input.visit;
  const titleOf = new Map(standing.lines.map(({ findingId, title }) => [findingId, title]));
  const { left, ...more } = residual(
    {
      findings: standingFindings(input.findings).flatMap(
        (finding) => toRankable(finding, { layout, proofs, use }) ?? [],
      ),
      causes: links,
      use,
      comparePlaces: (a, b) => compareLocations(a, b, layout),
    },
    forRanking(dispositions),
  );
  return {
    left: left.map(({ finding, tier, level }) => ({
      findingId: finding.id,
      number: finding.number,
      tier,
      state: finding.state,
      title: titleOf.get(finding.id) ?? '',
      level,
    })),
    ...more,
  };
}

/** One choice with what it leaves, what will return, the cautions that follow and what it costs. */
export function leavesOf(choice: Choice, chosen: boolean, context: ChoiceContext): ChoiceView {
  const { input, standing, steps, money } = context;
  const { layout, readings } = input;
  const findings = standingFindings(input.findings);
  const dispositions = everyDisposition(choice, standing);
  const fixes = new Set(dispositions.filter(({ is }) => is === 'fixed').map(({ findingId }) => findingId));
  const work = chosen ? (context.work ?? null) : null;
  const called = cautionsFor(
    {
      layout,
      findings,
      readings,
      steps,
      ...(work === null
        ? { chosen: { steps: choice.steps, fixes } }
        : {
            chosen: { steps: stepsToCome(choice.steps, work, findings), fixes: mendedBy(work) },
            done: { work, readings, proofs: input.proofs },
          }),
    },
    'report',
  );
  return {
    ...choice,
    dispositions,
    unspoken: standing.lines
      .map(({ findingId }) => findingId)
      .filter((id) => !choice.dispositions.some(({ findingId }) => findingId === id)),
    ...leftAfter(dispositions, context),
    cautions: called.map(({ caution: { id, word, text } }) => ({ id, word, text })),
    cost: costOf(choice.costs, money),
    chosen,
  };
}
