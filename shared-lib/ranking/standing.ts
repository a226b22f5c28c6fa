import type { Standing, StandingLine } from '../contract/standing.ts';
import { countCovered, coverItems } from '../coverage/coverage.ts';
import type { Finding, FindingLink, FindingProof } from '../model/finding.ts';
import type { Layout } from '../model/layout.ts';
import type { Reading } from '../model/reading.ts';
import type { ScopeItem, Visit } from '../model/visit.ts';
import { compareLocations } from '../parts/compare-locations.ts';
import { speakComponent } from '../parts/speak-component.ts';
import type { UnitSystem } from '../quantities/units.ts';
import { causeGraph, reachable } from './cause-graph.ts';
import { missingOf } from './missing.ts';
import { moveLines } from './move-lines.ts';
import { type Ranked, rank } from './rank.ts';
import { titleOf } from './title.ts';
import { standingFindings, toRankable } from './to-rankable.ts';
import { why } from './why.ts';

export interface StandingInput {
  readonly visit: Pick<Visit, 'use'>;
  readonly layout: Layout;
  readonly findings: readonly Finding[];
  readonly links: readonly FindingLink[];
  /** Only of photos and readings that are still there. */
  readonly proofs: readonly FindingProof[];
  readonly scope: readonly ScopeItem[];
  readonly readings: readonly Reading[];
  readonly units?: UnitSystem;
}

/** The severity-ranked list of a visit with its reasons, what is listed without a rank, and what was not looked at. */
export function standingOf(input: StandingInput): Standing {
  const { layout, links, proofs, units = 'metric' } = input;
  const findings = standingFindings(input.findings);
  const byId = new Map(findings.map((finding) => [finding.id, finding]));
  const rankables = findings.flatMap((finding) => toRankable(finding, { layout, proofs, use: input.visit.use }) ?? []);
  const ranked = rank({
    findings: rankables,
    causes: links,
    use: input.visit.use,
    comparePlaces: (a, b) => compareLocations(a, b, layout),
  });
  const computed = ranked.flatMap((item, index) => {
    const finding = byId.get(item.finding.id);
    return finding === undefined ? [] : [lineOf(item, index + 1, finding)];
  });

  function lineOf(item: Ranked, computedPlace: number, finding: Finding) {
    return { findingId: finding.id, tier: item.tier, moved: finding.moved, item, computedPlace, finding };
  }

  const rankedIds = new Set(rankables.map(({ id }) => id));
  const graph = causeGraph(
    rankables.map(({ id }) => id),
    links,
  );
  const confirmed = new Map(
    rankables.filter(({ state }) => state === 'confirmed').map(({ id, number }) => [id, number]),
  );
  const confirmedConsequences = (id: string) =>
    [...reachable(id, graph.consequencesOf)].flatMap((other) => confirmed.get(other) ?? []).sort((a, b) => a - b);

  const lines = moveLines(computed).map(({ item, computedPlace, finding }, index): StandingLine => {
    return {
      findingId: finding.id,
      number: finding.number,
      tier: item.tier,
      // Shown as what it counts as: a confirmed finding that nothing shows wears the suspected tag.
      state: item.finding.state,
      title: titleOf(finding, layout, units),
      why: why(item, {
        use: input.visit.use,
        numberOf: (id) => byId.get(id)?.number ?? null,
        notExaminedBecause: finding.notExaminedBecause,
        heldAsSuspected: finding.state === 'confirmed' && item.finding.state === 'suspected',
        confirmedConsequences: item.finding.state === 'suspected' ? confirmedConsequences(finding.id) : [],
      }),
      place: index + 1,
      computedPlace,
      movedBecause: finding.moved?.reason ?? null,
      level: item.level,
      safety: finding.safety === 'none' ? null : finding.safety,
      named: item.finding.named,
      namedDeclinedBecause: item.finding.named === null ? null : item.finding.namedDeclinedBecause,
      headOfTier: item.headOfTier,
      missing: missingOf(finding, proofs),
    };
  });

  const covered = coverItems(input);
  return {
    lines,
    unranked: findings
      .filter(({ id }) => !rankedIds.has(id))
      .sort((a, b) => a.number - b.number)
      .map((finding) => ({
        findingId: finding.id,
        number: finding.number,
        title: titleOf(finding, layout, units),
        state: finding.kind === 'observation' ? 'observation' : finding.state,
      })),
    notLookedAt: covered
      .filter(({ state }) => state === 'not-examined')
      .map(({ item }) => ({
        path: item.path,
        spoken: speakComponent(item.path, layout),
        because: item.notExaminedBecause,
      })),
    coverage: countCovered(covered),
  };
}
