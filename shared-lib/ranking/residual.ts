import type { RiskLevel } from '../contract/standing.ts';
import { riskLevels } from '../judgement/risk-matrix.ts';
import type { DamageClass, Safety, Urgency } from '../model/finding.ts';
import { causeGraph, topmostCauses } from './cause-graph.ts';
import { loopStart } from './order.ts';
import { type Ranked, type RankingInput, rank } from './rank.ts';
import type { Rankable } from './rankable.ts';

/** What a choice does to a finding. Only `fixed` takes it away; out of service or warned about is still there. */
export type DispositionKind = 'fixed' | 'partly' | 'left' | 'made-safe' | 'unknown';

export interface Disposition {
  readonly is: DispositionKind;
  /** The mechanic's new judgement of what stays, where he gives one. */
  readonly after?: {
    readonly safety?: Safety | 'none' | null | undefined;
    readonly urgency?: Urgency | undefined;
    readonly runWorse?: boolean | undefined;
    readonly damageClass?: DamageClass | undefined;
  };
}

export interface Residual {
  /** What is not fixed, ranked again. */
  readonly left: readonly Ranked[];
  readonly highestLevelLeft: RiskLevel | 'none';
  readonly doNotOperateLeft: readonly string[];
  /** For each finding that is mended while a cause of it stays: the topmost causes left. It will return. */
  readonly willReturn: readonly { readonly findingId: string; readonly rootsLeft: readonly string[] }[];
}

/** What stays broken after a choice. A finding the choice does not speak of is left. */
export function residual(
  input: Omit<RankingInput, 'wholeVisit'>,
  dispositions: Readonly<Record<string, Disposition>>,
): Residual {
  const dispositionOf = (id: string): Disposition => dispositions[id] ?? { is: 'left' };
  const isFixed = (id: string) => dispositionOf(id).is === 'fixed';
  const remaining = input.findings
    .filter(({ id }) => !isFixed(id))
    .map((finding) => judgedAnew(finding, dispositionOf(finding.id)));
  const left = rank({ ...input, findings: remaining, wholeVisit: input.findings });

  const byId = new Map(input.findings.map((finding) => [finding.id, finding]));
  const graph = causeGraph([...byId.keys()], input.causes);
  const startOf = (loop: readonly string[]) => loopStart(loop.flatMap((id) => byId.get(id) ?? [])).id;
  const order = rank(input).map(({ finding }) => finding.id);
  const inOrder = (ids: readonly string[]) => order.filter((id) => ids.includes(id));
  const willReturn = order
    .filter((id) => ['fixed', 'partly'].includes(dispositionOf(id).is))
    .map((id) => ({
      findingId: id,
      rootsLeft: inOrder(topmostCauses(id, graph, (cause) => !isFixed(cause), startOf)),
    }))
    .filter(({ rootsLeft }) => rootsLeft.length > 0);

  return {
    left,
    highestLevelLeft: riskLevels.find((level) => left.some((item) => item.level === level)) ?? 'none',
    doNotOperateLeft: left.filter(({ tier }) => tier === 0).map(({ finding }) => finding.id),
    willReturn,
  };
}

function judgedAnew(finding: Rankable, { after }: Disposition): Rankable {
  if (after === undefined) return finding;
  return {
    ...finding,
    safety: after.safety === undefined ? finding.safety : after.safety,
    urgency: after.urgency ?? finding.urgency,
    runWorse: after.runWorse ?? finding.runWorse,
    damageClass: after.damageClass ?? finding.damageClass,
  };
}
