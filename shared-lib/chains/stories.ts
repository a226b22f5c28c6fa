import type { StandingLine } from '../contract/standing.ts';
import type { VisitRecord } from '../contract/visits.ts';
import type { Finding, FindingLink } from '../model/finding.ts';
import type { UnitSystem } from '../quantities/units.ts';
import { linksThatClose } from '../ranking/break-loops.ts';
import { causeGraph, reachableFrom } from '../ranking/cause-graph.ts';
import { loopStart } from '../ranking/order.ts';
import { titleOf } from '../ranking/title.ts';
import { standingFindings } from '../ranking/to-rankable.ts';

export interface StoryFinding {
  readonly finding: Finding;
  /** Null where it has no place in the standing. */
  readonly line: StandingLine | null;
  readonly title: string;
}

/** One link of a story. */
export interface StoryLink extends FindingLink {
  /** It closes a loop: it is told and drawn, and left out where the order needs a beginning. */
  readonly closesLoop: boolean;
}

/** Findings that lead to one another: one chain, told as one story. */
export interface Story {
  /** Causes before their effects; inside a loop, from where it is taken to begin. */
  readonly findings: readonly StoryFinding[];
  readonly links: readonly StoryLink[];
  /** Those that nothing leads to, once loops are opened. */
  readonly roots: readonly string[];
}

export type ChainRecord = Pick<VisitRecord, 'findings' | 'links' | 'layout' | 'standing' | 'readings'>;

/** Causes first; among those that are free, as they stand in the standing. */
function causesFirst(members: readonly StoryFinding[], links: readonly StoryLink[]): StoryFinding[] {
  const left = [...members];
  const ordered: StoryFinding[] = [];
  while (left.length > 0) {
    const waiting = new Set(left.map(({ finding }) => finding.id));
    const isHeld = ({ finding }: StoryFinding) =>
      links.some(({ fromId, toId, closesLoop }) => !closesLoop && toId === finding.id && waiting.has(fromId));
    const [next] = left.splice(
      left.findIndex((each) => !isHeld(each)),
      1,
    );
    if (next === undefined) break;
    ordered.push(next);
  }
  return ordered;
}

/** The chains of a visit: the one with the gravest finding first. Findings without a link are in none. */
export function storiesOf(record: ChainRecord, units: UnitSystem = 'metric'): readonly Story[] {
  const kept = new Map(standingFindings(record.findings).map((finding) => [finding.id, finding]));
  const links = record.links.filter(({ fromId, toId }) => kept.has(fromId) && kept.has(toId));
  const ids = [...new Set(links.flatMap(({ fromId, toId }) => [fromId, toId]))];
  const startOf = (loop: readonly string[]) => loopStart(loop.flatMap((id) => kept.get(id) ?? [])).id;
  const closing = new Set(linksThatClose(ids, links, startOf));
  const lines = new Map(record.standing.lines.map((line) => [line.findingId, line]));
  const placeOf = (id: string) => lines.get(id)?.place ?? Number.POSITIVE_INFINITY;
  const graph = causeGraph(ids, links);
  const around = (id: string) => [...graph.causesOf(id), ...graph.consequencesOf(id)];
  const seen = new Set<string>();
  const stories: Story[] = [];
  for (const id of ids.toSorted((a, b) => placeOf(a) - placeOf(b))) {
    if (seen.has(id)) continue;
    const members = reachableFrom([id], around);
    for (const member of members) seen.add(member);
    const own = links
      .filter(({ fromId }) => members.has(fromId))
      .map((link): StoryLink => ({ ...link, closesLoop: closing.has(link) }));
    const findings = [...members]
      .toSorted((a, b) => placeOf(a) - placeOf(b))
      .flatMap((member): StoryFinding[] => {
        const finding = kept.get(member);
        if (finding === undefined) return [];
        const line = lines.get(member) ?? null;
        return [{ finding, line, title: line?.title ?? titleOf(finding, record.layout.layout, units) }];
      });
    const ordered = causesFirst(findings, own);
    const position = new Map(ordered.map(({ finding }, index) => [finding.id, index]));
    own.sort((a, b) => (position.get(a.fromId) ?? 0) - (position.get(b.fromId) ?? 0));
    const roots = ordered
      .map(({ finding }) => finding.id)
      .filter((member) => !own.some(({ toId, closesLoop }) => toId === member && !closesLoop));
    stories.push({ findings: ordered, links: own, roots });
  }
  return stories;
}
