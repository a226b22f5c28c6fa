import type { VisitRecord } from '../contract/visits.ts';
import type { FindingLink } from '../model/finding.ts';
import { asPart, asSentence, counted } from '../report/sentence.ts';
import { sourceById } from '../suspicions/sources.ts';
import { listed } from '../wording/listed.ts';
import type { Story, StoryFinding } from './stories.ts';

type Told = Pick<VisitRecord, 'findings' | 'readings' | 'layout'>;

/** What a link rests on, in words: the mechanic's, then the readings and findings it names; empty where nothing is said. */
export function evidenceWords({ evidence, shownBy = [] }: FindingLink, record: Told): string {
  const named = shownBy.map((by) => {
    const findingId = 'findingId' in by ? by.findingId : null;
    const source = sourceById({ findingId, readingId: 'readingId' in by ? by.readingId : null }, record);
    if (source === null) return 'what is no longer here';
    if (source.kind === 'reading') return `the reading “${source.title}”`;
    return source.kind === 'finding' ? `finding ${source.finding.number}` : `“${asPart(source.title)}”`;
  });
  return [...(evidence.trim() === '' ? [] : [asPart(evidence)]), ...named].join('; ');
}

const stateWords = {
  confirmed: 'confirmed',
  suspected: 'suspected',
  'not-examined': 'not examined',
  'none-found': 'looked for and not found',
} as const;

const nameOf = ({ finding, line, title }: StoryFinding): string =>
  `finding ${finding.number}, ${asPart(title)} (${stateWords[line?.state ?? finding.state]})`;

/** Where a loop is taken to begin, and why there. */
function beginning({ finding }: StoryFinding): string {
  if (finding.loopStart) return `at finding ${finding.number}, as the mechanic marked it`;
  return finding.foundOn === null
    ? `at finding ${finding.number}, the lowest number in it`
    : `at finding ${finding.number}, the earliest found of it`;
}

/**
 * A chain in sentences: where it begins, what led to what and how sure that is, which causes act together, and where it
 * closes on itself.
 *
 * Source: the handbook's chapter 6.6: each chain is shown as one story.
 */
export function tellStory(story: Story): readonly string[] {
  const byId = new Map(story.findings.map((each) => [each.finding.id, each]));
  const roots = story.roots.flatMap((id) => byId.get(id) ?? []);
  const sentences = [
    roots.length === 1
      ? `It begins with ${roots.map(nameOf).join('')}.`
      : `It begins in ${counted(roots.length, 'place')}: ${listed(roots.map(nameOf))}.`,
  ];
  const told = new Set(story.roots);
  for (const { finding } of story.findings) {
    for (const certainty of ['confirmed', 'suspected'] as const) {
      const out = story.links.filter(
        (link) => link.fromId === finding.id && link.certainty === certainty && !link.closesLoop,
      );
      const consequences = out.flatMap((link) => {
        const to = byId.get(link.toId);
        if (to === undefined) return [];
        const isNamed = told.has(link.toId);
        told.add(link.toId);
        return [isNamed ? `finding ${to.finding.number}` : nameOf(to)];
      });
      if (consequences.length === 0) continue;
      const led = certainty === 'confirmed' ? 'led to' : 'is suspected to have led to';
      sentences.push(`Finding ${finding.number} ${led} ${listed(consequences)}.`);
    }
  }
  for (const { finding } of story.findings) {
    const into = story.links.filter(({ toId, closesLoop }) => toId === finding.id && !closesLoop);
    if (into.length < 2) continue;
    const causes = into.flatMap(({ fromId }) => byId.get(fromId)?.finding.number ?? []).sort((a, b) => a - b);
    const isSure = into.every(({ certainty }) => certainty === 'confirmed');
    const isOr = into.some(({ join }) => join === 'or');
    const named = `findings ${listed(causes.map(String), isOr ? 'or' : 'and')}`;
    sentences.push(
      isOr
        ? `Which of ${named} led to finding ${finding.number} is not settled; one would be enough.`
        : `Finding ${finding.number} ${isSure ? 'comes' : 'is suspected to come'} of ${named} together: mending one of them does not end it.`,
    );
  }
  for (const link of story.links.filter(({ closesLoop }) => closesLoop)) {
    const [from, to] = [byId.get(link.fromId), byId.get(link.toId)];
    if (from === undefined || to === undefined) continue;
    const feeds = link.certainty === 'confirmed' ? 'in turn makes' : 'is suspected to make';
    sentences.push(
      `Finding ${from.finding.number} ${feeds} finding ${to.finding.number} worse, so the chain closes on itself; for the order it is taken to begin ${beginning(to)}.`,
    );
  }
  return sentences.map(asSentence);
}
