import { actionWords } from '../../judgement/actions.ts';
import { tierWords } from '../../judgement/tiers.ts';
import { certaintyWords, reportWords } from '../../wording/report.ts';
import { mendedByWork } from '../after-work.ts';
import type { RankedFinding, ReportContext } from '../context.ts';
import type { SummaryLine, SummarySection } from '../model.ts';
import { negativeSentence } from '../negative.ts';
import { asSentence } from '../sentence.ts';

function lineOf({ finding, line, tag }: RankedFinding, context: ReportContext): SummaryLine {
  return {
    tag,
    title: line.title || reportWords.titleNotSaid,
    place: context.place(finding.locations[0]),
    tier: mendedByWork(context).has(finding.id)
      ? `${reportWords.mended}. ${reportWords.was} ${tierWords(line.tier).words}`
      : tierWords(line.tier).heading,
    certainty: certaintyWords[line.state],
    action: finding.action === null ? '–' : actionWords[finding.action],
    hasDetail: true,
  };
}

function unrankedOf(
  entry: ReportContext['record']['standing']['unranked'][number],
  context: ReportContext,
): SummaryLine {
  const finding = context.findingById(entry.findingId);
  const place = context.place(finding?.locations[0]);
  const isObserved = entry.state === 'observation' && (finding?.words.trim() ?? '') !== '';
  return {
    tag: { findingId: entry.findingId, number: entry.number, tier: null, state: entry.state },
    // An observation has no name but its words: they stand in their own column.
    title: isObserved ? place : entry.title || reportWords.titleNotSaid,
    place: isObserved ? '' : place,
    tier: 'Not ranked',
    certainty: entry.state === 'none-found' && finding ? negativeSentence(finding) : certaintyWords[entry.state],
    action: asSentence(finding?.words ?? ''),
    hasDetail: false,
  };
}

export function summary(context: ReportContext): SummarySection {
  const { ranked, record } = context;
  return {
    kind: 'summary',
    heading: 'All findings, the worst first',
    columns: ['Finding', 'What and where', 'How bad', 'How sure', 'Advised', 'Page'],
    lines: ranked.map((entry) => lineOf(entry, context)),
    unrankedHeading: 'Looked for and not found, and what was observed',
    unrankedColumns: ['', 'What and where', 'How bad', 'How sure', 'In words'],
    unranked: record.standing.unranked.map((entry) => unrankedOf(entry, context)),
    note:
      ranked.length === 0
        ? ''
        : 'The number on a tag belongs to the finding for life. The order is by harm to people first, then by how soon it fails, then by what waiting costs. A dashed tag with a question mark is not proven; a tag open at its right end was not looked at.',
    empty: 'No finding is on record yet.',
  };
}
